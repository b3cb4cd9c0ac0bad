import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivedKinds } from '#rules/derive/derived.ts';
import { type FormulaKind, isFormula } from '#rules/derive/derived-kind.ts';
import { canonicalUnit } from '#rules/quantity/unit.ts';
import { atmosphericRows } from '../../vectors/compressed-air.ts';
import { dewPointRows, marginRows } from '../../vectors/humidity.ts';

const kind = (name: string): FormulaKind => {
  const found = derivedKinds.get(name);
  if (found === undefined || !isFormula(found)) throw new Error(`${name} is no formula`);
  return found;
};
const formulas = [...derivedKinds.values()].filter(isFormula);

describe('every kind', () => {
  test.each([...derivedKinds])('%s says what it is, in canonical units', (name, derived) => {
    expect(derived.name).toBe(name);
    expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(derived.summary).toMatch(/\.$/);
    expect(derived.source).not.toBe('');
    expect(derived.unit === 'any').toBe(derived.result !== undefined);
    for (const unit of [derived.unit, ...derived.inputs.map((input) => input.unit)])
      if (unit !== 'any') expect(() => canonicalUnit(unit)).not.toThrow();
    for (const input of derived.inputs) {
      expect(input.meaning).not.toBe('');
    }
    expect(new Set(derived.inputs.map((input) => input.name)).size).toBe(derived.inputs.length);
    expect(Number.isInteger(derived.digits)).toBe(true);
  });

  test.each(formulas)('$name never answers NaN, whatever it is given', (derived) => {
    const any = fc.oneof(fc.double(), fc.double({ min: -120, max: 1000, noNaN: true }));
    fc.assert(
      fc.property(fc.array(any, { minLength: 3, maxLength: 3 }), (inputs) => {
        const answer = derived.compute(inputs);
        if (answer !== null) expect(Number.isFinite(answer)).toBe(true);
        const unusable = inputs.slice(0, derived.inputs.length).some((x) => !Number.isFinite(x));
        if (unusable) expect(answer).toBeNull();
      }),
    );
  });

  test('reads typed columns as well as arrays', () => {
    expect(kind('dew-point').compute(Float64Array.of(20, 50))).toBe(
      kind('dew-point').compute([20, 50]),
    );
  });
});

describe('in the right order of inputs', () => {
  test.each(dewPointRows.filter(({ over }) => over === 'water'))(
    'dew-point: $pointC °C ($source)',
    ({ temperatureC, humidityPct, pointC, toleranceK }) => {
      const found = kind('dew-point').compute([temperatureC, humidityPct])!;
      expect(Math.abs(found - pointC)).toBeLessThanOrEqual(toleranceK);
    },
  );
  test.each(marginRows)(
    'dew-point-margin: $marginK K ($source)',
    ({ surfaceC, temperatureC, humidityPct, marginK, toleranceK }) => {
      const found = kind('dew-point-margin').compute([surfaceC, temperatureC, humidityPct])!;
      expect(Math.abs(found - marginK)).toBeLessThanOrEqual(toleranceK);
    },
  );
  test.each(atmosphericRows.filter(({ over }) => over === 'ice'))(
    'atmospheric-dew-point: $pointC °C ($source)',
    ({ pressureDewPointC, lineGaugeKPa, pointC, toleranceK }) => {
      const found = kind('atmospheric-dew-point').compute([pressureDewPointC, lineGaugeKPa])!;
      expect(Math.abs(found - pointC)).toBeLessThanOrEqual(toleranceK);
    },
  );
  test('pipe-margin: the pipe less the pressure dew point (by definition)', () => {
    expect(kind('pipe-margin').compute([12, 3])).toBe(9);
    expect(kind('pipe-margin').compute([1, 3])).toBe(-2);
    expect(kind('pipe-margin').compute([101, 3])).toBeNull();
    expect(kind('pipe-margin').compute([12, -101])).toBeNull();
  });
});
