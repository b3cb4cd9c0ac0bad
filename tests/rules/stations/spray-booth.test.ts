/** What a spray booth is judged by before anybody entered a number, and what the sheet and the site move. */
import { describe, expect, test } from 'vitest';
import { readSheet } from '#rules/material/read-sheet.ts';
import type { SheetWritten } from '#rules/material/sheet.ts';
import { compileSite } from '#rules/plan/compile.ts';
import { siteWritten } from '#rules/site/schema.ts';

const plain = (unit: string) => ({ topic: 'x', payload: { kind: 'plain' }, unit });

function booth(rules: object = {}, sheet: Partial<SheetWritten> = {}) {
  const read = readSheet({ name: 'A', source: 'made for this test', ...sheet });
  const signals = {
    'face-velocity': { ...plain('m/s'), topic: 'v' },
    'pot-pressure': { ...plain('bar'), topic: 'p' },
    'film-base': { unit: 'um', by_hand: true },
    'film-gauge': { unit: 'um', by_hand: true },
  };
  const written = siteWritten.parse({
    site: 'works',
    timezone: 'Etc/UTC',
    materials: { a: 'a.yaml' },
    lines: { l: { x: { kind: 'spray-booth', material: 'a', signals, rules } } },
  });
  const compiled = compileSite(written, { a: read.sheet }, {}, 'r');
  expect([...read.problems, ...compiled.problems]).toEqual([]);
  return (rule: string) => compiled.rules.find(({ id }) => id === `l/x/${rule}`)!;
}
const setting = (card: ReturnType<ReturnType<typeof booth>>, name: string) =>
  card.settings.find((each) => each.setting === name)?.written;

describe('before anybody entered a number', () => {
  test('the exhaust is watched at the stricter of the two published speeds, unconfirmed', () => {
    const card = booth()('exhaust-airflow');
    expect(card.readiness).toBe('armed-limit-unconfirmed');
    expect(setting(card, 'low')).toBe('0.51 m/s');
    expect(card.label.word).toBe('WARNING');
  });
  test('the pot’s rating is on its plate alone, and not guessed', () => {
    const card = booth()('pot-rating');
    expect(card.readiness).toBe('not-armed');
    expect(card.needs.join()).toMatch(/plate/);
  });
});

test('electrostatic guns: the site writes 0.30 m/s', () => {
  const card = booth({ 'exhaust-airflow': { low: '0.30 m/s' } })('exhaust-airflow');
  expect(card.readiness).toBe('armed');
  expect(setting(card, 'low')).toBe('0.30 m/s');
});

test('the sheet moves the film’s limits, and its upper end with a film that may be thicker', () => {
  const card = booth({}, { film_low: '15 um', film_high: '22 um' })('film');
  expect(['low', 'high', 'high_high'].map((each) => setting(card, each))).toEqual([
    '15 um',
    '22 um',
    '50 um',
  ]);
  expect(card.readiness).toBe('armed');
  const thick = booth({}, { film_low: '30 um', film_high: '60 um' })('film');
  expect(setting(thick, 'high_high')).toBe('75 um');
});
