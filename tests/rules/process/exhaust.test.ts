import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dryAirNeededKgPerH,
  exhaustDewPointC,
  exhaustRatio,
  exhaustSaturationPct,
} from '#rules/process/exhaust.ts';
import { boundless, limitRows } from '../../vectors/drying.ts';

const atmospherePa = 101_325;

describe('exhaust', () => {
  test.each(limitRows)(
    'carries $ratio kg/kg at most at $temperatureC °C ($flag: $source)',
    ({ temperatureC, ratio }) => {
      const pct = exhaustSaturationPct(ratio, temperatureC, atmospherePa)!;
      expect(Math.abs(pct - 100)).toBeLessThan(0.1);
    },
  );
  test('has no limit where water boils: nothing, never a negative figure', () => {
    const { temperatureC, pressurePa } = boundless;
    expect(exhaustSaturationPct(0.1, temperatureC, pressurePa)).toBeNull();
    expect(exhaustSaturationPct(0.1, 100.1, pressurePa)).toBeNull();
    expect(exhaustSaturationPct(0.1, 95, 80_000)).toBeNull();
  });
  test('9 kg/h of water into 300 kg/h of air is 40 g/kg, and drips on a duct of 30 °C', () => {
    const ratio = exhaustRatio(0.01, 9, 300)!;
    expect(ratio).toBeCloseTo(0.04, 12);
    expect(exhaustSaturationPct(ratio, 30, atmospherePa)!).toBeGreaterThan(100);
    expect(exhaustDewPointC(ratio, atmospherePa)!).toBeGreaterThan(30);
    expect(dryAirNeededKgPerH(9, 0.01, ratio)!).toBeCloseTo(300, 9);
    expect(dryAirNeededKgPerH(9, 0.04, 0.04)).toBeNull();
  });
  test('saturation is 100 % exactly at the dew point', () => {
    const ratios = fc.double({ min: 0.005, max: 5, noNaN: true });
    fc.assert(
      fc.property(ratios, (ratio) => {
        const dewC = exhaustDewPointC(ratio, atmospherePa)!;
        expect(exhaustSaturationPct(ratio, dewC, atmospherePa)!).toBeCloseTo(100, 5);
      }),
    );
  });
});

test('no number at all makes NaN, and nothing is answered outside', () => {
  expect(exhaustRatio(0.01, 9, 0)).toBeNull();
  expect(exhaustDewPointC(0, atmospherePa)).toBeNull();
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), (a, b, c) => {
      for (const answer of [
        exhaustRatio(a, b, c),
        exhaustSaturationPct(a, b, c),
        exhaustDewPointC(a, b),
        dryAirNeededKgPerH(a, b, c),
      ])
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});
