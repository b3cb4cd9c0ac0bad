/** Derived signals that remember: when they are asked, what they are told of time nobody saw. */
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from './drive.ts';
import { integral, keeps } from './keeping-kinds.ts';
import { smallPlan } from './small-plan.ts';

const planWith = (kept = keeps(), revision = 'test') =>
  smallPlan({
    revision,
    signals: { a: {} },
    derived: { sum: { inputs: ['a'], keeps: kept } },
    rules: { r: { kind: 'band', on: 'sum', settings: { high: '100 Cel' } } },
  });
/** `<judged> <value> <quality>` of what was derived, with `at` where it is another time. */
const derived = (drive: Drive): string[] =>
  drive.derived.map((line) => {
    const [, at, judged, value, code] = line.split(' ');
    expect(at).toBe(judged);
    return `${judged} ${value} ${code}`;
  });
const bad = (drive: Drive, at: number): Drive =>
  drive.offer({ signal: 'a', at, quality: quality.undecodable }).advance(at);

describe('is asked', () => {
  test('a moment after its input changed, and at most once a second', () => {
    const drive = new Drive(planWith()).values('a', [1_000, 10], [1_500, 20], [1_800, 0]);
    drive.advance(10_000);
    expect(derived(drive)).toEqual(['1100 0 0', '2100 10 0']);
  });
  test('by itself when it said so, however seldom anybody looks', () => {
    const often = new Drive(planWith()).values('a', [1_000, 2]);
    const seldom = new Drive(planWith()).values('a', [1_000, 2]);
    for (let at = 1_100; at <= 13_000; at += 100) often.advance(at);
    seldom.advance(13_000);
    expect(derived(seldom)).toEqual(['1100 0 0', '6100 10 0', '11100 20 0']);
    expect(seldom.derived).toEqual(often.derived);
  });
  test('sooner, where its input changes before that', () => {
    const drive = new Drive(planWith()).values('a', [1_000, 2], [3_000, 4]).advance(9_000);
    expect(derived(drive)).toEqual(['1100 0 0', '3100 4 0', '8100 24 0']);
  });
});

describe('time nobody saw', () => {
  test('with a bad input: bad at once, and nothing is added until it is good again', () => {
    const drive = new Drive(planWith()).values('a', [1_000, 2]);
    bad(drive, 3_100).advance(9_000);
    drive.values('a', [10_000, 2]).advance(12_100);
    expect(derived(drive)).toEqual([
      '1100 0 0',
      `3200 0 ${quality.badInput}`,
      // 2 s of 2 before, none of the time between.
      `10100 4 ${quality.unobserved}`,
    ]);
  });
  test('downtime is not added either', () => {
    const drive = new Drive(planWith()).values('a', [1_000, 2]);
    drive.input({ kind: 'gap', judged: 3_101, fromMs: 3_100, toMs: 60_000 }).advance(60_000);
    drive.values('a', [61_000, 2]).advance(61_100);
    expect(derived(drive)).toEqual([
      '1100 0 0',
      `60000 4 ${quality.unobserved}`,
      `61100 6.2 ${quality.unobserved}`,
    ]);
  });
  test('downtime while its input is bad counts once', () => {
    const drive = new Drive(planWith()).values('a', [1_000, 2]);
    bad(drive, 3_100).advance(4_000);
    drive.input({ kind: 'gap', judged: 4_001, fromMs: 4_000, toMs: 60_000 }).advance(60_000);
    drive.values('a', [61_000, 2]).advance(61_100);
    expect(derived(drive).at(-1)).toBe(`61100 4 ${quality.unobserved}`);
  });
});

