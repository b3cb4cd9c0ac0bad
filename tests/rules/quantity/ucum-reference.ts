/** A full UCUM implementation, typed as far as the tests use it. */
import { createRequire } from 'node:module';

interface UcumUtils {
  validateUnitString(code: string): { status: 'valid' | 'invalid' | 'error' };
  convertUnitTo(from: string, value: number, to: string): { status: string; toVal: number | null };
}
const loaded: { UcumLhcUtils: { getInstance(): UcumUtils } } = createRequire(import.meta.url)(
  '@lhncbc/ucum-lhc',
);
const reference = loaded.UcumLhcUtils.getInstance();

export const isUcum = (code: string): boolean =>
  reference.validateUnitString(code).status === 'valid';

/** Throws where the reference refuses, so that no comparison passes for want of a value. */
export function convertByReference(value: number, from: string, to: string): number {
  const answer = reference.convertUnitTo(from, value, to);
  if (answer.status !== 'succeeded' || answer.toVal === null) {
    throw new Error(`the reference cannot convert ${from} to ${to}`);
  }
  return answer.toVal;
}
