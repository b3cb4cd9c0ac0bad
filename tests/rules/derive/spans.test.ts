/** What looks back over a span: averages, rates, degree-hours. By definition, worked by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { compiledBy, KindDrive, msPerH, msPerMin } from './drive-kind.ts';

const everyS = (from: number, to: number, of: (s: number) => number): [number, number][] =>
  Array.from({ length: to - from }, (_, i) => [(from + i) * 1_000, of(from + i)]);

describe('moving average', () => {
  const air = (): KindDrive => new KindDrive('moving-average', { span: '30 s' }, ['signal'], 'm/s');
  test('a flutter comes to its mean', () => {
    const drive = air().values('signal', ...everyS(0, 120, (s) => (s % 2 === 0 ? 0.4 : 0.6)));
    expect(drive.last.quality).toBe(quality.good);
    expect(Math.abs(drive.last.value - 0.5)).toBeLessThan(0.01);
  });
  test('before half the span was seen it says so', () => {
    const drive = air().values('signal', ...everyS(0, 10, () => 0.5));
    expect(drive.last).toMatchObject({ value: 0.5, quality: quality.unobserved });
  });
  test('a step is through after the span, though nothing comes any more', () => {
    const drive = air().values('signal', ...everyS(0, 60, () => 1), [60_000, 0]);
    expect(drive.advance(75_000).last.value).toBeGreaterThan(0.4);
    expect(drive.advance(92_000).last.value).toBe(0);
  });
  test('a reading counts as long as it held', () => {
    const drive = air().values('signal', [0, 1], [10_000, 0], [20_000, 0]).advance(20_200);
    expect(Math.abs(drive.last.value - 10 / 20)).toBeLessThan(0.01);
  });
  test('lies between the least and the most that was read, whatever is missing', () => {
    const step = fc.record({
      afterMs: fc.nat({ max: 50_000 }),
      value: fc.integer({ min: -50, max: 50 }),
      bad: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 30 }), (steps) => {
        const drive = air();
        let at = 1;
        for (const { afterMs, value, bad } of steps) {
          at += afterMs;
          if (bad) drive.bad('signal', at);
          else drive.values('signal', [at, value]);
        }
        drive.advance(at + 100_000);
        const good = steps.filter(({ bad }) => !bad).map(({ value }) => value);
        for (const { value, quality: code } of drive.told) {
          if (code >= 100) continue;
          expect(value).toBeGreaterThanOrEqual(Math.min(...good) - 0.001);
          expect(value).toBeLessThanOrEqual(Math.max(...good) + 0.001);
        }
      }),
    );
  });
  test('a year without power costs no year of slices', () => {
    const drive = air().values('signal', ...everyS(0, 60, () => 1));
    const year = 365 * 24 * msPerH;
    const begun = performance.now();
    drive
      .bad('signal', 60_500)
      .values('signal', [year, 2])
      .advance(year + 1_000);
    expect(drive.last).toMatchObject({ value: 2, quality: quality.unobserved });
    expect(performance.now() - begun).toBeLessThan(2_000);
  });
  test('a span shorter than a second is refused', () => {
    expect(compiledBy('moving-average', { span: '500 ms' }, ['signal']).problems).toHaveLength(1);
  });
});

describe('rate', () => {
  const metal = (unit = 'Cel'): KindDrive =>
    new KindDrive('rate', { span: '8 min' }, ['signal'], unit);
  test('of a straight rise is its slope, whatever a wild reading says', () => {
    const rise = everyS(0, 900, (s) => (s === 700 ? 400 : 20 + s / 20));
    const drive = metal().values('signal', ...rise);
    expect(Math.abs(drive.last.value - 3)).toBeLessThan(0.1);
    expect(drive.last.quality).toBe(quality.good);
  });
  test('is not known before three of its sixteen means', () => {
    const drive = metal().values('signal', ...everyS(0, 60, (s) => s));
    expect(drive.last.quality).toBe(quality.tooEarly);
  });
  test('comes to rest where nothing comes any more', () => {
    const drive = metal().values('signal', ...everyS(0, 600, (s) => s / 10));
    expect(drive.advance(20 * msPerMin).last.value).toBe(0);
  });
  test('a level in mm falls in m/s; a pressure has no rate', () => {
    const drive = metal('mm').values('signal', ...everyS(0, 600, (s) => 500 - s / 60));
    expect(drive.last.value).toBeCloseTo(-1 / 60_000, 6);
  });
});

describe('degree-hours', () => {
  const store = (written: object): KindDrive =>
    new KindDrive('degree-hours', { span: '2 d', ...written }, ['temperature']);
  test('above: kelvin times hours, and forgotten after the span', () => {
    const drive = store({ above: '25 Cel' }).values('temperature', [0, 30], [10 * msPerH, 20]);
    expect(drive.advance(30 * msPerH).last).toMatchObject({ value: 50, quality: quality.good });
    expect(drive.advance(60 * msPerH).last.value).toBe(0);
  });
  test('below', () => {
    const drive = store({ below: '5 Cel' }).values('temperature', [0, 2], [5 * msPerH, 8]);
    expect(drive.advance(6 * msPerH).last.value).toBe(15);
  });
  test('one side only', () => {
    for (const written of [{}, { above: '25 Cel', below: '5 Cel' }])
      expect(
        compiledBy('degree-hours', { span: '2 d', ...written }, ['temperature']).problems,
      ).toHaveLength(1);
  });
});

describe('mean kinetic temperature', () => {
  const store = (): KindDrive =>
    new KindDrive('mean-kinetic-temperature', { span: '4 d' }, ['temperature']);
  test('of half the time at each of two temperatures (E/R 10 000 K: Tong and Lock 2015)', () => {
    const drive = store().values('temperature', [0, 20], [48 * msPerH, 40], [96 * msPerH, 40]);
    const rate = (c: number): number => Math.exp(-10_000 / (c + 273.15));
    const expected = 10_000 / -Math.log((rate(20) + rate(40)) / 2) - 273.15;
    const { value, quality: code } = drive.advance(96 * msPerH + 2_000).last;
    expect(Math.abs(value - expected)).toBeLessThan(0.1);
    expect(code).toBe(quality.good);
  });
  test('is nothing for a span in which it froze', () => {
    const drive = store().values('temperature', [0, 20], [msPerH, -1], [2 * msPerH, 20]);
    expect(drive.advance(3 * msPerH).last.quality).toBe(quality.outsideFormula);
    drive.values('temperature', [90 * msPerH, 20], [98 * msPerH, 20], [99 * msPerH, 20]);
    expect(drive.advance(99 * msPerH + 2_000).last.value).toBe(20);
  });
});
