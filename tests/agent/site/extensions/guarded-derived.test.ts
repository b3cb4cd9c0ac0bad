/** Whatever a derived kind of the site's own does, it gives a finite number, or none and why. */
import { expect, test } from 'vitest';
import {
  type DerivedNow,
  isFormula,
  isKeeping,
  type KeepingKind,
} from '#rules/derive/derived-kind.ts';
import { quality } from '#rules/signal/quality.ts';
import { ownDerived, type Seen } from './watched.ts';

const now = (at = 2_000): DerivedNow => ({
  at,
  inputs: Float64Array.of(7),
  uncertain: false,
  doubt: quality.good,
});

const settings = 'written: forebond.settings({}), compile: () => ({}),';

test.each([
  ['(x) => 2 * x[0]', 14, 0],
  ['() => null', null, 0],
  ['() => NaN', null, 1],
  ['() => "7"', null, 1],
  ['() => undefined', null, 1],
  ['() => { throw new Error("no"); }', null, 1],
] as const)('a formula %s', (compute, gives, faults) => {
  const { seen, kind } = ownDerived(`compute: ${compute},`);
  if (!isFormula(kind)) throw new Error('it is a formula');
  expect(kind.compute([7])).toBe(gives);
  expect([seen.faults.length, seen.open]).toEqual([faults, 0]);
});

test.each([
  ['(s, now) => now.inputs[0]', 7, quality.good, 0],
  ['(s, now) => { now.doubt = 9; return 1; }', 1, 9, 0],
  ['(s, now) => { now.doubt = 55; return 1; }', null, quality.ownKindFailed, 1],
  ['() => { throw 1; }', null, quality.ownKindFailed, 1],
  ['() => Infinity', null, quality.ownKindFailed, 1],
] as const)('one with settings %s', (settled, gives, doubt, faults) => {
  const { seen, kind } = ownDerived(`${settings} settled: ${settled},`);
  if (isFormula(kind) || isKeeping(kind)) throw new Error('it is neither');
  const asked = now();
  expect([kind.settled({}, asked), asked.doubt, seen.faults.length]).toEqual([
    gives,
    doubt,
    faults,
  ]);
});

function keeping(step: string, begin = '() => ({ sum: 0 })'): { seen: Seen; kind: KeepingKind } {
  const { seen, kind } = ownDerived(
    `${settings} version: 1, begin: ${begin}, step: ${step}, gap: (s, m) => { m.sum = 0; }, shift: () => {},`,
  );
  if (!isKeeping(kind)) throw new Error('it keeps something');
  return { seen, kind };
}

test('one that remembers goes on from what a snapshot keeps', () => {
  const { seen, kind } = keeping('(s, m, now) => (m.sum += now.inputs[0])');
  const memory = kind.begin({}, 1_000);
  expect(kind.step({}, memory, now(), { at: null })).toBe(7);
  const saved = JSON.parse(JSON.stringify(kind.save!(memory)));
  expect(kind.step({}, saved, now(), { at: null })).toBe(14);
  kind.gap({}, memory, 2_000, 3_000);
  expect(kind.step({}, memory, now(), { at: null })).toBe(7);
  expect(seen.faults).toEqual([]);
});

test('one that remembers what JSON cannot keep, or fails, says so in its quality', () => {
  const unfit = keeping('() => 1', '() => new Map()');
  const asked = now();
  expect(unfit.kind.step({}, unfit.kind.begin({}, 0), asked, { at: null })).toBeNull();
  expect([asked.doubt, unfit.seen.faults.length]).toEqual([quality.ownKindFailed, 2]);

  const late = keeping('(s, m, now, timer) => { timer.at = now.at - 1; return 1; }');
  const timer = { at: null };
  expect(late.kind.step({}, late.kind.begin({}, 0), now(), timer)).toBe(1);
  expect([timer.at, late.seen.faults]).toEqual([
    null,
    ['own.step: set the deadline 1999, at 2000'],
  ]);
});
