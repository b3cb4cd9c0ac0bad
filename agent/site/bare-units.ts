/**
 * Quantities whose unit has brackets, written without quotes: `86 [degF]`.
 *
 * Inside brackets or braces YAML takes the unit for a list, and everything behind it for nonsense.
 * So such a quantity is told once, and read as if it were quoted: what stands behind it can still
 * be checked.
 */

export interface BareUnit {
  /** Where the number begins, and where the unit has ended. */
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

const bare = /-?\d+(?:\.\d+)? +\[[A-Za-z_][\w'./-]*\](?:[\w'./-]*)/g;

/** The one that holds this place; null where none does. */
export function bareUnitAt(text: string, offset: number): BareUnit | null {
  const lineFrom = text.lastIndexOf('\n', offset - 1) + 1;
  const lineTo = text.indexOf('\n', offset);
  const line = text.slice(lineFrom, lineTo < 0 ? text.length : lineTo);
  for (const found of line.matchAll(bare)) {
    const from = lineFrom + found.index;
    const to = from + found[0].length;
    if (offset >= from && offset <= to) return { from, to, text: found[0] };
  }
  return null;
}

/** Brackets that YAML does not see, each as long as its own: no place behind them moves. */
export const hide = (text: string): string =>
  text.replaceAll('[', '\uE000').replaceAll(']', '\uE001');
export const unhide = (text: string): string =>
  text.replaceAll('\uE000', '[').replaceAll('\uE001', ']');
