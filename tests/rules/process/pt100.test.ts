import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pt100C, pt100Ohm, pt100ToleranceK } from '#rules/process/pt100.ts';
import { misprint, resistanceRows, toleranceRows } from '../../vectors/pt100.ts';

test.each(resistanceRows)(
  '$temperatureC °C: $ohm Ω ($flag: $source)',
  ({ temperatureC, ohm, toleranceOhm }) => {
    expect(Math.abs(pt100Ohm(temperatureC)! - ohm)).toBeLessThanOrEqual(toleranceOhm);
  },
);

test.each(resistanceRows)(
  '$ohm Ω: $temperatureC °C ($flag: $source)',
  ({ temperatureC, ohm, toleranceOhm }) => {
    // Nowhere less than 0.3 Ω a degree below 300 °C. A table's -200 °C may lie just outside.
    const found = pt100C(Math.max(ohm, 18.52008))!;
    expect(Math.abs(found - temperatureC)).toBeLessThanOrEqual(toleranceOhm / 0.3);
  },
);

test.each(toleranceRows)(
  'class $grade at $temperatureC °C: ± $toleranceK K ($flag: $source)',
  ({ grade, temperatureC, toleranceK }) => {
    expect(pt100ToleranceK(grade, temperatureC)).toBeCloseTo(toleranceK, 9);
  },
);

test('trap: a table in circulation has 35.34 Ω at -160 °C, 0.2 Ω off the formula', () => {
  const { temperatureC, printedOhm, ohm, toleranceOhm } = misprint;
  const found = pt100Ohm(temperatureC)!;
  expect(Math.abs(found - ohm)).toBeLessThanOrEqual(toleranceOhm);
  expect(found - printedOhm).toBeGreaterThan(0.19);
});

test('there and back within 1e-9 °C', () => {
  fc.assert(
    fc.property(fc.double({ min: -200, max: 850, noNaN: true }), (t) => {
      expect(Math.abs(pt100C(pt100Ohm(t)!)! - t)).toBeLessThan(1e-9);
    }),
  );
});
test('every double is a number or nothing, never NaN', () => {
  fc.assert(
    fc.property(fc.double(), (x) => {
      for (const found of [pt100Ohm(x), pt100C(x), pt100ToleranceK('B', x)])
        if (found !== null) expect(found).toSatisfy(Number.isFinite);
    }),
  );
});
test.each([18.51, 390.49, Number.NaN, Number.POSITIVE_INFINITY, -1])('nothing at %d Ω', (ohm) =>
  expect(pt100C(ohm)).toBeNull(),
);
test.each([-200.1, 850.1, Number.NaN])('nothing at %d °C', (t) => {
  expect(pt100Ohm(t)).toBeNull();
  expect(pt100ToleranceK('A', t)).toBeNull();
});
