import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { humidityOverWaterPct, vapourPressureOverWaterPa } from '#rules/process/humidity.ts';
import {
  enthalpyKJPerKg,
  humidityRatio,
  humidityRatioFromWetBulbIcedBelowFreezing,
  saturatedHumidityRatioOverWater,
  specificVolumeM3PerKg,
  vapourPressureFromRatioPa,
  wetBulbIcedBelowFreezingC,
} from '#rules/process/moist-air.ts';
import { dewPointOverWaterC } from '#rules/process/saturation.ts';
import { testClimate } from '../../vectors/humidity.ts';
import {
  handbookExample,
  libraryExample,
  ratioRows,
  saturatedRows,
  wetBulbRows,
} from '../../vectors/moist-air.ts';
import { psychrolib } from './psychrolib-reference.ts';

const ratioFromHumidity = (t: number, humidity: number, pressurePa: number): number | null => {
  const vapourPa = vapourPressureOverWaterPa(t, humidity);
  return vapourPa === null ? null : humidityRatio(vapourPa, pressurePa);
};

test.each(ratioRows)('W $ratio from $from ($flag: $source)', (row) => {
  const from =
    row.from === 'humidity' ? ratioFromHumidity : humidityRatioFromWetBulbIcedBelowFreezing;
  const found = from(row.dryBulbC, row.second, row.pressurePa)!;
  expect(Math.abs(found / row.ratio - 1)).toBeLessThanOrEqual(row.toleranceShare);
});

test.each(wetBulbRows)('wet bulb $wetBulbC °C ($flag: $source)', (row) => {
  const found = wetBulbIcedBelowFreezingC(row.temperatureC, row.humidityPct, row.pressurePa)!;
  expect(Math.abs(found - row.wetBulbC)).toBeLessThanOrEqual(row.toleranceK);
});

test('humidity ratio in the climate of coating tests', () => {
  const { temperatureC, humidityPct, pressurePa, ratio } = testClimate;
  const found = ratioFromHumidity(temperatureC, humidityPct, pressurePa)!;
  expect(Math.abs(found / ratio - 1)).toBeLessThan(3e-4);
});

test(`40 °C dry and 20 °C wet bulb, all of it (${handbookExample.source})`, () => {
  const { dryBulbC, wetBulbC, pressurePa } = handbookExample;
  const ratio = humidityRatioFromWetBulbIcedBelowFreezing(dryBulbC, wetBulbC, pressurePa)!;
  const vapourPa = vapourPressureFromRatioPa(ratio, pressurePa)!;
  const found = {
    ratio,
    humidityPct: humidityOverWaterPct(vapourPa, dryBulbC)!,
    dewPointC: dewPointOverWaterC(vapourPa)!,
    enthalpyKJPerKg: enthalpyKJPerKg(dryBulbC, ratio)!,
    volumeM3PerKg: specificVolumeM3PerKg(dryBulbC, ratio, pressurePa)!,
  };
  // The handbook reads a chart: half of its last digit, or what the library's own test allows.
  expect(Math.abs(found.ratio - handbookExample.ratio)).toBeLessThan(1e-4);
  expect(Math.abs(found.humidityPct - handbookExample.humidityPct)).toBeLessThan(1);
  expect(Math.abs(found.dewPointC - handbookExample.dewPointC)).toBeLessThan(0.5);
  expect(Math.abs(found.enthalpyKJPerKg - handbookExample.enthalpyKJPerKg)).toBeLessThan(0.1);
  expect(found.volumeM3PerKg / handbookExample.volumeM3PerKg).toBeCloseTo(1, 2);
  // The library: 3e-4 of saturation pressure at 20 °C is 1e-3 of this W, whose two terms nearly cancel.
  expect(Math.abs(found.ratio / libraryExample.ratio - 1)).toBeLessThan(1e-3);
  expect(Math.abs(found.humidityPct - libraryExample.humidityPct)).toBeLessThan(0.02);
  expect(Math.abs(found.dewPointC - libraryExample.dewPointC)).toBeLessThan(0.02);
  expect(Math.abs(found.enthalpyKJPerKg - libraryExample.enthalpyKJPerKg)).toBeLessThan(0.02);
  expect(Math.abs(found.volumeM3PerKg - libraryExample.volumeM3PerKg)).toBeLessThan(2e-5);
});

