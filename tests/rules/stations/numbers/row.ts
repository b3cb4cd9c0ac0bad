/** One number of a station rule: what the trade takes it to be, and who confirms it. */
import type { Mark } from '#rules/stations/station.ts';

export type Row = readonly [
  rule: string,
  setting: string,
  value: string | null,
  mark: Mark,
  confirmedBy: 'DS' | 'SITE' | null,
];
