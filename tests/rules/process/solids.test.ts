import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type DensityReading,
  densityAtSolidsGPerMl,
  massSolidsPct,
  type SolidsAnchor,
  solidsDensityAtGPerMl,
  solidsDensityGPerMl,
  solidsErrorFromAirPct,
  solidsFromDensity,
} from '#rules/process/solids.ts';
import { sensitivity } from '../../vectors/solids.ts';

const { ovenSolidsPct, densityGPerMl, temperatureC } = sensitivity;
const anchor: SolidsAnchor = {
  ovenSolidsPct,
  ovenSolidsUPct: 0.3,
  densityGPerMl,
  densityUGPerMl: 0.0005,
  temperatureC,
};
const reading: DensityReading = {
  densityGPerMl,
  densityUGPerMl: 0.001,
  temperatureC,
  temperatureUK: 0.3,
};
const rhoS = solidsDensityGPerMl(anchor)!;
const found = (from: SolidsAnchor, at: DensityReading) => {
  const answer = solidsFromDensity(from, at);
  if (answer.kind === 'refused') throw new Error(answer.why);
  return answer;
};

describe('35 % solids at 1.10 g/mL', () => {
  test('the solids weigh 1.36 g/mL, and the anchor reads itself', () => {
    expect(rhoS).toBeCloseTo(1.357, 2);
    expect(found(anchor, reading).solidsPct).toBeCloseTo(35, 9);
    expect(densityAtSolidsGPerMl(35, 20, rhoS)!).toBeCloseTo(1.1, 12);
  });
  test('0.001 g/mL is 0.31 % solids', () => {
    const more = massSolidsPct(1.101, 20, rhoS)! - massSolidsPct(1.1, 20, rhoS)!;
    expect(more).toBeCloseTo(sensitivity.perMilligramPerMl, 2);
  });
  test('5 K not allowed for are about 0.4 % solids', () => {
    // The tank is at 25 °C, the water in it is lighter, and the reader takes it for 20 °C.
    const true25 = densityAtSolidsGPerMl(35, 25, rhoS)!;
    const error = 35 - massSolidsPct(true25, 20, rhoS)!;
    expect(Math.abs(error - sensitivity.fiveKelvinUncorrected)).toBeLessThan(0.2);
  });
  test('1 % of air by volume reads 3.4 % too low', () => {
    const error = solidsErrorFromAirPct(1.1, 20, rhoS, 1)!;
    // The figure is 0.011 g/mL times the slope; the curve itself bends by 0.05 % over that step.
    expect(Math.abs(error - sensitivity.onePercentAir)).toBeLessThan(0.1);
    expect(solidsErrorFromAirPct(1.1, 20, rhoS, 0)).toBe(0);
    expect(solidsErrorFromAirPct(1.1, 20, rhoS, 31)).toBeNull();
    // So much air that it floats above water: no solids are read at all.
    expect(solidsErrorFromAirPct(1.1, 20, rhoS, 15)).toBeNull();
  });
});

describe('its uncertainty', () => {
  test('adds what the hydrometer, the thermometer and the oven test bring', () => {
    const { uPct, uFromDensityPct, uFromTemperaturePct, uFromAnchorPct } = found(anchor, reading);
    expect(uFromDensityPct).toBeCloseTo(0.31, 2);
    // 0.21 kg/m3 of water per K, and no step away from the anchor's temperature.
    expect(uFromTemperaturePct).toBeLessThan(0.05);
    // The oven's own 0.3 %, nearly as it is, and half the reading's share for half its u.
    expect(uFromAnchorPct).toBeCloseTo(Math.hypot(0.3, 0.156), 2);
    expect(uPct).toBeCloseTo(Math.hypot(uFromDensityPct, uFromTemperaturePct, uFromAnchorPct), 12);
  });
  test('grows with the distance from the temperature of the anchor', () => {
    const near = found(anchor, { ...reading, temperatureC: 22 });
    const far = found(anchor, { ...reading, temperatureC: 30 });
    expect(far.uFromTemperaturePct).toBeGreaterThan(2 * near.uFromTemperaturePct);
  });
  test('no input without error: none', () => {
    const sure = found(
      { ...anchor, ovenSolidsUPct: 0, densityUGPerMl: 0 },
      { ...reading, densityUGPerMl: 0, temperatureUK: 0 },
    );
    expect(sure.uPct).toBe(0);
  });
  test('agrees with a hundred thousand throws of the dice', () => {
    // GUM supplement 1: the spread of the answers is the uncertainty. Seeded (mulberry32).
    let state = 20260417;
    const random = (): number => {
      state = (state + 0x6d2b79f5) | 0;
      let t = Math.imul(state ^ (state >>> 15), 1 | state);
      t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
      return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
    };
    const normal = (): number =>
      Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const throws = Array.from({ length: 100_000 }, () => {
      const thrownS = solidsDensityGPerMl({
        ...anchor,
        ovenSolidsPct: 35 + 0.3 * normal(),
        densityGPerMl: 1.1 + 0.0005 * normal(),
      })!;
      return massSolidsPct(1.1 + 0.001 * normal(), 20 + 0.3 * normal(), thrownS)!;
    });
    const mean = throws.reduce((a, b) => a + b) / throws.length;
    const sd = Math.sqrt(throws.reduce((a, b) => a + (b - mean) ** 2, 0) / throws.length);
    expect(mean).toBeCloseTo(35, 1);
    expect(Math.abs(sd / found(anchor, reading).uPct - 1)).toBeLessThan(0.02);
  });
});

