/** What adds up: running time, turnover, residue, time in the heat. By definition, worked by hand. */
import { describe, expect, test } from 'vitest';
import { residueGrowth } from '#rules/derive/residue-growth.ts';
import type { PlanKeeping } from '#rules/plan/plan.ts';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from '../engine/drive.ts';
import { smallPlan } from '../engine/small-plan.ts';
import { compiledBy, KindDrive, msPerH, msPerMin } from './drive-kind.ts';

describe('runtime', () => {
  const mixer = (): KindDrive =>
    new KindDrive('runtime', { above: '5 /min' }, ['signal', 'start'], '/min');
  test('counts while the signal is at or above the bound, and starts anew with the container', () => {
    const drive = mixer().values('start', [0, 0]).values('signal', [0, 25]);
    drive.values('start', [msPerH, 1]).advance(9 * msPerH + 2_000);
    expect(drive.last).toMatchObject({ value: 8 * 3_600, quality: quality.good });
    drive.values('signal', [10 * msPerH, 0]).advance(12 * msPerH);
    expect(drive.last.value).toBe(9 * 3_600);
    drive.values('start', [12 * msPerH, 0], [13 * msPerH, 1]).advance(14 * msPerH);
    expect(drive.last.value).toBe(0);
  });
  test('is told once a minute while it runs, though nothing comes', () => {
    const drive = mixer()
      .values('start', [0, 0])
      .values('signal', [0, 25])
      .advance(10 * msPerMin);
    expect(drive.told).toHaveLength(10);
  });
  test('before the first start, and over time nobody saw, a part is missing', () => {
    const drive = mixer().values('start', [0, 0]).values('signal', [0, 25]).advance(msPerH);
    expect(drive.last.quality).toBe(quality.unobserved);
    drive.values('start', [msPerH, 1]).advance(2 * msPerH);
    drive
      .bad('signal', 2 * msPerH)
      .values('signal', [4 * msPerH, 25])
      .advance(5 * msPerH + msPerMin + 2_000);
    expect(drive.last).toMatchObject({ value: 2 * 3_600, quality: quality.unobserved });
  });
  test('without a start it counts from the beginning of observation', () => {
    const drive = new KindDrive('runtime', { above: '5 /min' }, ['signal'], '/min');
    drive.values('signal', [0, 25]).advance(msPerH + 2_000);
    expect(drive.last).toMatchObject({ value: 3_600, quality: quality.good });
  });
  test('takes an upper bound, and refuses one below the lower', () => {
    const drive = new KindDrive(
      'runtime',
      { above: '5 /min', below: '30 /min' },
      ['signal'],
      '/min',
    );
    drive.values('signal', [0, 25], [msPerH, 40]).advance(2 * msPerH);
    expect(drive.last.value).toBe(3_600);
    const written = { above: '30 /min', below: '5 /min' };
    expect(compiledBy('runtime', written, ['signal'], '/min').problems).toHaveLength(1);
  });
  test('goes on after a restart', () => {
    const drive = mixer().values('start', [0, 0]).values('signal', [0, 25]);
    drive
      .values('start', [msPerH, 1])
      .advance(2 * msPerH)
      .restarted();
    expect(drive.advance(3 * msPerH + 2_000).last).toMatchObject({ value: 7_200, quality: 0 });
  });
});

describe('turnover', () => {
  const written = { stroke_volume: '0.5 L', tank_volume: '300 L' };
  test('strokes times their volume over the tank', () => {
    // 10 strokes a minute of 0.5 L are 300 L an hour.
    const drive = new KindDrive('turnover', written, ['strokes']).values('strokes', [0, 10]);
    expect(drive.advance(2 * msPerH + 1_000).last.value).toBe(2);
  });
  test('a negative count is no count, and adds nothing', () => {
    const drive = new KindDrive('turnover', written, ['strokes']);
    drive.values('strokes', [0, 10], [msPerH, -1]).advance(2 * msPerH);
    expect(drive.last.quality).toBe(quality.outsideFormula);
    expect(drive.values('strokes', [2 * msPerH, 0]).advance(3 * msPerH).last.value).toBe(1);
  });
  test('a volume of nothing is refused', () => {
    const none = { ...written, tank_volume: '0 L' };
    expect(compiledBy('turnover', none, ['strokes'], '/min').problems).toMatchObject([
      { path: ['tank_volume'], problem: 'it must be above zero' },
    ]);
  });
});

test('residue grows with spraying, is an estimate, and starts anew with cleaning', () => {
  const drive = new KindDrive(
    'residue-growth',
    { rate: '0.07 mm/h' },
    ['spraying', 'cleaned'],
    '1',
  );
  drive.values('cleaned', [0, 4]).values('spraying', [0, 1]).advance(msPerH);
  expect(drive.last.quality).toBe(quality.unobserved);
  drive
    .values('cleaned', [msPerH, 5])
    .values('spraying', [41 * msPerH, 0])
    .advance(50 * msPerH);
  // 40 h at 0.07 mm/h.
  expect(drive.last).toMatchObject({ value: 2.8, quality: quality.estimated });
  expect(drive.values('cleaned', [51 * msPerH, 6]).advance(52 * msPerH).last.value).toBe(0);
});