test.each(saturatedRows)('saturated W at $temperatureC °C ($source)', (row) => {
  const found = saturatedHumidityRatioOverWater(row.temperatureC, row.pressurePa)!;
  // W = e/(p-e) magnifies 3e-4 of e by p/(p-e), 2.3 at 85 °C.
  expect(Math.abs(found / row.ideal - 1)).toBeLessThan(3e-4 * (1 + row.ideal / 0.621945));
  expect(found).toBeLessThan(row.withEnhancement);
  expect(1 - found / row.withEnhancement).toBeLessThan(row.shortShareMax);
});

test('against PsychroLib: wet bulb over 2 to 90 °C and 1 to 100 %', () => {
  // Saturation pressures 3e-4 apart at two temperatures, over a slope of at least 0.036 a kelvin,
  // and its solver's 0.001 K. At a wet bulb of 0 °C water and ice differ, so a wet bulb may lie on either side.
  const toleranceK = (2 * 3e-4) / 0.036 + 0.001;
  for (let t = 2; t <= 90; t += 4) {
    for (let humidity = 1; humidity <= 100; humidity += 9) {
      const theirs = psychrolib.GetTWetBulbFromRelHum(t, humidity / 100, 101325);
      const ours = wetBulbIcedBelowFreezingC(t, humidity, 101325)!;
      expect(Math.abs(ours - theirs), `${t} °C ${humidity} %`).toBeLessThan(toleranceK);
    }
  }
});

test('wet bulb lies between first deposit and air, and gives back the humidity', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 90, noNaN: true }),
      fc.double({ min: 20, max: 99.9, noNaN: true }),
      (t, humidity) => {
        const wetBulb = wetBulbIcedBelowFreezingC(t, humidity, 101325)!;
        expect(wetBulb).toBeLessThanOrEqual(t);
        if (Math.abs(wetBulb) < 0.5) return;
        const ratio = humidityRatioFromWetBulbIcedBelowFreezing(t, wetBulb, 101325)!;
        const expected = ratioFromHumidity(t, humidity, 101325)!;
        expect(Math.abs(ratio / expected - 1)).toBeLessThan(1e-5);
      },
    ),
  );
});

describe('outside the range', () => {
  test('air that would boil holds no ratio, and never a negative one', () => {
    expect(saturatedHumidityRatioOverWater(100, 101325)).toBeNull();
    expect(saturatedHumidityRatioOverWater(99, 101325)!).toBeGreaterThan(10);
    expect(humidityRatio(101325, 101325)).toBeNull();
    expect(humidityRatio(2e5, 101325)).toBeNull();
    expect(wetBulbIcedBelowFreezingC(100, 100, 101325)).toBeNull();
  });

  test('a wet bulb above the dry one, or lower than dry air allows', () => {
    expect(humidityRatioFromWetBulbIcedBelowFreezing(20, 21, 101325)).toBeNull();
    expect(humidityRatioFromWetBulbIcedBelowFreezing(60, 5, 101325)).toBeNull();
    expect(wetBulbIcedBelowFreezingC(20, 101, 101325)).toBeNull();
  });

  test('no number at all makes NaN, and the search always ends', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (a, b, c) => {
        for (const answer of [
          humidityRatio(a, b),
          vapourPressureFromRatioPa(a, b),
          humidityRatioFromWetBulbIcedBelowFreezing(a, b, c),
          wetBulbIcedBelowFreezingC(a, b, c),
          enthalpyKJPerKg(a, b),
          specificVolumeM3PerKg(a, b, c),
        ]) {
          if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
        }
      }),
    );
  });
});
