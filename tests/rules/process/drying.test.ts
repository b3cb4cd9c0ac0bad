import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  adiabaticOutletC,
  alongFlowTransferWPerM2K,
  constantRateKgPerM2H,
  evaporationHeatJPerKg,
  leastFlashOffMin,
  ovenWetBulbC,
  surfaceEvaporationKgPerH,
  waterRemovedKg,
} from '#rules/process/drying.ts';
import { exhaustDewPointC } from '#rules/process/exhaust.ts';
import { saturatedHumidityRatioOverWater } from '#rules/process/moist-air.ts';
import {
  balanceRow,
  basinRow,
  dryerRow,
  evaporationRows,
  ovenAir,
  poolRow,
  trayRow,
} from '../../vectors/drying.ts';
import { psychrolib } from './psychrolib-reference.ts';

const atmospherePa = 101_325;

describe('open surfaces', () => {
  test(`a pool (${poolRow.flag}: ${poolRow.source})`, () => {
    const { areaM2, airMPerS, surfaceRatio, airRatio } = poolRow;
    const perH = surfaceEvaporationKgPerH(areaM2, airMPerS, surfaceRatio, airRatio)!;
    expect(perH / 3_600).toBeCloseTo(poolRow.computedKgPerS, 6);
    expect(Math.abs(perH / 3_600 / poolRow.kgPerS - 1)).toBeLessThanOrEqual(poolRow.toleranceShare);
    // Trap: the formula gives kilograms by the hour. Taken by the second it is absurd.
    expect(perH).toBeGreaterThan(100 * poolRow.kgPerS);
  });
  test(`a basin (${basinRow.flag}: ${basinRow.source})`, () => {
    const { areaM2, airMPerS, surfaceRatio, airRatio, kgPerH } = basinRow;
    expect(surfaceEvaporationKgPerH(areaM2, airMPerS, surfaceRatio, airRatio)!).toBeCloseTo(
      kgPerH,
      9,
    );
  });
  test('wetter air settles on it', () =>
    expect(surfaceEvaporationKgPerH(1, 0, 0.01, 0.02)!).toBeLessThan(0));
});

describe(`a wet tray (${trayRow.flag}: ${trayRow.source})`, () => {
  const { airC, ratio, pressurePa, wetBulbC, toleranceK, toleranceShare } = trayRow;
  const wet = ovenWetBulbC(airC, ratio, pressurePa)!;
  test('wet bulb', () => {
    expect(Math.abs(wet - trayRow.libraryWetBulbC)).toBeLessThanOrEqual(toleranceK);
    expect(Math.abs(wet - wetBulbC)).toBeLessThan(0.05);
  });
  test('heat transfer and rate', () => {
    const h = alongFlowTransferWPerM2K(trayRow.fluxKgPerM2H)!;
    expect(h).toBeCloseTo(trayRow.transferWPerM2K, 1);
    const rate = constantRateKgPerM2H(airC, wet, h)!;
    expect(Math.abs(rate / trayRow.rateKgPerM2H - 1)).toBeLessThanOrEqual(toleranceShare);
  });
});

