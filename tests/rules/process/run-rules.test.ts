import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { upperNormalTail } from '#rules/process/normal-tail.ts';
import {
  brokenRunRules,
  iso7870,
  nelson,
  type RunRuleSet,
  runPointsMax,
  westernElectric,
} from '#rules/process/run-rules.ts';
import { runLengths } from '../../vectors/control-charts.ts';

const broken = (scores: readonly number[], set: RunRuleSet): readonly number[] =>
  brokenRunRules(scores, scores.length, set)!;
const repeat = (count: number, ...scores: number[]): number[] =>
  Array.from({ length: count }, (_, i) => scores[i % scores.length]!);

describe('the sets differ, and each says how', () => {
  test('trap: one side takes 8 points by Western Electric, 9 by Nelson, 7 by ISO 7870-2', () => {
    const side = (count: number, set: RunRuleSet): boolean =>
      set.rules.some(
        (rule, i) => rule.look === 'one-side' && broken(repeat(count, 0.5, 0.4), set).includes(i),
      );
    expect([6, 7, 8, 9].map((count) => side(count, iso7870))).toEqual([false, true, true, true]);
    expect([7, 8, 9].map((count) => side(count, westernElectric))).toEqual([false, true, true]);
    expect([7, 8, 9].map((count) => side(count, nelson))).toEqual([false, false, true]);
  });

  test('trap: a trend takes 6 points by Nelson, that is 5 steps, and 7 by ISO 7870-2', () => {
    const rising = (count: number): number[] => repeat(count, -0.9, -0.5, -0.1, 0.1, 0.5, 0.8, 0.9);
    expect(broken(rising(5), nelson)).toEqual([]);
    expect(broken(rising(6), nelson)).toEqual([2]);
    expect(broken(rising(6), iso7870)).toEqual([]);
    expect(broken(rising(7), iso7870)).toEqual([2]);
    expect(
      broken(
        rising(7).map((score) => -score),
        iso7870,
      ),
    ).toEqual([2]);
    expect(broken(rising(7), westernElectric)).toEqual([]);
  });
});

describe('each of the eight', () => {
  test.each([
    { name: '1 beyond 3', scores: [0, 3.01], index: 0 },
    { name: '9 on one side', scores: repeat(9, -0.2, -0.3), index: 1 },
    { name: '6 trending', scores: [0.6, 0.5, 0.4, 0.3, 0.2, -0.1], index: 2 },
    { name: '14 alternating', scores: repeat(14, 0.2, -0.2), index: 3 },
    { name: '2 of 3 beyond 2', scores: [2.1, -0.5, 2.2], index: 4 },
    { name: '4 of 5 beyond 1', scores: [-1.1, -1.2, 0.3, -1.1, -1.3], index: 5 },
    { name: '15 within 1', scores: repeat(15, 0.9, 0.8, -0.7), index: 6 },
    { name: '8 outside 1, both sides', scores: repeat(8, 1.1, -1.2), index: 7 },
  ])('$name', ({ scores, index }) => {
    expect(broken(scores, nelson)).toEqual([index]);
    expect(
      broken(
        scores.map((score) => -score),
        nelson,
      ),
    ).toEqual([index]);
    // One point fewer and it is not there yet.
    expect(broken(scores.slice(1), nelson).includes(index)).toBe(index === 0);
  });

  test('edges are strict: on a line is neither beyond nor within, on the centre on no side', () => {
    expect(broken([3], nelson)).toEqual([]);
    expect(broken([2, 0, 2], nelson)).toEqual([]);
    expect(broken(repeat(15, 1, -1, 0.2), nelson)).toEqual([]);
    expect(broken([...repeat(8, 0.1, 0.2), 0], nelson)).toEqual([]);
    expect(broken([0.1, 0.2, 0.3, 0.3, 0.4, 0.5], nelson)).toEqual([]);
  });

  test('8 outside 1 on one side only is a shift, not that pattern', () => {
    expect(broken(repeat(8, 1.5, 1.2), nelson)).toEqual([5]);
  });

  test('the point that completes a pattern is part of it', () => {
    expect(broken([2.5, 2.5, 0], nelson)).toEqual([]);
    expect(broken([2.5, 2.5], nelson)).toEqual([4]);
    expect(broken([1.5, 1.5, 1.5, 1.5, 0.5], nelson)).toEqual([]);
    // Beyond on the other side does not count.
    expect(broken([2.5, 0, -2.5], nelson)).toEqual([]);
  });
});

