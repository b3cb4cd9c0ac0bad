/** What is wrong with a site: data, with the place it stands and the way out. Never thrown. */
export interface SiteProblem {
  /** Keys from the top of the file down; empty for the file as a whole. */
  readonly path: readonly (string | number)[];
  /** What is wrong. */
  readonly problem: string;
  /** What to write instead; one or two sentences. */
  readonly fix: string;
  /** The key itself is at fault, not the value behind it. */
  readonly atKey?: boolean;
}

/** A problem with the place in the file it came from; lines and columns are counted from 1. */
export interface PlacedProblem extends SiteProblem {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** `lines.mounts-2.oven-1.signals`, as it is printed. */
export const pathText = (path: readonly (string | number)[]): string =>
  path.length === 0 ? '(file)' : path.join('.');
