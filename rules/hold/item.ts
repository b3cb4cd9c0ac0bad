/**
 * Names of racks, containers, lots and shots, as people write and scanners send them. `r-1` and
 * `R-1` are one thing: names are compared without case, wide and narrow letters alike (Unicode
 * NFKC), without blanks at their ends; they are shown as they were written.
 */

/** What is equal for two names of the same thing. */
export const itemKey = (name: string): string => name.normalize('NFKC').trim().toLowerCase();

export const sameItem = (a: string | null, b: string | null): boolean =>
  a === b || (a !== null && b !== null && itemKey(a) === itemKey(b));

/** Characters nobody sees: controls, what turns the direction of text, line ends, halves of pairs. */
const unseen = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u;

/** Why it is no name, in a clause; null where it is one. */
export function itemFault(name: string): string | null {
  const found = unseen.exec(name)?.[0].codePointAt(0);
  if (found === undefined) return null;
  const code = found.toString(16).toUpperCase().padStart(4, '0');
  return `its name holds U+${code}, a character that nobody sees; write it without`;
}