describe('time above', () => {
  const oven = (): KindDrive =>
    new KindDrive('time-above', { above: '100 Cel' }, ['temperature', 'loaded']);
  /** Up from 60 °C by 10 K a minute for eight minutes, and down again. */
  const ramp = (from: number): [number, number][] =>
    Array.from({ length: 17 }, (_, i) => [from + i * msPerMin, 60 + 10 * (i < 8 ? i : 16 - i)]);
  test('counts with straight lines between readings', () => {
    const drive = oven().values('temperature', [0, 60]).values('loaded', [0, 0], [10_000, 1]);
    drive.values('temperature', ...ramp(60_000));
    // At or above 100 °C from minute 4 to minute 12 of the ramp.
    expect(drive.advance(20 * msPerMin).last).toMatchObject({ value: 480, quality: 0 });
  });
  test('stands when the load has left, and begins anew with the next', () => {
    const drive = oven().values('temperature', [0, 120]).values('loaded', [0, 0]);
    drive
      .values('loaded', [msPerMin, 1], [3 * msPerMin, 0])
      .values('temperature', [9 * msPerMin, 120]);
    expect(drive.advance(10 * msPerMin).last.value).toBe(120);
    drive.values('loaded', [10 * msPerMin, 1]).values('temperature', [11 * msPerMin, 120]);
    expect(drive.advance(12 * msPerMin).last.value).toBe(60);
  });
  test('of a load that was in already, or was lost sight of, a part is missing', () => {
    const drive = oven().values('temperature', [0, 120]).values('loaded', [0, 1]).advance(msPerMin);
    expect(drive.last.quality).toBe(quality.unobserved);
    drive.values('loaded', [msPerMin, 0], [2 * msPerMin, 1]).advance(3 * msPerMin);
    expect(drive.last.quality).toBe(quality.good);
    drive.bad('temperature', 4 * msPerMin).values('temperature', [6 * msPerMin, 120]);
    drive.values('temperature', [7 * msPerMin, 120]).advance(8 * msPerMin);
    // Two minutes before, one after.
    expect(drive.last).toMatchObject({ value: 180, quality: quality.unobserved });
  });
});

describe('residue where nobody gauged yet', () => {
  const deposit = { sprayed: '1 L/h', onto_parts: '50 %', volume_solids: '28 %', area: '2 m2' };
  test('is all that misses the parts: 2.8 mm in 40 h (mass balance)', () => {
    const drive = new KindDrive('residue-growth', deposit, ['spraying', 'cleaned'], '1');
    drive.values('cleaned', [0, 0]).values('spraying', [0, 1]).values('cleaned', [2_000, 1]);
    expect(drive.advance(40 * msPerH + 2_000).last.value).toBe(2.8);
  });
  test('wants a rate, or all that a mass balance takes', () => {
    const { area: _, ...without } = deposit;
    for (const written of [{}, without, { ...deposit, onto_parts: '150 %' }])
      expect(compiledBy('residue-growth', written, ['spraying'], '1').problems).toHaveLength(1);
  });
});

describe('a mark starts it anew', () => {
  const line = (): Drive => {
    const kind = residueGrowth as unknown as PlanKeeping['keeps']['kind'];
    const { settings } = compiledBy('residue-growth', { rate: '0.1 mm/h' }, ['spraying'], '1');
    return new Drive(
      smallPlan({
        signals: {
          'l/s/spraying': { unit: '1', digits: 0 },
          'l/s/growth': { unit: 'mm', digits: 2 },
        },
        marks: { 'l/s/cleaned': null, 'l/s/other': null },
        derived: {
          'l/s/growth': {
            inputs: ['l/s/spraying'],
            keeps: { kind, settings, fingerprint: 'test' },
            marks: [0],
          },
        },
      }),
    );
  };
  const say = (drive: Drive, mark: string, judged: number, at = judged): Drive =>
    drive
      .input({ kind: 'command', judged, verb: 'mark', station: 'l/s', mark, at, by: 'p1' })
      .advance(judged);
  const last = (drive: Drive): string => drive.derived.at(-1)!.split(' ').slice(3).join(' ');
  test('at once, and other marks do not', () => {
    const drive = line().values('l/s/spraying', [0, 1]);
    say(drive, 'other', 10 * msPerH).advance(10 * msPerH + 5_000);
    expect(last(drive)).toBe(`1 ${quality.unobserved}`);
    say(drive, 'cleaned', 11 * msPerH).advance(11 * msPerH + 5_000);
    expect(last(drive)).toBe(`0 ${quality.estimated}`);
    expect(last(drive.advance(21 * msPerH + msPerMin))).toBe(`1 ${quality.estimated}`);
  });
  test('said long after, a part is missing', () => {
    const drive = line().values('l/s/spraying', [0, 1]);
    say(drive, 'cleaned', 10 * msPerH, 8 * msPerH).advance(10 * msPerH + 5_000);
    expect(last(drive)).toBe(`0 ${quality.unobserved}`);
  });
  test('said while its input is bad, it starts from when that is over', () => {
    const drive = line().values('l/s/spraying', [0, 1]).advance(msPerH);
    drive.offer({ signal: 'l/s/spraying', at: 2 * msPerH, quality: 100 }).advance(3 * msPerH);
    say(drive, 'cleaned', 4 * msPerH).values('l/s/spraying', [6 * msPerH, 1]);
    drive.advance(16 * msPerH + msPerMin);
    // Two hours after the cleaning nobody saw.
    expect(last(drive)).toBe(`1 ${quality.unobserved}`);
  });
});
