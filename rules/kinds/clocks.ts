/**
 * Clocks of items, one an item, the oldest first: what `age` remembers.
 *
 * All have the same limits, so that the oldest is the worst and the first to fall due. The word
 * said last counts: a mark of an item that is known sets its clock anew, earlier or later.
 */
import { sameItem } from '../hold/item.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Severity } from './kind.ts';

export interface AgeClock {
  item: string | null;
  sinceMs: EpochMs;
  /** Never falls while the clock runs. */
  severity: Severity;
  said: boolean;
}

export interface Clocks {
  readonly clocks: AgeClock[];
  /** Items past the limit whom nobody was told of yet; '' for the place. */
  readonly passed: string[];
}

export interface Span {
  readonly limitMs: number;
  readonly earlyMs: number;
}

/** Clocks of one rule. More racks than a line has; beyond it a mark is refused, and says so. */
export const itemsMax = 500;

/** Begins the item's clock at `sinceMs`; one that ran is forgotten. */
export function addClock(memory: Clocks, item: string | null, sinceMs: EpochMs): void {
  const { clocks } = memory;
  const known = clocks.findIndex((clock) => sameItem(clock.item, item));
  if (known >= 0) clocks.splice(known, 1);
  let i = clocks.length;
  while (i > 0 && clocks[i - 1]!.sinceMs > sinceMs) i -= 1;
  clocks.splice(i, 0, { item, sinceMs, severity: 0, said: true });
}

/** Ends the item's clock, unless it began after `at`. */
export function endClock(memory: Clocks, item: string | null, at: EpochMs): void {
  const { clocks } = memory;
  const known = clocks.findIndex((clock) => sameItem(clock.item, item));
  if (known >= 0 && clocks[known]!.sinceMs <= at) clocks.splice(known, 1);
}

/** Every clock to how far it is at `now`. */
export function passLimits(memory: Clocks, { limitMs, earlyMs }: Span, now: EpochMs): void {
  for (const clock of memory.clocks) {
    const ageMs = now - clock.sinceMs;
    if (ageMs < earlyMs && clock.severity === 0) return;
    if (ageMs >= limitMs && clock.severity < 2) {
      clock.severity = 2;
      memory.passed.push(clock.item ?? '');
    } else if (ageMs >= earlyMs && clock.severity === 0) clock.severity = 1;
  }
}

/** The worst of them, of several the oldest; null where none runs. */
export function worstOf({ clocks }: Clocks): AgeClock | null {
  let worst = clocks[0] ?? null;
  for (const clock of clocks) if (clock.severity > worst!.severity) worst = clock;
  return worst;
}

/** When the next of them passes a limit; null where none will. */
export function leastDue(memory: Clocks, { limitMs, earlyMs }: Span): EpochMs | null {
  let due = Number.POSITIVE_INFINITY;
  for (const { sinceMs, severity } of memory.clocks) {
    if (severity === 2) continue;
    due = Math.min(due, sinceMs + (severity === 1 ? limitMs : earlyMs));
    if (severity === 0) break;
  }
  return Number.isFinite(due) ? due : null;
}
