/** Rows of a file that gave no usable reading: how many, and the first few with line and reason. */
import type { BadRow } from './csv.ts';

export interface BadRowsSeen {
  readonly count: number;
  /** By line, `namedMax` at most. */
  readonly first: readonly BadRow[];
}

const namedMax = 5;

export class BadRows {
  private seen: BadRowsSeen = { count: 0, first: [] };

  /** In any order; a row of several readings counts once for each that is not usable. */
  note(row: BadRow): void {
    const { count, first } = this.seen;
    const kept = [...first, row].sort((a, b) => a.line - b.line).slice(0, namedMax);
    this.seen = { count: count + 1, first: kept };
  }

  get now(): BadRowsSeen {
    return this.seen;
  }
}
