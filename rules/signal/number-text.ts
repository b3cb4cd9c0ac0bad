/**
 * Numbers as devices and files write them: one strict decimal grammar for all.
 *
 * Accepted: `21.5`, `-3`, `+7`, `007.5`, `.5`, `1e3`. Refused: hexadecimal, digit groups,
 * a bare point, anything beside the number but ASCII white space around it.
 */
const decimal = /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?$/;
const notFinite = /^[+-]?(?:nan|inf|infinity)$/i;
const spaceAround = /^[ \t\n\v\f\r]+|[ \t\n\v\f\r]+$/g;

/**
 * The number in `text`. NaN where the text is no number at all; an infinity where it says it is
 * not finite (`NaN`, `inf`, `-Infinity`) or exceeds what a double holds (`1e400`).
 */
export function numberOfText(text: string): number {
  const trimmed = text.replace(spaceAround, '');
  if (decimal.test(trimmed)) return Number(trimmed);
  return notFinite.test(trimmed) ? Number.POSITIVE_INFINITY : Number.NaN;
}