describe('wet bulb of oven air', () => {
  test('dew point 17.39 °C at 120 °C', () => {
    const { dryBulbC, dewPointC, ratio, wetBulbC, pressurePa } = ovenAir;
    expect(exhaustDewPointC(ratio, pressurePa)!).toBeCloseTo(dewPointC, 2);
    const found = saturatedHumidityRatioOverWater(dewPointC, pressurePa)!;
    // The dew point is printed to 0.01 K, which is 6e-4 of the ratio.
    expect(Math.abs(found / ratio - 1)).toBeLessThan(9e-4);
    expect(Math.abs(ovenWetBulbC(dryBulbC, ratio, pressurePa)! - wetBulbC)).toBeLessThan(0.005);
  });
  test('against PsychroLib from 40 to 200 °C and 2 to 300 g/kg', () => {
    let compared = 0;
    let solved = 0;
    for (let dryC = 40; dryC <= 200; dryC += 10) {
      for (const ratio of [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.3]) {
        const ours = ovenWetBulbC(dryC, ratio, atmospherePa);
        // From 100 °C on there is no limit, though the library gives a figure.
        if (dryC < 100 && ratio >= psychrolib.GetSatHumRatio(dryC, atmospherePa)) {
          expect(ours, `${dryC} °C ${ratio}`).toBeNull();
          continue;
        }
        // Its formula from wet bulb to ratio, at the wet bulb found here. Saturation pressures are
        // up to 3e-4 apart; a pressure's share is (1 + W/0.62) of that in the saturated ratio.
        const back = psychrolib.GetHumRatioFromTWetBulb(dryC, ours!, atmospherePa);
        const saturated = saturatedHumidityRatioOverWater(ours!, atmospherePa)!;
        const toleranceRatio = 3e-4 * saturated * (1 + saturated / 0.62);
        expect(Math.abs(back - ratio), `${dryC} °C ${ratio}`).toBeLessThan(toleranceRatio);
        // Its own way there begins at the middle of dew point and air, and is lost where that boils.
        if ((exhaustDewPointC(ratio, atmospherePa)! + dryC) / 2 < 99) {
          const theirs = psychrolib.GetTWetBulbFromHumRatio(dryC, ratio, atmospherePa);
          expect(Math.abs(ours! - theirs), `${dryC} °C ${ratio}`).toBeLessThan(0.01);
          solved += 1;
        }
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(110);
    expect(solved).toBeGreaterThan(80);
  });
  test('lies between dew point and air, and rises with both', () => {
    const dry = fc.double({ min: 60, max: 190, noNaN: true });
    const ratios = fc.double({ min: 0.001, max: 0.14, noNaN: true });
    fc.assert(
      fc.property(dry, ratios, (dryC, ratio) => {
        const wet = ovenWetBulbC(dryC, ratio, atmospherePa)!;
        expect(wet).toBeLessThanOrEqual(dryC);
        expect(wet).toBeGreaterThanOrEqual(exhaustDewPointC(ratio, atmospherePa)! - 0.01);
        expect(ovenWetBulbC(dryC + 5, ratio, atmospherePa)!).toBeGreaterThan(wet);
        expect(ovenWetBulbC(dryC, ratio + 0.001, atmospherePa)!).toBeGreaterThan(wet);
      }),
    );
  });
});

test(`an adiabatic dryer (${dryerRow.flag}: ${dryerRow.source})`, () => {
  const { inletK, wetBulbK, transferUnits, outletK, toleranceK } = dryerRow;
  const found = adiabaticOutletC(inletK - 273.15, wetBulbK - 273.15, transferUnits)! + 273.15;
  expect(found).toBeCloseTo(outletK, 4);
  expect(found).toBeGreaterThan(dryerRow.publishedLowK - toleranceK);
  expect(found).toBeLessThan(dryerRow.publishedHighK + toleranceK);
});

test(`a balance (${balanceRow.flag}: ${balanceRow.source})`, () => {
  const { driedKg, beforePct, afterPct, waterKg } = balanceRow;
  expect(waterRemovedKg(driedKg, beforePct, afterPct)).toBe(waterKg);
  expect(waterRemovedKg(driedKg, 5, 80)).toBeNull();
  expect(waterRemovedKg(driedKg, 100, 5)).toBeNull();
});

describe('flash-off', () => {
  test('67 µm of 35 % in air of 40 °C, wet bulb 22 °C, 20 W/m2K: over five minutes at the least', () => {
    const rate = constantRateKgPerM2H(40, 22, 20)!;
    expect(rate).toBeCloseTo((3_600 * 20 * 18) / (2_501e3 - 2_326 * 22), 9);
    expect(leastFlashOffMin(67, 1.1, 35, rate)!).toBeCloseTo(5.4, 1);
  });
  test('saturated air dries nothing', () => {
    expect(constantRateKgPerM2H(40, 40, 20)).toBe(0);
    expect(leastFlashOffMin(67, 1.1, 35, 0)).toBeNull();
    expect(constantRateKgPerM2H(40, 41, 20)).toBeNull();
  });
  test.each(evaporationRows)(
    'at $temperatureC °C a kilogram takes $kJPerKg kJ ($flag: $source)',
    ({ temperatureC, kJPerKg, toleranceShare }) => {
      const found = evaporationHeatJPerKg(temperatureC)! / 1_000;
      expect(Math.abs(found / kJPerKg - 1)).toBeLessThanOrEqual(toleranceShare);
    },
  );
  test('and is not asked above boiling', () => expect(evaporationHeatJPerKg(101)).toBeNull());
});

test('no number at all makes NaN, and nothing is answered outside', () => {
  expect(ovenWetBulbC(201, 0.01, atmospherePa)).toBeNull();
  expect(ovenWetBulbC(5, 0, atmospherePa)).toBeNull();
  expect(alongFlowTransferWPerM2K(2_000)).toBeNull();
  expect(adiabaticOutletC(50, 60, 1)).toBeNull();
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, c, d) => {
      for (const answer of [
        ovenWetBulbC(a, b, c),
        constantRateKgPerM2H(a, b, c),
        leastFlashOffMin(a, b, c, d),
        surfaceEvaporationKgPerH(a, b, c, d),
        adiabaticOutletC(a, b, c),
        waterRemovedKg(a, b, c),
      ])
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});
