/** Where no alarm stands: "nothing abnormal" only where every hazard to people is watched. */
import { afterEach, expect, test, vi } from 'vitest';
import { calmText } from '../../dashboards/text/calm.ts';
import { speak } from '../../dashboards/text/language.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
afterEach(() => speak('en'));

const watched = { to_people: true, state: 'watched', unheard: [] as string[] } as const;
const blind = { ...watched, state: 'not-watched' } as const;
const partly = { ...watched, unheard: ['l/r/surface'] };
const unread = { ...watched, state: 'unjudged' } as const;
const taken = { ...watched, name_taken: ['r/a/t'] };
const spoilt = { ...blind, to_people: false };

test.each([
  [[], 'Nothing abnormal.'],
  [[watched, spoilt], 'Nothing abnormal.'],
  [[watched, blind], 'No alarm stands. 1 hazard to people is not watched.'],
  [[partly, blind, blind], 'No alarm stands. 2 hazards to people are not watched.'],
  [[partly, watched], 'No alarm stands. 1 hazard to people is not watched by all its rules.'],
  [[unread, taken], 'No alarm stands. 2 hazards to people are not watched by all their rules.'],
] as const)('%j', (hazards, said) => {
  expect(calmText(hazards)).toBe(said);
});

test('in German', async () => {
  await speak('de');
  expect(calmText([blind])).toBe('Kein Alarm steht an. 1 Gefahr für Menschen ist nicht überwacht.');
});
