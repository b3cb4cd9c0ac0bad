/** Words that a fitter does not know stand on no page; what only the standard calls so is explained beside it. */
import { expect, test } from 'vitest';
import { highWaterWords } from '#agent/wiring/finding-words.ts';
import { nameOf } from '../../dashboards/state/session.ts';
import { de } from '../../dashboards/text/de.ts';
import { en } from '../../dashboards/text/en.ts';
import { partName } from '../../dashboards/text/ill.ts';
import { phraseOf } from '../../dashboards/text/language.ts';
import { placeName } from '../../dashboards/text/names.ts';
import { displayOf } from '../../dashboards/text/quantity.ts';

function textsOf(catalogue: unknown): string[] {
  if (typeof catalogue === 'string') return [catalogue];
  return Object.values(catalogue as object).flatMap(textsOf);
}

test.each([
  /\bballast/i,
  /high-water/i,
  /\bmoot\b/i,
  /^told again/i,
  /\brungs?\b|\bchases?\b/i,
  /\bunconfirmed\b/i,
  /\bnot armed\b/i,
  /K·h/,
])('no text says %s', (word) => {
  expect([...textsOf(en), highWaterWords].filter((text) => word.test(text))).toEqual([]);
});

test('highly managed is explained wherever it is first said', () => {
  for (const text of [en.noShelf, en.ruleManaged])
    expect(text).toMatch(/handled with special care/);
  for (const text of [de.noShelf, de.ruleManaged]) expect(text).toMatch(/besonderer Sorgfalt/);
});

test('names that are short for something are said in full', () => {
  expect(placeName('l/store-1/outside-week')).toBe('Store 1 outdoors, mean of a week');
  expect(placeName('l/air-1/pdp')).toBe('Air 1 pressure dew point');
  expect(displayOf('K.h').symbol).toBe('degree-hours');
});

test.each(['constructor', 'to-string', 'valueOf', 'toString'])(
  'a place or a person called %s is called so',
  (name) => {
    const said = name.replace('-', ' ');
    expect(placeName(`l/${name}`).toLowerCase()).toBe(said.toLowerCase());
    expect([nameOf(name), partName(name), phraseOf(name)]).toEqual([name, name, null]);
  },
);
