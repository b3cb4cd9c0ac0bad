import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RunProfileView, Series, SeriesPoint } from '#agent/web/contract.ts';
import { niceStep, placeOn, scaleFor } from '../../dashboards/draw/scale.ts';
import { columnsOf, legendOf, summaryOf } from '../../dashboards/draw/series.ts';
import { corridorOf } from '../../dashboards/judge/corridor.ts';
import { placeName } from '../../dashboards/text/names.ts';

const none = { low: [], high: [] };

describe('a ruler’s scale', () => {
  test('shows every limit and value, with room for the banks', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(
        fc.option(number),
        fc.option(number),
        fc.array(number, { minLength: 1 }),
        (a, b, values) => {
          const [low, high] = a !== null && b !== null && a > b ? [b, a] : [a, b];
          const scale = scaleFor(
            { low: low === null ? [] : [low], high: high === null ? [] : [high] },
            values,
          );
          expect(scale.to).toBeGreaterThan(scale.from);
          for (const each of [
            ...values,
            ...(low === null ? [] : [low]),
            ...(high === null ? [] : [high]),
          ]) {
            expect(each).toBeGreaterThanOrEqual(scale.from);
            expect(each).toBeLessThanOrEqual(scale.to);
          }
          if (low !== null) expect(placeOn(scale, low)).toBeGreaterThan(0);
          if (high !== null) expect(placeOn(scale, high)).toBeLessThan(100);
        },
      ),
    );
  });
  test('stands while the value wanders inside the window', () => {
    const marks = { low: [18], high: [27] };
    expect(scaleFor(marks, [21.4])).toEqual(scaleFor(marks, [23.9]));
  });
  test('a level has no end below nothing', () => {
    expect(scaleFor({ ...none, low: [260] }, [205, 818], false).from).toBe(0);
    expect(scaleFor({ ...none, low: [5] }, [2], true).from).toBeLessThan(2);
  });
  test.each([
    [0.7, 1],
    [1.2, 2],
    [3, 5],
    [7, 10],
    [30, 50],
  ])('a step of at least %d is %d', (rough, step) => expect(niceStep(rough)).toBeCloseTo(step, 9));
});

const step = 60_000;
const good = (minute: number, mean: number): SeriesPoint => [
  minute * step,
  mean - 1,
  mean + 1,
  mean,
  60,
  0,
];
const bad = (minute: number): SeriesPoint => [minute * step, null, null, null, 60, 60];
const same = (value: number): number => value;

describe('a chart’s columns', () => {
  test('a gap is an empty row, so that no line crosses it', () => {
    const series = {
      unit: 'Cel',
      damage: [],
      uncertain: [],
      points: [good(0, 20), good(1, 20), good(30, 21)],
    };
    const { times, mean } = columnsOf(series, same, step, null);
    expect(mean).toEqual([20, 20, null, 21]);
    expect(times[2]).toBe(15.5 * 60);
  });
  test('a sensor that speaks seldom has no gaps between its readings', () => {
    const series = { unit: 'Cel', damage: [], uncertain: [], points: [good(0, 20), good(10, 20)] };
    expect(columnsOf(series, same, step, 10 * step).mean).toEqual([20, 20]);
  });
  test('readings that were not usable are a gap of their own, marked', () => {
    const series = {
      unit: 'Cel',
      damage: [],
      uncertain: [],
      points: [good(0, 20), bad(1), bad(2), good(3, 20)],
    };
    const { mean, unusable } = columnsOf(series, same, step, null);
    expect(mean).toEqual([20, null, null, 20]);
    expect(unusable).toEqual([[30, 150]]);
  });
  test('readings in doubt are drawn as they are, and marked', () => {
    const points = [good(0, 20), good(1, 20), good(2, 20), good(9, 20)];
    const series = { unit: 'Cel', damage: [], uncertain: [0, 3, 1, 0], points };
    const { mean, doubtful, unusable } = columnsOf(series, same, step, null);
    expect(mean.filter((each) => each !== null)).toEqual([20, 20, 20, 20]);
    expect([doubtful, unusable]).toEqual([[[30, 150]], []]);
  });
  test('a reading among good ones that was not usable is marked too', () => {
    const mixed: SeriesPoint = [step, 19, 21, 20, 60, 7];
    const series = { unit: 'Cel', damage: [], uncertain: [], points: [good(0, 20), mixed] };
    const { partly, unusable, mean } = columnsOf(series, same, step, null);
    expect([partly, unusable, mean]).toEqual([[[30, 90]], [], [20, 20]]);
  });
  test('the legend has what the chart shows, and no more', () => {
    const plain = { unit: 'Cel', damage: [], uncertain: [], points: [good(0, 20), good(1, 20)] };
    const marks = { limits: 0, forecast: false, open: false, answered: false };
    const of = (series: Series, more: Partial<typeof marks> = {}) =>
      legendOf(columnsOf(series, same, step, null), { ...marks, ...more });
    expect(of(plain)).toEqual(['mean', 'range']);
    expect(of({ ...plain, points: [] })).toEqual([]);
    expect(of({ ...plain, uncertain: [0, 1] })).toContain('doubtful');
    expect(of({ ...plain, points: [good(0, 20), bad(1)] })).toContain('unusable');
    expect(of({ ...plain, points: [good(0, 20), [step, 19, 21, 20, 9, 2]] })).toContain('partly');
    expect(of({ ...plain, points: [good(0, 20), good(30, 20)] })).toContain('gap');
    expect(of(plain, { limits: 2, forecast: true, open: true, answered: true })).toEqual([
      'mean',
      'range',
      'limit',
      'forecast',
      'alarm',
      'answered',
    ]);
  });
  test('lowest, highest, and the mean by how many readings there were', () => {
    const points: SeriesPoint[] = [good(0, 20), [step, 9, 11, 10, 20, 0], bad(2)];
    expect(summaryOf({ unit: 'Cel', damage: [], uncertain: [], points })).toEqual({
      low: 9,
      high: 21,
      mean: 17.5,
    });
    expect(summaryOf({ unit: 'Cel', damage: [], uncertain: [], points: [bad(0)] })).toBeNull();
  });
});

describe('the corridor of good runs', () => {
  const run = (opened: number, means: readonly number[]): RunProfileView =>
    ({
      run: { opened, closed: opened + means.length * step },
      profile: [
        {
          signal: 's',
          unit: 'Cel',
          points: means.map((mean, i) => [opened + i * step, mean, mean, mean, 1, 0]),
        },
      ],
    }) as unknown as RunProfileView;
  test('needs three runs', () => {
    expect(corridorOf([run(0, [20, 60]), run(0, [20, 60])])).toBeNull();
  });
  test('reaches from the lowest to the highest at each moment since entry', () => {
    const corridor = corridorOf([run(0, [20, 60]), run(5e6, [22, 58]), run(9e6, [21, 64])])!;
    expect(corridor.map(({ low, high }) => [low, high])).toEqual([
      [20, 22],
      [58, 64],
    ]);
  });
});

test('ids as people say them', () => {
  expect(placeName('mounts-1/mixer-3/agitator')).toBe('Mixer 3 agitator');
  expect(placeName('mounts-1/mixer-3')).toBe('Mixer 3');
});