test('the clock set anew moves its times along', () => {
  const drive = new Drive(planWith(), 1_000_000).values('a', [1_001_000, 2]).advance(1_003_000);
  drive.input({ kind: 'rebase', judged: 1_003_001, deltaMs: -900_000 }).advance(1_003_001);
  drive.advance(106_100);
  expect(derived(drive)).toEqual(['1001100 0 0', '106100 10 0']);
});
test('and with a bad input just then', () => {
  const drive = new Drive(planWith(), 1_000_000).values('a', [1_001_000, 2]);
  bad(drive, 1_003_100);
  drive.input({ kind: 'rebase', judged: 1_003_201, deltaMs: -900_000 }).advance(1_003_201);
  drive.values('a', [110_000, 2]).advance(110_100);
  expect(derived(drive).at(-1)).toBe(`110100 4 ${quality.unobserved}`);
});

test('an uncertain input and an unconfirmed number make it uncertain', () => {
  const plain = new Drive(planWith()).offer({
    signal: 'a',
    at: 1,
    value: 1,
    quality: quality.jump,
  });
  expect(derived(plain.advance(200))).toEqual([`101 0 ${quality.uncertainInput}`]);
  const plan = planWith();
  const unproven = new Drive({
    ...plan,
    derived: plan.derived.map((each) => ({ ...each, unproven: true })),
  }).values('a', [1, 1]);
  expect(derived(unproven.advance(200))).toEqual([`101 0 ${quality.unproven}`]);
});

describe('over restarts and reloads', () => {
  const begun = (kept = keeps()): Drive =>
    new Drive(planWith(kept), 0, [
      planWith(kept, 'same'),
      planWith(keeps(integral(), 7_000), 'another setting'),
    ])
      .values('a', [1_000, 2])
      .advance(3_000);
  const reloaded = (revision: string): string | undefined => {
    const drive = begun().input({ kind: 'site', judged: 3_001, revision }).advance(3_001);
    return derived(drive.values('a', [5_000, 2]).advance(5_100)).at(-1);
  };
  test('a restart goes on', () => {
    const drive = Drive.resume(begun());
    expect(derived(drive.advance(6_100))).toEqual(['6100 10 0']);
  });
  test('a reload that changes nothing of it goes on, one that does begins anew', () => {
    expect(reloaded('same')).toBe('5100 8 0');
    expect(reloaded('another setting')).toBe('5100 0 0');
  });
  test('another version migrates, or begins anew', () => {
    const resumedWith = (next = integral(2)): string | undefined => {
      const old = begun();
      const saved = JSON.parse(JSON.stringify(old.engine.save()));
      const drive = new Drive(planWith(keeps(next)));
      drive.restored(saved);
      return derived(drive.values('a', [5_000, 2]).advance(5_100)).at(-1);
    };
    expect(resumedWith(integral(1))).toBe('5100 8 0');
    expect(resumedWith(integral(2))).toBe('5100 0 0');
    expect(resumedWith(integral(2, () => null))).toBe('5100 0 0');
    const asked: unknown[] = [];
    const moved = integral(2, (old, version) => {
      asked.push(version);
      return { ...(old as never as { at: number }), sum: 100, held: 0, unseenMs: 0 };
    });
    expect([resumedWith(moved), asked]).toEqual(['5100 100 0', [1]]);
  });
});

test('a settled formula is stamped with its readings and may doubt itself', () => {
  const plan = smallPlan({
    signals: { a: {} },
    derived: {
      twice: {
        inputs: ['a'],
        settled: (now) => {
          if (now.inputs[0]! > 10) now.doubt = quality.unproven;
          return now.inputs[0]! > 20 ? null : 2 * now.inputs[0]!;
        },
      },
    },
  });
  const drive = new Drive(plan).values('a', [1_000, 2], [3_000, 12], [5_000, 22], [7_000, 3]);
  expect(drive.advance(9_000).derived).toEqual([
    'twice 1000 1100 4 0',
    `twice 3000 3100 24 ${quality.unproven}`,
    `twice 5000 5100 0 ${quality.outsideFormula}`,
    'twice 7000 7100 6 0',
  ]);
});
