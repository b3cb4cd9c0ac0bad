/** Oven runs: opened and closed by the signals, whatever happens meanwhile. */
import { describe, expect, test } from 'vitest';
import type { Effect } from '#rules/input.ts';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const min = 60_000;
const signals = { loaded: { unit: '1', digits: 0 }, metal: {}, other: {} };
const limits = {
  least: { fromC: 65, ms: 10 * min },
  peak: 100,
  most: { fromC: 90, ms: 5 * min },
};
const oven = { 'l/o': { loaded: 'loaded', metal: 'metal', ...limits } };
const plan = smallPlan({ signals, runs: oven });

type Run = Extract<Effect, { kind: 'run' }>;
const runsOf = (drive: Drive): Run[] => drive.effects.filter((e) => e.kind === 'run');
const features = (drive: Drive) => runsOf(drive).at(-1)!.features;

/** A metal reading every minute from one to the other, both included. */
function heat(drive: Drive, from: number, to: number, value: (m: number) => number): Drive {
  for (let m = from; m <= to; m += 1) drive.values('metal', [m * min, value(m)]);
  return drive;
}

test('a load is a run, from entry to exit, with what it was', () => {
  const drive = new Drive(plan).values('loaded', [0, 0], [min, 1]);
  heat(drive, 2, 22, (m) => Math.min(80, 20 + 5 * m));
  drive.values('loaded', [20 * min + 1, 1]);
  drive.values('loaded', [23 * min, 0], [24 * min, 0]);
  const id = `l/o@${min}`;
  expect(runsOf(drive)).toEqual([
    {
      kind: 'run',
      judged: min,
      run: id,
      station: 'l/o',
      action: 'opened',
      opened: min,
      closed: null,
      why: 'loaded',
      features: null,
    },
    {
      kind: 'run',
      judged: 23 * min,
      run: id,
      station: 'l/o',
      action: 'closed',
      opened: min,
      closed: 23 * min,
      why: 'unloaded',
      features: {
        readings: 21,
        peak: 80,
        lowest: 30,
        steepestPerMin: 5,
        aboveMs: 13 * min,
        upperMs: 0,
        unobservedMs: 2 * min,
        under: false,
        over: false,
      },
    },
  ]);
});

describe('its two sides', () => {
  const through = (value: (m: number) => number) => {
    const drive = new Drive(plan).values('loaded', [0, 1]);
    return features(heat(drive, 0, 20, value).values('loaded', [20 * min + 1, 0]));
  };
  test.each([
    ['short of the least', (m: number) => (m <= 9 ? 65 : 40), { under: true, over: false }],
    ['just dry', (m: number) => (m <= 10 ? 65 : 64), { under: false, over: false }],
    ['over the peak', (m: number) => (m === 15 ? 100.1 : 70), { under: false, over: true }],
    ['too long too hot', (m: number) => (m <= 6 ? 90 : 70), { under: false, over: true }],
    ['hot just long enough', (m: number) => (m <= 5 ? 90 : 89.9), { under: false, over: true }],
  ])('%s', (name, value, sides) => {
    const found = through(value);
    if (name === 'hot just long enough') expect(found!.upperMs).toBe(5 * min);
    else expect(found).toMatchObject(sides);
  });
  test('nobody can tell without a metal, or without limits', () => {
    const blind = smallPlan({ signals, runs: { 'l/o': { loaded: 'loaded', ...limits } } });
    const none = smallPlan({ signals, runs: { 'l/o': { loaded: 'loaded', metal: 'metal' } } });
    for (const [each, readings] of [
      [blind, 0],
      [none, 21],
    ] as const) {
      const drive = heat(new Drive(each).values('loaded', [0, 1]), 0, 20, () => 70);
      expect(features(drive.values('loaded', [21 * min, 0]))).toMatchObject({
        readings,
        under: null,
        over: null,
        aboveMs: null,
      });
    }
  });
});

describe('what nobody saw', () => {
  test('through downtime is unobserved, and the run goes on', () => {
    const drive = heat(new Drive(plan).values('loaded', [0, 1]), 0, 5, () => 70);
    drive.input({ kind: 'gap', judged: 5 * min + 1, fromMs: 5 * min, toMs: 30 * min });
    drive.advance(30 * min);
    heat(drive, 31, 33, () => 70).values('loaded', [33 * min + 1, 0]);
    expect(runsOf(drive)).toHaveLength(2);
    expect(features(drive)).toMatchObject({ aboveMs: 7 * min, unobservedMs: 26 * min + 1 });
  });
  test('through a bad sensor too', () => {
    const drive = heat(new Drive(plan).values('loaded', [0, 1]), 0, 5, () => 70);
    drive.offer({ signal: 'metal', at: 6 * min, quality: quality.undecodable }).advance(6 * min);
    heat(drive, 10, 12, () => 70).values('loaded', [12 * min, 0]);
    expect(features(drive)).toMatchObject({ aboveMs: 7 * min, unobservedMs: 5 * min });
  });
});

test('a bad reading of the load neither opens nor closes', () => {
  const drive = new Drive(plan).values('loaded', [0, 1]);
  drive.offer({ signal: 'loaded', at: min, quality: quality.undecodable }).advance(min);
  expect(runsOf(drive)).toHaveLength(1);
});

test('a clock set back moves the run along; its id stays', () => {
  const drive = heat(new Drive(plan, 60 * min).values('loaded', [60 * min, 1]), 60, 65, () => 70);
  drive.input({ kind: 'rebase', judged: 65 * min + 1, deltaMs: -30 * min }).advance(65 * min + 1);
  const now = drive.engine.now;
  drive.values('metal', [now + min, 70]).values('loaded', [now + min, 0]);
  const closed = runsOf(drive).at(-1)!;
  expect(closed).toMatchObject({ run: `l/o@${60 * min}`, opened: 30 * min, closed: now + min });
  expect(closed.features).toMatchObject({ aboveMs: 6 * min + 1 });
});

test('a station that leaves the site closes its run and says why', () => {
  const without = smallPlan({ signals, revision: 'without' });
  const drive = new Drive(plan, 0, [without]).values('loaded', [0, 1]);
  drive.input({ kind: 'site', judged: min, revision: 'without' }).advance(min);
  expect(runsOf(drive).at(-1)).toMatchObject({ action: 'closed', why: 'removed', closed: min });
  const kept = smallPlan({ signals, runs: oven, revision: 'kept' });
  const other = new Drive(plan, 0, [kept]).values('loaded', [0, 1]);
  other.input({ kind: 'site', judged: min, revision: 'kept' }).advance(min);
  expect(runsOf(other)).toHaveLength(1);
  expect(runsOf(other.values('loaded', [2 * min, 0]))).toHaveLength(2);
});

test('a snapshot in the middle of a run changes nothing', () => {
  const whole = new Drive(plan);
  let resumed = new Drive(plan);
  const effects: Effect[] = [];
  for (let m = 0; m <= 60; m += 1) {
    for (const drive of [whole, resumed]) {
      drive.values('metal', [m * min, 20 + ((m * 17) % 90)]);
      if (m % 7 === 0) drive.values('loaded', [m * min + 1, (m / 7) % 2]);
    }
    effects.push(...resumed.effects);
    resumed = Drive.resume(resumed);
  }
  expect(effects).toEqual(whole.effects);
  expect(runsOf(whole).length).toBeGreaterThan(6);
});