/**
 * Mean points to the first false alarm, exactly: a chain over what the patterns can still see. Of
 * a normal score only its zone matters; older points count by what a pattern asks of them.
 */
function falseAlarmRunLength(set: RunRuleSet, memory: number): number {
  const zones = [-3.5, -2.5, -1.5, -0.5, 0.5, 1.5, 2.5, 3.5];
  const tail = (z: number): number => (z >= 4 ? 0 : upperNormalTail(z));
  const chance = zones.map((z) => tail(Math.abs(z) - 0.5) - tail(Math.abs(z) + 0.5));
  const seen = (history: readonly number[]): number[] =>
    history.map((z, i) => {
      const back = history.length - i;
      if (back <= 2) return z;
      return Math.sign(z) * Math.min(Math.abs(z), back <= 4 ? 1.5 : 0.5);
    });
  const states = new Map<string, number>([['', 0]]);
  const histories: number[][] = [[]];
  const next: number[][] = [];
  for (let state = 0; state < histories.length; state += 1) {
    next.push(
      zones.map((z) => {
        const all = [...histories[state]!, z];
        if (broken(all, set).length > 0) return -1;
        const kept = seen(all.slice(-memory));
        const name = kept.join();
        if (!states.has(name)) {
          states.set(name, histories.length);
          histories.push(kept);
        }
        return states.get(name)!;
      }),
    );
  }
  const lengths = histories.map(() => 50);
  for (let round = 0; round < 20_000; round += 1) {
    let change = 0;
    for (let state = lengths.length - 1; state >= 0; state -= 1) {
      let sum = 1;
      for (let i = 0; i < zones.length; i += 1) {
        const to = next[state]![i]!;
        if (to >= 0) sum += chance[i]! * lengths[to]!;
      }
      change = Math.max(change, Math.abs(sum - lengths[state]!));
      lengths[state] = sum;
    }
    if (change < 1e-7) break;
  }
  return lengths[0]!;
}

describe('how often they cry wolf', () => {
  test(`${runLengths[0].name}: every ${runLengths[0].points} (${runLengths[0].source})`, () => {
    const alone = { source: '', rules: [westernElectric.rules[0]!] };
    expect(Math.abs(falseAlarmRunLength(alone, 1) - runLengths[0].points)).toBeLessThan(
      runLengths[0].tolerance,
    );
  });

  test(`${runLengths[1].name}: every ${runLengths[1].points} (${runLengths[1].source})`, () => {
    expect(
      Math.abs(falseAlarmRunLength(westernElectric, 7) - runLengths[1].points),
    ).toBeLessThanOrEqual(runLengths[1].tolerance);
  });
});

describe('any series', () => {
  const scores = fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { maxLength: 40 });
  const sets = [westernElectric, nelson, iso7870];

  test('only the newest points matter, and upside down is the same', () => {
    fc.assert(
      fc.property(scores, (drawn) => {
        for (const set of sets) {
          const found = broken(drawn, set);
          expect(broken(drawn.slice(-runPointsMax), set)).toEqual(found);
          expect(
            broken(
              drawn.map((score) => -score),
              set,
            ),
          ).toEqual(found);
        }
      }),
    );
  });

  test('a longer pattern implies the shorter of its kind', () => {
    fc.assert(
      fc.property(scores, (drawn) => {
        if (broken(drawn, nelson).includes(1)) expect(broken(drawn, westernElectric)).toContain(3);
        if (broken(drawn, iso7870).includes(2)) expect(broken(drawn, nelson)).toContain(2);
      }),
    );
  });

  test('what is no number, or is not there, is refused', () => {
    expect(brokenRunRules([0, Number.NaN], 2, nelson)).toBeNull();
    expect(brokenRunRules([0], 2, nelson)).toBeNull();
    expect(brokenRunRules([], 0, nelson)).toEqual([]);
    expect(brokenRunRules([Number.NaN, ...repeat(15, 0.1)], 16, nelson)).not.toBeNull();
  });
});