describe('refusals', () => {
  const why = (from: Partial<SolidsAnchor>, at: Partial<DensityReading>) => {
    const answer = solidsFromDensity({ ...anchor, ...from }, { ...reading, ...at });
    return answer.kind === 'refused' ? answer.why : answer.kind;
  };
  test.each([
    ['no oven solids', { ovenSolidsPct: Number.NaN }, {}, 'anchor-out-of-range'],
    ['an anchor no solid explains', { densityGPerMl: 1.55 }, {}, 'anchor-out-of-range'],
    ['an anchor of unknown uncertainty', { ovenSolidsUPct: Number.NaN }, {}, 'anchor-out-of-range'],
    ['an anchor worth nothing', { densityUGPerMl: 0.5 }, {}, 'anchor-out-of-range'],
    ['a cold tank', {}, { temperatureC: 4 }, 'reading-out-of-range'],
    ['no density', {}, { densityGPerMl: Number.NaN }, 'reading-out-of-range'],
    ['a reading of unknown uncertainty', {}, { densityUGPerMl: -1 }, 'reading-out-of-range'],
    ['solids as heavy as water', { densityGPerMl: 1.005 }, {}, 'density-cannot-tell'],
    ['lighter than water', {}, { densityGPerMl: 0.99 }, 'not-of-this-lot'],
    ['heavier than the solids', {}, { densityGPerMl: 1.4 }, 'not-of-this-lot'],
  ] as const)('%s', (_, from, at, expected) => expect(why(from, at)).toBe(expected));
});

const solids = fc.double({ min: 1.1, max: 60, noNaN: true });
const warmth = fc.double({ min: 5, max: 45, noNaN: true });

test('solids to density and back', () => {
  fc.assert(
    fc.property(solids, warmth, (pct, t) => {
      const density = densityAtSolidsGPerMl(pct, t, rhoS)!;
      if (density < 0.9 || density > 1.6) return;
      expect(massSolidsPct(density, t, rhoS)!).toBeCloseTo(pct, 8);
    }),
  );
});

test('denser reads as more solids, warmer at one density too', () => {
  fc.assert(
    fc.property(fc.double({ min: 1.01, max: 1.2, noNaN: true }), warmth, (density, t) => {
      expect(massSolidsPct(density + 0.001, t, rhoS)!).toBeGreaterThan(
        massSolidsPct(density, t, rhoS)!,
      );
      if (t <= 44)
        expect(massSolidsPct(density, t + 1, rhoS)!).toBeGreaterThan(
          massSolidsPct(density, t, rhoS)!,
        );
    }),
  );
});

test('away from the anchor the solids have grown too: a warm tank holds more than the cold curve says', () => {
  const at = { ...reading, temperatureC: 30 };
  const { solidsPct } = found(anchor, at);
  const grown = solidsDensityAtGPerMl(rhoS, 20, 30)!;
  expect(solidsPct).toBeCloseTo(massSolidsPct(1.1, 30, grown)!, 9);
  expect(solidsPct - massSolidsPct(1.1, 30, rhoS)!).toBeCloseTo(0.4, 1);
});

test('the range ends where it is said to', () => {
  for (const t of [5, 45]) {
    expect(massSolidsPct(1.1, t, rhoS)).not.toBeNull();
    expect(solidsFromDensity(anchor, { ...reading, temperatureC: t }).kind).toBe('solids');
  }
  for (const t of [4.99, 45.01]) {
    expect(massSolidsPct(1.1, t, rhoS)).toBeNull();
    expect(solidsFromDensity(anchor, { ...reading, temperatureC: t }).kind).toBe('refused');
  }
});

test('solids grow lighter with warmth; what cannot be is refused', () => {
  expect(solidsDensityAtGPerMl(1.36, 20, 30)! / 1.36).toBeCloseTo(1 / 1.004, 9);
  expect(solidsDensityAtGPerMl(1.36, 20, 50)).toBeNull();
  expect(solidsDensityAtGPerMl(7, 20, 30)).toBeNull();
  expect(solidsDensityAtGPerMl(1.36, 20, 30, -1)).toBeNull();
});

test('no number at all makes NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), fc.double(), (a, b, c, d) => {
      for (const answer of [
        massSolidsPct(a, b, c),
        densityAtSolidsGPerMl(a, b, c),
        solidsErrorFromAirPct(a, b, c, d),
        solidsDensityGPerMl({ ovenSolidsPct: a, densityGPerMl: b, temperatureC: c }),
      ])
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
    }),
  );
});
