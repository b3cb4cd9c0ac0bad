import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dewPointOverWaterFromHumidityC,
  firstDepositFromHumidityC,
  humidityOverWaterPct,
  surfaceMarginK,
  vapourDensityKgPerM3,
  vapourPressureOverWaterPa,
} from '#rules/process/humidity.ts';
import { frostPointOverIceC, saturationPressureOverIcePa } from '#rules/process/saturation.ts';
import {
  belowFreezingHumidity,
  customaryMargin,
  dewPointRows,
  marginRows,
  testClimate,
} from '../../vectors/humidity.ts';
import { psychrolib } from './psychrolib-reference.ts';

describe('published dew points', () => {
  test.each(dewPointRows)(
    '$pointC °C over $over at $temperatureC °C, $humidityPct % ($flag: $source)',
    ({ temperatureC, humidityPct, over, pointC, toleranceK }) => {
      const found =
        over === 'water'
          ? dewPointOverWaterFromHumidityC(temperatureC, humidityPct)
          : firstDepositFromHumidityC(temperatureC, humidityPct);
      expect(Math.abs(found! - pointC)).toBeLessThanOrEqual(toleranceK);
    },
  );

  test('vapour in the climate of coating tests, 23 °C and 50 %', () => {
    const found = vapourPressureOverWaterPa(testClimate.temperatureC, testClimate.humidityPct)!;
    expect(Math.abs(found / testClimate.vapourPa - 1)).toBeLessThan(3e-4);
  });
});

describe('trap: below 0 °C a dew point has two meanings', () => {
  test('5 °C and 30 %: frost and dew point lie 1.2 K apart, and each has its own name', () => {
    const dew = dewPointOverWaterFromHumidityC(5, 30)!;
    const deposit = firstDepositFromHumidityC(5, 30)!;
    expect(deposit - dew).toBeCloseTo(1.2193, 3);
  });

  test('-5 °C and 80 % is over water here; over ice the same words mean 5 % less vapour', () => {
    const { temperatureC, humidityPct, overWaterPa, overIcePa, tolerancePa } =
      belowFreezingHumidity;
    const overWater = vapourPressureOverWaterPa(temperatureC, humidityPct)!;
    const overIce = (saturationPressureOverIcePa(temperatureC)! * humidityPct) / 100;
    expect(Math.abs(overWater - overWaterPa)).toBeLessThanOrEqual(tolerancePa);
    expect(Math.abs(overIce - overIcePa)).toBeLessThanOrEqual(tolerancePa);
  });
});

describe('against PsychroLib over -40 to 100 °C and 1 to 100 %', () => {
  const temperatures = Array.from({ length: 71 }, (_, i) => -40 + 2 * i);
  const humidities = Array.from({ length: 34 }, (_, i) => 1 + 3 * i);

  // Its saturation pressure is Hyland-Wexler's, ours Sonntag's. Over water they are at most 3e-4
  // apart; over ice 3e-4 down to -20 °C and 1.4e-3 at -90 °C, on either side of IAPWS (see
  // vectors/saturation.ts). A share of pressure is a temperature by the slope of ln p at the
  // point found. Its solver stops at 0.001 K.
  const apart = (t: number): number => (t < -20 ? 1.4e-3 : 3e-4);
  const slopePerK = (t: number): number =>
    Math.log(psychrolib.GetSatVapPres(t + 0.5) / psychrolib.GetSatVapPres(t - 0.5));

  test('above freezing, where both take humidity over water', () => {
    let compared = 0;
    for (const t of temperatures.filter((c) => c > 0.01)) {
      for (const humidity of humidities) {
        const vapourPa = (psychrolib.GetSatVapPres(t) * humidity) / 100;
        const theirs = psychrolib.GetTDewPointFromVapPres(t, vapourPa);
        const ours = firstDepositFromHumidityC(t, humidity)!;
        // Twice: the vapour at the air's temperature, and the way back from it.
        const toleranceK = (3e-4 + apart(theirs)) / slopePerK(theirs) + 0.001;
        expect(Math.abs(ours - theirs), `${t} °C ${humidity} %`).toBeLessThan(toleranceK);
        compared += 1;
      }
    }
    expect(compared).toBe(50 * 34);
  });

  test('below freezing, where it takes humidity over ice: the same vapour, the same frost point', () => {
    let compared = 0;
    for (const t of temperatures.filter((c) => c <= 0.01)) {
      for (const humidity of humidities) {
        const vapourPa = (psychrolib.GetSatVapPres(t) * humidity) / 100;
        const theirs = psychrolib.GetTDewPointFromVapPres(t, vapourPa);
        const ours = frostPointOverIceC(vapourPa)!;
        expect(Math.abs(ours - theirs), `${t} °C ${humidity} %`).toBeLessThan(
          apart(theirs) / slopePerK(theirs) + 0.001,
        );
        // The same number of percent over water is more vapour, so a higher frost point.
        if (t < 0) expect(firstDepositFromHumidityC(t, humidity)!).toBeGreaterThan(ours);
        compared += 1;
      }
    }
    expect(compared).toBe(21 * 34);
  });
});

