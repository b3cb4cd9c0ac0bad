/** The German catalogue beside the English one, and what follows from the language: plurals, numbers, times. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import { causeOf, quality } from '#rules/signal/quality.ts';
import { clock, span, spanRange } from '../../dashboards/text/clock.ts';
import { de, phrases } from '../../dashboards/text/de.ts';
import { en } from '../../dashboards/text/en.ts';
import { languageOf, phraseOf, speak } from '../../dashboards/text/language.ts';
import { quantity } from '../../dashboards/text/quantity.ts';
import { say } from '../../dashboards/text/say.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
afterEach(() => speak('en'));

type Texts = Readonly<Record<string, string | Readonly<Record<string, string>>>>;
/** Each text by its id, a word of a table by both: `word.DANGER`. */
const flat = (texts: Texts): Map<string, string> =>
  new Map(
    Object.entries(texts).flatMap(([id, text]) =>
      typeof text === 'string'
        ? [[id, text] as const]
        : Object.entries(text).map(([key, word]) => [`${id}.${key}`, word] as const),
    ),
  );
const english = flat(en);
const german = flat(de);

/** Placeholders, sorted, each once. */
const names = (text: string): string[] =>
  [...new Set([...text.matchAll(/\{?\$([\w-]+)/g)].map((match) => match[1]!))].sort();

test('German has every text of the English catalogue and none besides', () => {
  expect(english.size).toBeGreaterThan(250);
  expect([...german.keys()].sort()).toEqual([...english.keys()].sort());
  expect([...german].filter(([, text]) => text.trim() === '')).toEqual([]);
});

test('each German text has the placeholders of the English one', () => {
  const other = [...english].filter(
    ([id, text]) => names(text).join() !== names(german.get(id)!).join(),
  );
  expect(other).toEqual([]);
});

test('in each branch, too: a plural has the same placeholders in both', () => {
  const branches = /^\.match \$(\w+) one \{\{(.+?)\}\} \* \{\{(.+)\}\}$/;
  const matches = [...english, ...german].filter(([, text]) => text.startsWith('.match'));
  expect(matches.length).toBeGreaterThan(10);
  for (const [id, text] of matches) {
    const found = branches.exec(text);
    expect(found, `${id} is not ".match $n one {{…}} * {{…}}"`).not.toBeNull();
    const [, , one, rest] = found!;
    // The lazy branch must not have ended inside a placeholder.
    for (const branch of [one!, rest!])
      expect(branch.replaceAll(/\{\$[\w-]+\}/g, ''), `${id}: ${branch}`).not.toMatch(/[{}]/);
  }
  expect([...english.keys()].filter((id) => english.get(id)!.startsWith('.match'))).toEqual(
    [...english.keys()].filter((id) => german.get(id)!.startsWith('.match')),
  );
});

test('German is calm, in the Sie-form, and quits no alarm but acknowledges it', () => {
  const texts = [...german.values()];
  expect(texts.filter((text) => text.includes('!'))).toEqual([]);
  expect(texts.filter((text) => /\b(du|dein\w*|dir|dich)\b/i.test(text))).toEqual([]);
  expect(german.get('acknowledge')).toBe('Quittieren');
  expect(german.get('kind.drying-oven')).toBe('Trockenofen');
  expect(german.get('kind.dip-tank')).toBe('Tauchbecken');
});

test('why a reading is not usable, or in doubt, is said in German, alone and with another', async () => {
  const causes = Object.values(quality).flatMap((code) => causeOf(code) ?? []);
  expect(causes.length).toBeGreaterThan(20);
  expect(causes.filter((cause) => phrases[cause] === undefined)).toEqual([]);
  expect(phraseOf(causes[0]!)).toBeNull();
  await speak('de');
  expect(phraseOf(`${causes[0]}; late: kept and not judged`)).toBe(
    `${phrases[causes[0]!]}; spät: aufbewahrt, nicht bewertet`,
  );
  expect(phraseOf(`${causes[0]}; something else`)).toBeNull();
});

describe('spoken German', () => {
  test('plurals by the language', async () => {
    await speak('de');
    expect(say('watched', { n: 1 })).toBe('1 Gefahr überwacht');
    expect(say('watched', { n: 0 })).toBe('0 Gefahren überwacht');
    expect(say('watched', { n: 21 })).toBe('21 Gefahren überwacht');
    await speak('en');
    expect(say('watched', { n: 21 })).toBe('21 hazards watched');
  });
  test('a comma before decimals, in values and in spans; ranges as a sentence', async () => {
    await speak('de');
    expect(quantity(-2.06, 'Cel', 0.1)).toBe('−2,1\u00a0°C');
    expect(span(12_600_000)).toBe('3,5\u00a0h');
    expect(spanRange(180_000, 360_000)).toBe('3 bis 6\u00a0min');
    expect(spanRange(50_000, 240_000)).toBe('50\u00a0s bis 4\u00a0min');
  });
  test('days and months by their German names', async () => {
    const at = Date.parse('2026-03-05T14:00:00Z');
    await speak('de');
    expect(clock(at, at + 86_400_000)).toBe('Do 14:00');
    expect(clock(at, at + 30 * 86_400_000)).toBe('5. März 14:00');
    await speak('en');
    expect(clock(at, at + 86_400_000)).toBe('Thu 14:00');
  });
});

test.each([
  [['de-AT', 'en'], 'de'],
  [['fr-FR', 'de'], 'de'],
  [['en-IE', 'de'], 'en'],
  [['fr'], 'en'],
  [['den'], 'en'],
  [[], 'en'],
] as const)('a browser that wants %j is spoken to in %s', (wanted, language) => {
  expect(languageOf(wanted)).toBe(language);
});
