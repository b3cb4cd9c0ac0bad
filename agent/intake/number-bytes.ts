/**
 * A number in the bytes of a payload, without making text of the common kind.
 *
 * Up to 15 digits with at most 22 after the point are exact: both the digits as a whole number
 * and the power of ten are doubles without error, so one division rounds once, as the decimal
 * itself would be rounded. Everything else goes the way of `numberOfText`.
 */
const powersOfTen = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));
const digitsMax = 15;

/** The number, or null where the fast way does not serve; never wrong, and it decides nothing else. */
export function plainDecimalOfBytes(bytes: Uint8Array): number | null {
  const end = bytes.length;
  if (end === 0 || end > digitsMax + 2) return null;
  let i = 0;
  const first = bytes[0]!;
  const negative = first === 0x2d;
  if (negative || first === 0x2b) i = 1;
  let digits = 0;
  let whole = 0;
  let point = -1;
  for (; i < end; i += 1) {
    const byte = bytes[i]!;
    if (byte >= 0x30 && byte <= 0x39) {
      whole = whole * 10 + (byte - 0x30);
      digits += 1;
    } else if (byte === 0x2e && point < 0) point = i;
    else return null;
  }
  if (digits === 0 || digits > digitsMax || point === end - 1) return null;
  const value = point < 0 ? whole : whole / powersOfTen[end - 1 - point]!;
  return negative ? -value : value;
}