describe('margin of a surface', () => {
  test.each(marginRows)(
    '$marginK K at $surfaceC °C in $temperatureC °C, $humidityPct % ($flag: $source)',
    ({ surfaceC, temperatureC, humidityPct, marginK, toleranceK }) => {
      const found = surfaceMarginK(surfaceC, temperatureC, humidityPct)!;
      expect(Math.abs(found - marginK)).toBeLessThanOrEqual(toleranceK);
    },
  );

  test(`with the surface at air temperature ${customaryMargin.leastK} K is stricter than ${customaryMargin.humidityMaxPct} %`, () => {
    for (let t = 5; t <= 35; t += 1) {
      expect(surfaceMarginK(t, t, customaryMargin.humidityMaxPct)!).toBeLessThan(
        customaryMargin.leastK,
      );
    }
  });

  test('below freezing goes by the frost point, the smaller margin', () => {
    const byDewPoint = -5 - dewPointOverWaterFromHumidityC(5, 30)!;
    const margin = surfaceMarginK(-5, 5, 30)!;
    expect(margin).toBeCloseTo(4.919, 3);
    expect(margin).toBeLessThan(byDewPoint);
  });

  test('is negative on a wet surface', () => {
    expect(surfaceMarginK(10, 23, 60)!).toBeLessThan(-4);
  });
});

describe('other measures of the same vapour', () => {
  test('humidity comes back from vapour pressure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        (t, humidity) => {
          const vapourPa = vapourPressureOverWaterPa(t, humidity)!;
          expect(humidityOverWaterPct(vapourPa, t)! / humidity).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  test('saturated air at 20 °C holds 17.3 g/m3 (common practice, no published source)', () => {
    const vapourPa = vapourPressureOverWaterPa(20, 100)!;
    expect(vapourDensityKgPerM3(vapourPa, 20)! * 1000).toBeCloseTo(17.3, 1);
  });
});

describe('outside the range', () => {
  test.each([0, -1, 105.1, Number.NaN, Number.POSITIVE_INFINITY])('no humidity of %d %', (rh) => {
    expect(vapourPressureOverWaterPa(20, rh)).toBeNull();
    expect(dewPointOverWaterFromHumidityC(20, rh)).toBeNull();
    expect(firstDepositFromHumidityC(20, rh)).toBeNull();
    expect(surfaceMarginK(20, 20, rh)).toBeNull();
  });

  test('a sensor a little over 100 % is believed: that is when it drips', () => {
    expect(surfaceMarginK(20, 20, 103)!).toBeLessThan(0);
    expect(surfaceMarginK(20, 20, 103)!).toBeGreaterThan(-1);
  });

  test('nor a surface, a temperature or a vapour that cannot be', () => {
    expect(surfaceMarginK(Number.NaN, 20, 50)).toBeNull();
    expect(surfaceMarginK(101, 20, 50)).toBeNull();
    expect(vapourPressureOverWaterPa(150, 1)).toBeNull();
    expect(humidityOverWaterPct(-1, 20)).toBeNull();
    expect(humidityOverWaterPct(1000, 101)).toBeNull();
    expect(vapourDensityKgPerM3(1000, Number.NaN)).toBeNull();
    expect(vapourDensityKgPerM3(-1, 20)).toBeNull();
  });

  test('no number at all makes NaN', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (a, b, c) => {
        for (const answer of [
          surfaceMarginK(a, b, c),
          dewPointOverWaterFromHumidityC(a, b),
          vapourDensityKgPerM3(a, b),
          humidityOverWaterPct(a, b),
        ]) {
          if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
        }
      }),
    );
  });
});
