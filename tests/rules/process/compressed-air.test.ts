import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  absoluteFromGaugeKPa,
  atmosphericDewPointOverWaterC,
  atmosphericFrostPointC,
  dewPointOverWaterAtPressureC,
  frostPointBelowFreezingAtPressureC,
  standardAtmosphereKPa,
  vapourPpm,
  waterClassByDewPoint,
} from '#rules/process/compressed-air.ts';
import { vapourDensityKgPerM3, vapourPressureOverWaterPa } from '#rules/process/humidity.ts';
import { saturationPressureOverWaterPa } from '#rules/process/saturation.ts';
import { toCanonical, unitOf } from '#rules/quantity/unit.ts';
import {
  atmosphericRows,
  contentRows,
  doubledPressure,
  letDown,
  publishedTable,
  waterClasses,
  waterLoad,
} from '../../vectors/compressed-air.ts';

const fahrenheit = unitOf('[degF]')!;
const toF = (celsius: number): number => celsius * 1.8 + 32;
const psiGauge = (value: number): number =>
  absoluteFromGaugeKPa(toCanonical(value, unitOf('[psi]')!))!;

describe('pressure dew point to the atmosphere', () => {
  test.each(atmosphericRows)(
    '$pressureDewPointC °C at $lineGaugeKPa kPa gauge is $pointC °C over $over ($flag: $source)',
    ({ pressureDewPointC, lineGaugeKPa, over, pointC, toleranceK }) => {
      const convert = over === 'ice' ? atmosphericFrostPointC : atmosphericDewPointOverWaterC;
      const found = convert(pressureDewPointC, lineGaugeKPa)!;
      expect(Math.abs(found - pointC)).toBeLessThanOrEqual(toleranceK);
    },
  );

  test(`trap: a published table is in the water convention (${publishedTable.source})`, () => {
    const { pressureDewPointC, lineGaugeKPa, pointC, toleranceK } = publishedTable;
    const overWater = atmosphericDewPointOverWaterC(pressureDewPointC, lineGaugeKPa)!;
    const frost = atmosphericFrostPointC(pressureDewPointC, lineGaugeKPa)!;
    expect(Math.abs(overWater - pointC)).toBeLessThanOrEqual(toleranceK);
    expect(Math.abs(frost - pointC)).toBeGreaterThan(toleranceK);
  });

  test.each(letDown.rows)('let down to $toGaugePsi psi(g), published $publishedF °F', (row) => {
    const dewPointC = toCanonical(letDown.dewPointF, fahrenheit);
    const from = psiGauge(letDown.fromGaugePsi);
    const to = psiGauge(row.toGaugePsi);
    const frostF = toF(frostPointBelowFreezingAtPressureC(dewPointC, from, to)!);
    expect(Math.abs(frostF - row.frostF)).toBeLessThan(0.01);
    expect(Math.abs(frostF - row.publishedF)).toBeLessThanOrEqual(row.toleranceF);
    if (row.overWaterF === null) return;
    // Here the printed figure is nearer to the water convention than to the frost point.
    const waterF = toF(dewPointOverWaterAtPressureC(dewPointC, from, to)!);
    expect(Math.abs(waterF - row.overWaterF)).toBeLessThan(0.01);
    expect(Math.abs(waterF - row.publishedF)).toBeLessThan(1);
    expect(Math.abs(frostF - row.publishedF)).toBeGreaterThan(1);
  });

  test(`doubling the pressure of -10 °C (${doubledPressure.source})`, () => {
    const { dewPointC, fromKPa, toKPa, publishedC, toleranceK, fromPa, toPa, pointC } =
      doubledPressure;
    const found = dewPointOverWaterAtPressureC(dewPointC, fromKPa, toKPa)!;
    expect(Math.abs(found - publishedC)).toBeLessThanOrEqual(toleranceK);
    expect(Math.abs(found - pointC)).toBeLessThan(0.01);
    expect(Math.abs(saturationPressureOverWaterPa(dewPointC)! - fromPa)).toBeLessThan(0.1);
    expect(Math.abs(saturationPressureOverWaterPa(found)! - toPa)).toBeLessThan(0.1);
  });

  test('direction: lower in the atmosphere than in the line, equal at equal pressure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: 0.1, max: 1000, noNaN: true }),
        (dewPointC, gaugeKPa) => {
          for (const convert of [atmosphericFrostPointC, atmosphericDewPointOverWaterC]) {
            expect(convert(dewPointC, gaugeKPa)!).toBeLessThan(dewPointC);
            expect(convert(dewPointC, 0)!).toBeCloseTo(dewPointC, 8);
          }
        },
      ),
    );
  });

  test('there and back is the same dew point', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 40, noNaN: true }), (dewPointC) => {
        const out = frostPointBelowFreezingAtPressureC(dewPointC, 801.325, 101.325)!;
        expect(frostPointBelowFreezingAtPressureC(out, 101.325, 801.325)!).toBeCloseTo(
          dewPointC,
          6,
        );
      }),
    );
  });

  test('the atmosphere of a high place can be given', () => {
    // 84.5 kPa is about 1500 m; the air expands further, so it ends drier.
    const high = atmosphericFrostPointC(3, 700, 84.5)!;
    expect(high).toBeLessThan(atmosphericFrostPointC(3, 700)!);
    expect(high).toBeCloseTo(frostPointBelowFreezingAtPressureC(3, 784.5, 84.5)!, 12);
  });
});

