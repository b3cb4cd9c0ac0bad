import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  activationFromZKJPerMol,
  arrheniusFactor,
  equivalentMinutes,
  equivalentMs,
  gasConstantJPerMolK,
  type Kinetics,
  zFactor,
  zFromActivationK,
} from '#rules/process/heat-equivalent.ts';
import { arrheniusRows, conversionRow, rampRow, zRows } from '../../vectors/heat-equivalent.ts';

test.each(zRows)(
  '$minutes min at $temperatureC °C are $equivalent min at $referenceC °C, z $zK K ($flag: $source)',
  ({ temperatureC, referenceC, zK, minutes, equivalent, tolerance }) => {
    expect(
      Math.abs(minutes * zFactor(temperatureC, referenceC, zK)! - equivalent),
    ).toBeLessThanOrEqual(tolerance);
    const profile = { timesMs: [0, minutes * 60_000], metalC: [temperatureC, temperatureC] };
    const found = equivalentMinutes(profile, referenceC, { by: 'z', zK })!;
    expect(Math.abs(found - equivalent)).toBeLessThanOrEqual(tolerance);
  },
);

describe(`up, hold and down (${rampRow.flag}: ${rampRow.source})`, () => {
  const { fromC, holdC, rampMin, holdMin, referenceC, zK, tolerance } = rampRow;
  const turns = [0, rampMin, rampMin + holdMin, 2 * rampMin + holdMin];
  const profile = { timesMs: turns.map((t) => t * 60_000), metalC: [fromC, holdC, holdC, fromC] };
  const z: Kinetics = { by: 'z', zK };
  test('four readings give it exactly', () => {
    expect(
      Math.abs(equivalentMinutes(profile, referenceC, z)! - rampRow.exactMin),
    ).toBeLessThanOrEqual(tolerance);
    const ramp = equivalentMs(fromC, holdC, rampMin * 60_000, referenceC, z)! / 60_000;
    expect(Math.abs(ramp - rampRow.eachRampMin)).toBeLessThanOrEqual(tolerance);
  });
  test.each(rampRow.trapezoids)(
    'trap: rates added every $stepMin min give $minutes min, too much',
    ({ stepMin, minutes }) => {
      const at = (t: number): number =>
        Math.min(holdC, fromC + ((holdC - fromC) * Math.min(t, turns[3]! - t)) / rampMin);
      let sum = 0;
      const steps = Math.round(turns[3]! / stepMin);
      for (let i = 0; i < steps; i += 1) {
        const a = zFactor(at(i * stepMin), referenceC, zK)!;
        const b = zFactor(at((i + 1) * stepMin), referenceC, zK)!;
        sum += ((a + b) / 2) * stepMin;
      }
      expect(Math.abs(sum - minutes)).toBeLessThanOrEqual(tolerance);
      expect(sum).toBeGreaterThan(rampRow.exactMin);
    },
  );
});

test.each(arrheniusRows)(
  '$activationKJPerMol kJ/mol at $temperatureC against $referenceC °C: $factor ($flag: $source)',
  ({ activationKJPerMol, temperatureC, referenceC, factor, tolerance }) => {
    const found = arrheniusFactor(temperatureC, referenceC, activationKJPerMol)!;
    expect(Math.abs(found - factor)).toBeLessThanOrEqual(tolerance);
  },
);

test('z 10 K at 121.1 °C is 297.57 kJ/mol, and back', () => {
  const { zK, atC, activationKJPerMol, tolerance } = conversionRow;
  expect(Math.abs(activationFromZKJPerMol(zK, atC)! - activationKJPerMol)).toBeLessThanOrEqual(
    tolerance,
  );
  expect(zFromActivationK(activationFromZKJPerMol(zK, atC)!, atC)!).toBeCloseTo(zK, 9);
});

const c = fc.double({ min: 0, max: 250, noNaN: true });
const energy = fc.double({ min: 20, max: 300, noNaN: true });

