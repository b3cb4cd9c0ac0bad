/**
 * Rounding to a signal's resolution, at the border, before anything judges or keeps the value.
 *
 * A kept value of a signal with a resolution is exactly the double `k / 10^digits` of a whole
 * number k, and never minus zero. Live messages and recorded files pass through here alike.
 */
const digitsMax = 22;
const powersOfTen = Array.from({ length: digitsMax + 1 }, (_, exponent) => Number(`1e${exponent}`));

/**
 * `value` to `digits` decimals, halves upwards; null digits keep it as it is. NaN where the
 * result is not finite, or has more digits than a double counts exactly. `digits` from -22 to 22.
 */
export function quantise(value: number, digits: number | null): number {
  if (digits === null) return Number.isFinite(value) ? value + 0 : Number.NaN;
  const power = powersOfTen[Math.abs(digits)];
  if (power === undefined) throw new RangeError(`no resolution has ${digits} decimals`);
  const k = Math.round(digits < 0 ? value / power : value * power);
  if (!Number.isSafeInteger(k)) return Number.NaN;
  // -0 + 0 is 0.
  return (digits < 0 ? k * power : k / power) + 0;
}
