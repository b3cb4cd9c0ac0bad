/** What a benchmark says: a figure beside its floor and its budget. */
export interface Figure {
  readonly name: string;
  readonly budget: string;
  /** Measured in the same sitting, taken in turns with the figure. */
  readonly floor: string;
  readonly figure: string;
  /** Figure to floor; null where they do not compare as a ratio. */
  readonly ratio: number | null;
  readonly met: boolean;
  /** Where the time goes, or why it is short. */
  readonly note?: string;
}

export const median = (list: readonly number[]): number =>
  list.toSorted((a, b) => a - b)[list.length >> 1]!;

/** Of ascending values, the one so far up. */
export const atShare = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;

export function table(figures: readonly Figure[]): string {
  return figures
    .map(({ name, budget, floor, figure, ratio, met, note }) =>
      [
        `${met ? 'met  ' : 'SHORT'} ${name}: ${figure}`,
        `      budget ${budget}; floor ${floor}${ratio === null ? '' : `; ratio ${ratio.toFixed(2)}`}`,
        ...(note === undefined ? [] : [`      ${note}`]),
      ].join('\n'),
    )
    .join('\n');
}
