/** Rules over several signals: which are needed, what goes on without one. */
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const group = smallPlan({
  signals: { a: {}, b: {}, c: {} },
  rules: {
    r: {
      kind: 'stray',
      on: ['a', 'b', 'c'],
      settings: { limit: '5 K', on_delay: '10 s' },
    },
  },
});

const all = (drive: Drive, at: number, a: number, b: number, c: number): Drive =>
  drive
    .values('a', [at, a])
    .values('b', [at + 1, b])
    .values('c', [at + 2, c]);
const bad = (drive: Drive, signal: string, at: number): Drive =>
  drive.offer({ signal, at, quality: quality.undecodable }).advance(at);

describe('a group', () => {
  test('names the one that is away', () => {
    const drive = all(new Drive(group), 0, 20, 20, 26).advance(20_000);
    expect(drive.told).toEqual(['10002 r raised unacknowledged']);
    const raised = drive.effects[0]!;
    expect(raised.kind === 'transition' && raised.evidence).toMatchObject({
      input: 2,
      value: 26,
      reference: 20,
    });
  });
  test('goes on without one of three', () => {
    const drive = bad(all(new Drive(group), 0, 20, 20, 26), 'c', 5_000).advance(20_000);
    expect(drive.told).toEqual([]);
    drive.values('a', [21_000, 20]).values('b', [22_000, 27]).advance(40_000);
    expect(drive.told).toEqual(['32000 r raised unacknowledged']);
  });
  test('of which one alone is left cannot be judged, and its alarm stays', () => {
    const drive = all(new Drive(group), 0, 20, 20, 26).advance(20_000);
    bad(bad(drive, 'a', 21_000), 'b', 22_000);
    expect(drive.effects.at(-1)).toMatchObject({ kind: 'judgeable', judgeable: false });
    drive.values('c', [23_000, 20]).advance(60_000);
    expect(drive.told).toHaveLength(1);
    drive.values('b', [61_000, 20]).advance(61_000);
    expect(drive.effects.map((e) => e.kind)).toContain('judgeable');
    expect(drive.told.at(-1)).toMatch(/r returned/);
  });
});

test('what changed while a rule could not be judged is seen once it can be', () => {
  const oven = smallPlan({
    signals: { loaded: { unit: '1', digits: 0 }, metal: {} },
    rules: {
      r: {
        kind: 'dry',
        on: ['metal', 'loaded'],
        settings: { above: '65 Cel', above_for: '1 min' },
      },
    },
  });
  const drive = new Drive(oven).values('loaded', [0, 1]).values('metal', [1_000, 40]);
  bad(drive, 'metal', 2_000);
  drive.values('loaded', [3_000, 0]).advance(4_000);
  expect(drive.told).toEqual([]);
  drive.values('metal', [5_000, 40]);
  expect(drive.told).toEqual(['5000 r raised unacknowledged']);
});

test('snapshot and restore at every input give the same', () => {
  const whole = new Drive(group);
  let resumed = new Drive(group);
  const told: string[] = [];
  for (let i = 0; i < 200; i += 1) {
    const signal = 'abc'[(i * 7) % 3]!;
    const value = 20 + (((i * 31) % 13) - 6);
    for (const drive of [whole, resumed]) {
      if (i % 11 === 0) bad(drive, signal, i * 3_000);
      else drive.values(signal, [i * 3_000, value]);
    }
    told.push(...resumed.told);
    resumed = Drive.resume(resumed);
  }
  expect(told).toEqual(whole.told);
  expect(told.length).toBeGreaterThan(4);
});

describe('residue that heats itself', () => {
  const place = smallPlan({
    signals: { air: {}, surface: {}, excess: { unit: 'K' } },
    derived: { excess: { inputs: ['surface', 'air'], compute: (x) => x[0]! - x[1]! } },
    rules: {
      r: {
        kind: 'self-heat',
        on: ['excess', 'surface'],
        settings: { excess: '5 K', rise: '1 K', rise_per: '1 min', on_delay: '60 s' },
        class: { latching: true, selfAcknowledging: false, highlyManaged: true },
        hazardToPeople: true,
      },
    },
  });
  const surfaceAt = (s: number): number => Math.round((80 + Math.max(0, s - 300) / 40) * 10) / 10;
  const readings = Array.from({ length: 100 }, (_, i) => i * 10).flatMap((s) => [
    { signal: 'air', at: s * 1_000, value: 79 + ((s / 10) % 3) / 10 },
    { signal: 'surface', at: s * 1_000 + 40, value: surfaceAt(s) },
  ]);

  test('is told once, stays until it is reset, and replays alike however it is fed', () => {
    const slow = new Drive(place);
    for (const reading of readings) slow.offer(reading).advance(reading.at);
    const fast = new Drive(place).feed(...readings);
    const end = readings.at(-1)!.at;
    let resumed = new Drive(place);
    const told: string[] = [];
    for (const reading of readings) {
      resumed.offer(reading).advance(reading.at);
      told.push(...resumed.told);
      resumed = Drive.resume(resumed);
    }
    for (const drive of [slow, fast]) drive.advance(end);
    expect(slow.told).toHaveLength(1);
    expect(slow.told[0]).toMatch(/^\d+ r raised unacknowledged$/);
    expect(fast.effects).toEqual(slow.effects);
    expect(told).toEqual(slow.told);
    // From 1 K, 1.5 K a minute more from 300 s on: 5 K at 460 s, and a minute of delay.
    expect(Number(slow.told[0]!.split(' ')[0])).toBeGreaterThan(515_000);
    expect(Number(slow.told[0]!.split(' ')[0])).toBeLessThan(600_000);
    slow.values('surface', [end + 60_000, 79]).advance(end + 600_000);
    expect(slow.told.at(-1)).toMatch(/returned latched-unacknowledged$/);
  });
});
