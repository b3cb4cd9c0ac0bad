/**
 * A heat that belongs to one load: begins when the load comes in, stands when it has left.
 *
 * Between two readings the temperature is taken to run straight from one to the other.
 */
import type { EpochMs } from '../signal/sample.ts';

export interface LoadClock {
  /** Of the last reading; null before it, and after a time nobody saw. */
  at: EpochMs | null;
  value: number;
  /** The last word of the signal that says it is loaded; null without one. */
  loaded: boolean | null;
  /** Part of the load's time was not observed. */
  partial: boolean;
}

export const loadBegin = (followed: boolean): LoadClock => ({
  at: null,
  value: 0,
  loaded: null,
  partial: followed,
});

/** What a new reading means: `fresh`, a load came in; `since`, from when on the last reading counts. */
export function loadReads(
  clock: LoadClock,
  at: EpochMs,
  value: number,
  loaded: boolean | null,
): { readonly fresh: boolean; readonly since: EpochMs | null; readonly from: number } {
  const fresh = loaded === true && clock.loaded === false;
  // A load that was in already when observation began has a past nobody saw.
  if (fresh) clock.partial = false;
  const counts = !fresh && clock.loaded !== false;
  const since = counts ? clock.at : null;
  const from = clock.value;
  clock.at = at;
  clock.value = value;
  clock.loaded = loaded;
  return { fresh, since, from };
}

/** Nothing was seen from `fromMs` to `toMs`; the last reading held until then. */
export function loadGap(clock: LoadClock, toMs: EpochMs): void {
  if (clock.at === null) return;
  clock.at = toMs;
  if (clock.loaded !== false) clock.partial = true;
}

export function loadShift(clock: LoadClock, deltaMs: number): void {
  if (clock.at !== null) clock.at += deltaMs;
}
