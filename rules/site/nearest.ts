/** The known name a mistyped one was probably meant to be. */
import { settingMeant } from './likely-meant.ts';

/** Edits (insert, delete, replace, swap of neighbours) from `a` to `b`. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, before[j - 2]! + 1);
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}

const comparedMax = 64;

/** The nearest of `known`, at most a third of its letters away; null where none is near. */
export function nearest(name: string, known: Iterable<string>): string | null {
  if (name.length > comparedMax) return null;
  let found: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const distance = editDistance(name.toLowerCase(), candidate.toLowerCase());
    const near = distance <= Math.max(1, Math.floor(candidate.length / 3));
    if (near && distance < least) {
      found = candidate;
      least = distance;
    }
  }
  return found;
}

/** "Did you mean "wall"?", or the names there are, or nothing known. */
export function didYouMean(name: string, known: readonly string[]): string {
  const near = settingMeant(name, known) ?? nearest(name, known);
  if (near !== null) return `Did you mean "${near}"?`;
  if (known.length === 0) return 'Nothing may stand here.';
  return `Known here: ${known.join(', ')}.`;
}
