/** What a rule waits for, and why a hazard is not watched, as far as it is fixed text, in the reader's language. */
import { languageNow, phraseOf } from './language.ts';
import { say } from './say.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Where it is written keeps the words of the files; what stands between them is said. */
const germanPlaces: readonly (readonly [RegExp, string])[] = [
  [/ of the material sheet/g, ' im Materialblatt'],
  [/\brule (?=[a-z0-9-]+: )/g, 'Regel '],
  [/\bsignal (?=[a-z])/g, 'Signal '],
  [/\bderived (?=[a-z])/g, 'berechnet: '],
  [/ or /g, ' oder '],
  [/ and /g, ' und '],
];

/** null where this language does not have it. */
export function needText(need: string): string | null {
  const what = capital(need);
  const whole = phraseOf(what);
  if (whole !== null) return whole;
  const [, before = '', place = ''] = /^(.*) (\([^()]*\))$/.exec(what) ?? [];
  const said = before === '' ? null : phraseOf(before);
  if (said === null || languageNow() !== 'de') return null;
  return `${said} ${germanPlaces.reduce((text, [from, to]) => text.replace(from, to), place)}`;
}

/** null where any part of it is composed of what the page cannot say. */
export function whyText(why: string): string | null {
  const whole = phraseOf(why);
  if (whole !== null) return whole;
  const [, byHand] = /^No signal here tells it: (.*)\.$/.exec(why) ?? [];
  const said = byHand === undefined ? null : phraseOf(byHand);
  if (said !== null) return say('noSignalTells', { what: said });
  const [, needs] = /^Not armed: needs (.*)\.$/.exec(why) ?? [];
  const texts = needs === undefined ? [] : needs.split('; ').map(needText);
  const known = texts.filter((text) => text !== null);
  return texts.length === 0 || known.length < texts.length
    ? null
    : say('notArmedNeeds', { needs: known.join('; ') });
}
