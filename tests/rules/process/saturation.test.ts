import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dewPointOverWaterC,
  frostPointBelowFreezingElseDewPointC,
  frostPointOverIceC,
  saturationPressureOverIceBelowFreezingPa,
  saturationPressureOverIcePa,
  saturationPressureOverWaterPa,
  triplePointC,
} from '#rules/process/saturation.ts';
import { beyondRange, saturationRows } from '../../vectors/saturation.ts';
import { magnusDewPointOverWaterC, magnusOverIcePa, magnusOverWaterPa } from './wmo-magnus.ts';

const pressureOver = { water: saturationPressureOverWaterPa, ice: saturationPressureOverIcePa };

describe('published saturation pressures', () => {
  test.each(saturationRows)(
    '$pressurePa Pa over $over at $temperatureC °C ($flag: $source)',
    ({ over, temperatureC, pressurePa, tolerancePa, toleranceShare = 0 }) => {
      const found = pressureOver[over](temperatureC)!;
      const tolerance = tolerancePa ?? toleranceShare * pressurePa;
      expect(tolerance).toBeGreaterThan(0);
      expect(Math.abs(found - pressurePa)).toBeLessThanOrEqual(tolerance);
    },
  );

  test(`${beyondRange.temperatureC} °C is tabled elsewhere and refused here`, () => {
    expect(saturationPressureOverWaterPa(beyondRange.temperatureC)).toBeNull();
    expect(dewPointOverWaterC(beyondRange.pressurePa)).toBeNull();
  });

  test('the WMO formulas agree within 0.3 % over water and 0.6 % over ice, where they hold', () => {
    // Magnus with three constants; WMO gives it for these ranges and this is what it can do.
    for (let t = -45; t <= 60; t += 1) {
      expect(Math.abs(saturationPressureOverWaterPa(t)! / magnusOverWaterPa(t) - 1)).toBeLessThan(
        t < -20 ? 0.006 : 0.0035,
      );
    }
    for (let t = -65; t <= 0; t += 1) {
      expect(Math.abs(saturationPressureOverIcePa(t)! / magnusOverIcePa(t) - 1)).toBeLessThan(
        0.006,
      );
    }
  });
});

describe('dew point and frost point', () => {
  const anyWater = fc.double({ min: -100, max: 100, noNaN: true });
  const anyIce = fc.double({ min: -100, max: triplePointC, noNaN: true });

  test('come back from the pressure they make', () => {
    fc.assert(
      fc.property(anyWater, (t) => {
        expect(dewPointOverWaterC(saturationPressureOverWaterPa(t)!)).toBeCloseTo(t, 8);
      }),
    );
    fc.assert(
      fc.property(anyIce, (t) => {
        expect(frostPointOverIceC(saturationPressureOverIcePa(t)!)).toBeCloseTo(t, 8);
      }),
    );
  });

  test('the ends of the range belong to it', () => {
    for (const t of [-100, 100]) {
      expect(dewPointOverWaterC(saturationPressureOverWaterPa(t)!)).toBeCloseTo(t, 9);
    }
    for (const t of [-100, 0, triplePointC]) {
      expect(frostPointOverIceC(saturationPressureOverIcePa(t)!)).toBeCloseTo(t, 9);
    }
  });

  test('below freezing the frost point is the higher one, and never by more than 10 %', () => {
    // The ratio of the two is near 0.9 down to -40 °C: e_w / e_i is 1.01 a kelvin, slopes 0.07 and 0.09.
    for (let pa = 15; pa < 611; pa *= 1.1) {
      const frost = frostPointOverIceC(pa)!;
      const dew = dewPointOverWaterC(pa)!;
      expect(frost).toBeGreaterThan(dew);
      expect(frost / dew).toBeGreaterThan(0.88);
    }
  });

  test('rise with pressure, also across the triple point, where the two curves meet', () => {
    let before = Number.NEGATIVE_INFINITY;
    for (let pa = 611.6; pa <= 611.72; pa += 0.001) {
      const point = frostPointBelowFreezingElseDewPointC(pa)!;
      expect(point).toBeGreaterThan(before);
      // A step in the curve would show: 0.001 Pa is about 2e-5 K.
      if (before > -1000) expect(point - before).toBeLessThan(2e-5 * 1.6);
      before = point;
    }
    expect(saturationPressureOverIceBelowFreezingPa(0.2)).toBe(saturationPressureOverWaterPa(0.2));
    expect(saturationPressureOverIceBelowFreezingPa(-0.2)).toBe(saturationPressureOverIcePa(-0.2));
    const seam = saturationPressureOverIceBelowFreezingPa(triplePointC - 1e-9)!;
    expect(saturationPressureOverIceBelowFreezingPa(triplePointC)! - seam).toBeLessThan(2e-4);
  });

  test('the WMO dew point is within 0.08 K from -20 to 60 °C', () => {
    // 0.35 % of pressure over the slope of ln p at 60 °C, 0.046 a kelvin.
    for (let t = -20; t <= 60; t += 2) {
      const pa = saturationPressureOverWaterPa(t)!;
      expect(Math.abs(magnusDewPointOverWaterC(pa) - dewPointOverWaterC(pa)!)).toBeLessThan(0.08);
    }
  });
});

describe('outside the range', () => {
  const nonsense = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  test.each([...nonsense, -100.001, 100.001, -273.15, 1e300])('no pressure at %d °C', (t) => {
    expect(saturationPressureOverWaterPa(t)).toBeNull();
    expect(saturationPressureOverIcePa(t)).toBeNull();
    expect(saturationPressureOverIceBelowFreezingPa(t)).toBeNull();
  });
  test('no ice above the triple point', () => {
    expect(saturationPressureOverIcePa(0.011)).toBeNull();
    expect(frostPointOverIceC(612)).toBeNull();
  });
  test.each([...nonsense, 0, -1, 5e-324, 1e-6, 102_000, 1e300])('no dew point at %d Pa', (pa) => {
    expect(dewPointOverWaterC(pa)).toBeNull();
    expect(frostPointOverIceC(pa)).toBeNull();
    expect(frostPointBelowFreezingElseDewPointC(pa)).toBeNull();
  });
  test('no number at all makes NaN', () => {
    fc.assert(
      fc.property(fc.double(), (x) => {
        for (const answer of [
          saturationPressureOverWaterPa(x),
          saturationPressureOverIcePa(x),
          dewPointOverWaterC(x),
          frostPointOverIceC(x),
        ]) {
          if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
        }
      }),
    );
  });
});
