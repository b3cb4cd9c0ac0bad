/** Drums in a cold store, through the engine. */
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { compiledBy, KindDrive, msPerH, msPerMin } from './drive-kind.ts';

const still = { transfer: '8 W/(m2.K)', start: '20 Cel' };
/** Air each ten minutes; a drum comes in after the first. */
function store(
  name: string,
  written: object,
  airC: (h: number) => number,
  hours: number,
): KindDrive {
  const drive = new KindDrive(name, { ...still, ...written }, ['air', 'arrived']);
  drive.values('air', [0, airC(0)]).values('arrived', [0, 0], [2_000, 1]);
  for (let at = 10 * msPerMin; at <= hours * msPerH; at += 10 * msPerMin)
    drive.values('air', [at, airC(at / msPerH)]);
  return drive.advance(hours * msPerH + 1_000);
}

describe('wall of a drum', () => {
  test('at 5 °C after 4.5 h in air of -10 °C, an estimate (208 L drum, conduction, computed)', () => {
    const { value, quality: code } = store('drum-wall-temperature', {}, () => -10, 4.5).last;
    expect(Math.abs(value - 5)).toBeLessThan(0.3);
    expect(code).toBe(quality.estimated);
  });
  test('nothing is told below 0 °C', () => {
    expect(store('drum-wall-temperature', {}, () => -10, 40).last.value).toBe(0);
  });
  test('before a drum’s past is known it says so', () => {
    const drive = new KindDrive('drum-wall-temperature', still, ['air']).values('air', [0, 10]);
    expect(drive.advance(msPerH).last).toMatchObject({ value: 10, quality: quality.unobserved });
  });
  test('goes on after a restart', () => {
    const whole = store('drum-wall-temperature', {}, (h) => 5 - h, 6);
    const through = store('drum-wall-temperature', {}, (h) => 5 - h, 6).restarted();
    for (const drive of [whole, through]) drive.values('air', [7 * msPerH, 3]).advance(8 * msPerH);
    expect(through.last).toEqual(whole.last);
  });
  test('a transfer in another unit, or none that makes a drum, is refused', () => {
    const problems = (transfer: string) =>
      compiledBy('drum-wall-temperature', { transfer }, ['air']).problems.length;
    expect(problems('8 W')).toBe(1);
    expect(problems('90000 W/(m2.K)')).toBe(1);
    expect(problems('8 W/(m2.K)')).toBe(0);
  });
});

describe('time to the floor', () => {
  test('counts down to nothing, and is a week where the air is warm enough', () => {
    const drive = store('drum-time-to-floor', { floor: '5 Cel' }, (h) => (h < 2 ? 12 : -10), 8);
    expect(drive.told.find(({ at }) => at > msPerH)?.value).toBe(7 * 86_400);
    const cold = drive.told.filter(({ at }) => at > 2.2 * msPerH).map(({ value }) => value);
    expect(cold[0]).toBeGreaterThan(3 * 3_600);
    expect(cold[0]).toBeLessThan(4.5 * 3_600);
    expect(cold).toEqual([...cold].sort((a, b) => b - a));
    expect(cold.at(-1)).toBe(0);
  });
  test('a floor below 0 °C is refused', () => {
    const written = { ...still, floor: '-2 Cel' };
    expect(compiledBy('drum-time-to-floor', written, ['air']).problems).toHaveLength(1);
  });
});

describe('bulk of a drum', () => {
  const stirred = (on: number): KindDrive => {
    const drive = new KindDrive('drum-bulk-temperature', still, ['air', 'stirred', 'arrived']);
    drive.values('air', [0, -10]).values('stirred', [0, on]).values('arrived', [0, 0], [2_000, 1]);
    return drive.values('air', [13 * msPerH, -10]).advance(13 * msPerH + 1_000);
  };
  test('stirred, 5 °C after 13 h in air of -10 °C, uncertain for its Biot number (computed)', () => {
    const { value, quality: code } = stirred(1).last;
    expect(Math.abs(value - 5)).toBeLessThan(0.5);
    expect(code).toBe(quality.estimated);
  });
  test('a speed tells it too, beyond the one that stirs', () => {
    const at = (rpm: number): number => {
      const written = { ...still, stirred_above: '5 /min' };
      const drive = new KindDrive('drum-bulk-temperature', written, ['air', 'stirred']);
      return drive.values('air', [0, 12]).values('stirred', [0, rpm]).advance(2_000).last.quality;
    };
    expect([at(25), at(4)]).toEqual([quality.unobserved, quality.outsideFormula]);
  });
  test('not stirred it has no temperature', () => {
    expect(stirred(0).last.quality).toBe(quality.outsideFormula);
  });
});

describe('freight', () => {
  const written = { ...still, floor: '5 Cel' };
  const leftH = (coldestC: number, hours: number): number => {
    const drive = new KindDrive('freight-margin', written, ['coldest', 'transit']);
    drive.values('coldest', [0, coldestC]).values('transit', [0, hours * 3_600]);
    const { value, quality: code } = drive.advance(2_000).last;
    expect(code).toBe(quality.estimated);
    return value / 3_600;
  };
  test('of -10 °C all the way a drum stands 4.5 h at its wall (computed), and is 2 h short of 6.5', () => {
    expect(leftH(-10, 0)).toBeCloseTo(4.5, 0);
    expect(leftH(-10, 6.5) - leftH(-10, 0)).toBeCloseTo(-6.5, 3);
    expect(leftH(-10, 6.5)).toBeLessThan(0);
  });
  test('of milder air than its floor it stands as long as is told', () => {
    expect(leftH(6, 48)).toBe(7 * 24 - 48);
  });
  test('a floor below 0 °C is refused, and so is a heat transfer that is none', () => {
    for (const wrong of [{ floor: '-2 Cel' }, { transfer: '900 W/(m2.K)' }])
      expect(
        compiledBy('freight-margin', { ...written, ...wrong }, ['coldest', 'transit']).problems,
      ).toHaveLength(1);
  });
});
