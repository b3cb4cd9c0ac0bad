/** Times and values in the cells of recorded data. */
import { datePartMs, instantOfEpochMs, instantOfRfc3339 } from '#rules/signal/instant-text.ts';
import { numberOfText } from '#rules/signal/number-text.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Separator } from './csv-layout.ts';
import type { LocalTime } from './local-time.ts';

const epochMs = /^\d+$/;
const local = /^\d{4}-\d\d-\d\d[ T]([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d)(?:\.(\d{1,9}))?)?$/;

/**
 * What a local clock shows, as if it were UTC: `YYYY-MM-DD HH:MM[:SS[.fff]]`, digits beyond the
 * millisecond cut. NaN where the text is no local time.
 */
export function localMsOf(text: string): number {
  const match = local.exec(text);
  if (match === null) return Number.NaN;
  const [, hours, minutes, seconds = '0', fraction = ''] = match;
  const secondsMs = Number(seconds) * 1000 + Number(fraction.padEnd(3, '0').slice(0, 3));
  return datePartMs(text) + Number(hours) * 3_600_000 + Number(minutes) * 60_000 + secondsMs;
}

/** Reads the times of one file, row after row. */
export class TimeCells {
  readonly #zone: LocalTime | null;
  #previousMs: EpochMs = Number.NEGATIVE_INFINITY;

  constructor(zone: LocalTime | null) {
    this.#zone = zone;
  }

  /** NaN where the cell is no time; null where it is local and no zone is known. */
  read(cell: string): EpochMs | null {
    const text = cell.trim();
    let instant = epochMs.test(text) ? instantOfEpochMs(Number(text)) : instantOfRfc3339(text);
    if (Number.isNaN(instant)) {
      const localMs = localMsOf(text);
      if (!Number.isNaN(localMs)) {
        if (this.#zone === null) return null;
        // Once more through the bounds of an instant.
        instant = instantOfEpochMs(this.#zone.instantOf(localMs, this.#previousMs));
      }
    }
    if (!Number.isNaN(instant)) this.#previousMs = instant;
    return instant;
  }
}

/**
 * Reads the numbers of one file. Where commas do not separate cells they may be the decimal
 * sign; the first sign seen is the file's, and the other is refused from then on, since it
 * could as well group thousands.
 */
export class NumberCells {
  #sign: '.' | ',' | null;

  constructor(separator: Separator) {
    this.#sign = separator === ',' ? '.' : null;
  }

  /** As numberOfText: NaN is no number, an infinity not finite. */
  read(cell: string): number {
    const hasComma = cell.includes(',');
    if (!hasComma && !cell.includes('.')) return numberOfText(cell);
    const sign = hasComma ? ',' : '.';
    const value = numberOfText(hasComma ? cell.replace(',', '.') : cell);
    if (Number.isNaN(value)) return value;
    this.#sign ??= sign;
    return this.#sign === sign ? value : Number.NaN;
  }
}