test('near one temperature the two forms agree, away from it they part', () => {
  const z: Kinetics = { by: 'z', zK: zFromActivationK(100, 140)! };
  const a: Kinetics = { by: 'arrhenius', activationKJPerMol: 100 };
  expect(
    equivalentMs(140, 141, 1_000, 140, a)! / equivalentMs(140, 141, 1_000, 140, z)!,
  ).toBeCloseTo(1, 3);
  expect(equivalentMs(90, 90, 1_000, 140, a)! / equivalentMs(90, 90, 1_000, 140, z)!).toBeLessThan(
    0.75,
  );
});

test('a stretch by Arrhenius is within 1e-6 of a fine sum, either way round', () => {
  fc.assert(
    fc.property(c, c, energy, (from, to, activationKJPerMol) => {
      const kinetics: Kinetics = { by: 'arrhenius', activationKJPerMol };
      const found = equivalentMs(from, to, 1, 120, kinetics)!;
      const steps = 4_000;
      let fine = 0;
      for (let i = 0; i < steps; i += 1) {
        // Simpson on each small stretch.
        const t = (share: number) => from + ((to - from) * (i + share)) / steps;
        const rate = (share: number) =>
          Math.exp(
            ((activationKJPerMol * 1_000) / gasConstantJPerMolK) *
              (1 / 393.15 - 1 / (t(share) + 273.15)),
          );
        fine += (rate(0) + 4 * rate(0.5) + rate(1)) / 6 / steps;
      }
      expect(Math.abs(found / fine - 1)).toBeLessThan(1e-6);
      expect(equivalentMs(to, from, 1, 120, kinetics)! / found).toBeCloseTo(1, 9);
    }),
    { numRuns: 50 },
  );
});

test('a stretch cut in two is worth the same; hotter is worth more', () => {
  const kinetics = fc.oneof(
    energy.map((activationKJPerMol): Kinetics => ({ by: 'arrhenius', activationKJPerMol })),
    fc.double({ min: 5, max: 100, noNaN: true }).map((zK): Kinetics => ({ by: 'z', zK })),
  );
  fc.assert(
    fc.property(c, c, kinetics, (from, to, by) => {
      const whole = equivalentMs(from, to, 60_000, 120, by)!;
      const middle = (from + to) / 2;
      const halves =
        equivalentMs(from, middle, 30_000, 120, by)! + equivalentMs(middle, to, 30_000, 120, by)!;
      expect(Math.abs(halves / whole - 1)).toBeLessThan(2e-6);
      expect(equivalentMs(from + 1, to + 1, 60_000, 120, by)!).toBeGreaterThan(whole);
    }),
  );
});

test('a constant temperature at the reference is worth its own time', () => {
  for (const by of [
    { by: 'z', zK: 12 },
    { by: 'arrhenius', activationKJPerMol: 90 },
  ] as const)
    expect(equivalentMs(120, 120, 60_000, 120, by)).toBeCloseTo(60_000, 6);
});

test('no number at all makes NaN, and nothing is answered outside', () => {
  expect(arrheniusFactor(501, 25, 100)).toBeNull();
  expect(zFactor(25, 25, 0)).toBeNull();
  expect(equivalentMs(25, 25, -1, 25, { by: 'z', zK: 10 })).toBeNull();
  expect(equivalentMinutes({ timesMs: [], metalC: [] }, 120, { by: 'z', zK: 10 })).toBeNull();
  expect(
    equivalentMinutes({ timesMs: [0, 1], metalC: [20, 600] }, 120, { by: 'z', zK: 10 }),
  ).toBeNull();
  fc.assert(
    fc.property(
      fc.double(),
      fc.double(),
      fc.double(),
      fc.double(),
      fc.double(),
      (a, b, t, r, k) => {
        for (const answer of [
          arrheniusFactor(a, b, k),
          zFactor(a, b, k),
          activationFromZKJPerMol(k, a),
          zFromActivationK(k, a),
          equivalentMs(a, b, t, r, { by: 'z', zK: k }),
          equivalentMs(a, b, t, r, { by: 'arrhenius', activationKJPerMol: k }),
        ])
          if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
      },
    ),
  );
});
