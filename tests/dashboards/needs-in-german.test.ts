/** What rules wait for and why a hazard is not watched, in German where it is fixed text. */
import { afterEach, expect, test, vi } from 'vitest';
import { germanOf } from '#rules/german/all.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
const { phraseOf, readBook, speak } = await import('../../dashboards/text/language.ts');
const { needText, whyText } = await import('../../dashboards/text/need.ts');
afterEach(() => speak('en'));

const german = async (): Promise<void> => {
  await speak('de');
  readBook(germanOf);
};

test('a number, with the words of the file where it is written', async () => {
  await german();
  expect(needText('the gauge pressure this line needs (rule header-low: low)')).toBe(
    'Der Überdruck, den diese Linie braucht (Regel header-low: low)',
  );
  expect(
    needText(
      'the bath’s target solids (target_solids of the material sheet, or rule bath-solids: target)',
    ),
  ).toBe(
    'Der Sollwert für den Feststoffgehalt des Bads (target_solids im Materialblatt, oder Regel bath-solids: target)',
  );
  expect(needText('what the site alone knows (rule own: high)')).toBeNull();
});

test('why a hazard is not watched; what is composed of other words stays English', async () => {
  await german();
  const pressure = 'the gauge pressure this line needs (rule header-low: low)';
  expect(whyText(`Not armed: needs ${pressure}.`)).toBe(
    'Läuft noch nicht. Es fehlt: Der Überdruck, den diese Linie braucht (Regel header-low: low).',
  );
  expect(whyText(`Not armed: needs ${pressure}; a word of the site.`)).toBeNull();
  expect(whyText('No sensor: bind wall or air.')).toBeNull();
  expect(whyText('Its sensors have not been heard yet.')).toBe(
    'Von seinen Sensoren kam noch nichts.',
  );
  expect(
    whyText(
      'No signal here tells it: scan the compound’s batch and age to the press, and write down each application of release agent.',
    ),
  ).toMatch(/^Kein Signal hier zeigt es an: .*aufschreiben\.$/);
});

test('back in English nothing stays German', async () => {
  await german();
  expect(phraseOf('The gauge pressure this line needs')).not.toBeNull();
  await speak('en');
  expect(phraseOf('The gauge pressure this line needs')).toBeNull();
});

test('why nobody would be told', async () => {
  await german();
  for (const cause of [
    'Nobody can be told: no person has a phone or an e-mail address.',
    'This agent tells nobody: it has neither people nor webhooks.',
    'The rota says nobody is on call now, so everyone who wants alarms is told.',
  ])
    expect(phraseOf(cause)).not.toBeNull();
});
