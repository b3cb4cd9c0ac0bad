/**
 * A value with its unit, as people write it: "7 Cel", "30 /min", "5.5 bar".
 */
import { type Unit, unitOf } from './unit.ts';
import { suggestedCodes, unitFix } from './unit-fix.ts';

export type Parsed<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: string; readonly fix: string };

export interface Quantity {
  /** Finite, in `unit`. */
  readonly value: number;
  readonly unit: Unit;
}

const shape = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?)\s+(\S+)$/;
const bareNumber = /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?$/;
const noSpace = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?)([^\s\d.]\S*)$/;

/** Reads one quantity; refuses, never repairs. `example` is what the fix shows, in a fitting unit. */
export function parseQuantity(text: string, example = '7 Cel'): Parsed<Quantity> {
  const match = shape.exec(text.trim());
  if (match === null) return misshapen(text.trim(), example);
  const number = match[1]!;
  const code = match[2]!;
  const value = Number(number);
  if (!Number.isFinite(value)) {
    return {
      ok: false,
      problem: `${number} is too large a number`,
      fix: `write it as "${example}"`,
    };
  }
  const unit = unitOf(code);
  if (unit !== null) return { ok: true, value: { value, unit } };
  const [suggested] = suggestedCodes(code);
  const fix =
    suggested === undefined ? unitFix(code) : `${unitFix(code)}, as in "${number} ${suggested}"`;
  return { ok: false, problem: `"${code}" is no unit we take`, fix };
}

/**
 * A number free of the dust of conversion: 12 significant digits, so that "280.3 K" is
 * 7.15 Cel and compares equal to a reading of 7.15. Not for readings, which have a resolution of their own.
 */
export const withoutDust = (value: number): number => Number(value.toPrecision(12));

function misshapen(text: string, example: string): Parsed<never> {
  if (bareNumber.test(text)) {
    const unit = example.slice(example.indexOf(' ') + 1);
    return { ok: false, problem: `${text} has no unit`, fix: `write it as "${text} ${unit}"` };
  }
  const run = noSpace.exec(text);
  if (run !== null && unitOf(run[2]!) !== null) {
    return {
      ok: false,
      problem: `"${text}" has no space before its unit`,
      fix: `write it as "${run[1]} ${run[2]}"`,
    };
  }
  return {
    ok: false,
    problem: `"${text}" is no value with a unit`,
    fix: `write a number, a space and a UCUM unit, as "${example}"`,
  };
}