describe('what the air carries', () => {
  test.each(contentRows)(
    '$pressureDewPointC °C at $lineGaugeKPa kPa gauge: $ppm ppm, $gPerM3 g/m3 ($flag: $source)',
    ({ pressureDewPointC, lineGaugeKPa, ppm, tolerancePpm, gPerM3, toleranceGPerM3 }) => {
      const found = vapourPpm(pressureDewPointC, absoluteFromGaugeKPa(lineGaugeKPa)!)!;
      expect(Math.abs(found - ppm)).toBeLessThanOrEqual(tolerancePpm);
      const expandedPa = found * 1e-6 * standardAtmosphereKPa * 1000;
      const density = vapourDensityKgPerM3(expandedPa, 20)! * 1000;
      expect(Math.abs(density - gPerM3)).toBeLessThanOrEqual(toleranceGPerM3);
    },
  );

  test(`water taken in by a compressor in a shift (${waterLoad.source})`, () => {
    const { temperatureC, humidityPct, litresPerS, hours, publishedKg, toleranceShare } = waterLoad;
    const vapourPa = vapourPressureOverWaterPa(temperatureC, humidityPct)!;
    const airM3 = (litresPerS / 1000) * hours * 3600;
    const waterKg = vapourDensityKgPerM3(vapourPa, temperatureC)! * airM3;
    expect(Math.abs(waterKg / publishedKg - 1)).toBeLessThanOrEqual(toleranceShare);
    expect(Math.abs(waterKg - waterLoad.computedKg)).toBeLessThan(0.01);
  });

  test.each(waterClasses.limits)(
    `water class $class up to $dewPointC °C (${waterClasses.source})`,
    (limit) => {
      expect(waterClassByDewPoint(limit.dewPointC)).toBe(limit.class);
      const worse = waterClassByDewPoint(limit.dewPointC + 0.01);
      expect(worse).toBe(limit.class === 6 ? null : limit.class + 1);
    },
  );

  test('no class is read off where a dew point cannot tell', () => {
    expect(waterClassByDewPoint(25)).toBeNull();
    expect(waterClassByDewPoint(Number.NaN)).toBeNull();
    expect(waterClassByDewPoint(Number.NEGATIVE_INFINITY)).toBeNull();
    expect(waterClassByDewPoint(-95)).toBe(1);
  });
});

describe('outside the range', () => {
  test('gauge readings below a vacuum and pressures beyond the formula', () => {
    expect(absoluteFromGaugeKPa(0)).toBe(101.325);
    expect(absoluteFromGaugeKPa(-50)).toBe(51.325);
    for (const gauge of [-101.325, -200, 1_900, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(absoluteFromGaugeKPa(gauge)).toBeNull();
      expect(atmosphericFrostPointC(3, gauge)).toBeNull();
    }
    for (const atmosphere of [0, 49, 121, Number.NaN]) {
      expect(absoluteFromGaugeKPa(700, atmosphere)).toBeNull();
    }
  });

  test('dew points the formula does not cover, coming or going', () => {
    for (const dewPointC of [-101, 60.1, Number.NaN]) {
      expect(atmosphericFrostPointC(dewPointC, 700)).toBeNull();
      expect(atmosphericDewPointOverWaterC(dewPointC, 700)).toBeNull();
      expect(vapourPpm(dewPointC, 801.325)).toBeNull();
    }
    // -95 °C at 8 bar would be colder than the formula reaches.
    expect(atmosphericFrostPointC(-95, 700)).toBeNull();
    // At 60 °C and 10 kPa the water would boil.
    expect(vapourPpm(60, 10)).toBeNull();
  });

  test('no number at all makes NaN', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (a, b, c) => {
        for (const answer of [
          atmosphericFrostPointC(a, b, c),
          dewPointOverWaterAtPressureC(a, b, c),
          vapourPpm(a, b),
        ]) {
          if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
        }
      }),
    );
  });
});
