/**
 * Floods and chatter: when alarms come faster than a person can read them.
 *
 * Both look back over a rolling window that holds its newest instant and not the one exactly a
 * window before it. ISA-18.2 / IEC 62682, clause "monitoring and assessment": a flood begins with
 * more than 10 alarms in 10 minutes and ends once 10 minutes hold fewer than 5; an alarm chatters
 * that comes three times within a minute. Figures from memory of the standard and public
 * summaries of it; guidance, so that a site may set others.
 */
import type { EpochMs } from '../signal/sample.ts';

export interface FloodLimits {
  readonly windowMs: number;
  /** More than this many in a window begin a flood. */
  readonly beginsAbove: number;
  /** Fewer than this many in a window end it. */
  readonly endsBelow: number;
}

export const floodGuidance: FloodLimits = { windowMs: 600_000, beginsAbove: 10, endsBelow: 5 };

export interface ChatterLimits {
  readonly windowMs: number;
  readonly times: number;
}

export const chatterGuidance: ChatterLimits = { windowMs: 60_000, times: 3 };

export interface Flood {
  readonly fromMs: EpochMs;
  /** null while it goes on. */
  readonly toMs: EpochMs | null;
  /** Alarms told from its beginning to its end, with those of the window that began it. */
  readonly count: number;
}

/** What a watch knows, to go on from elsewhere. */
export interface FloodState {
  readonly window: readonly EpochMs[];
  readonly fromMs: EpochMs | null;
  readonly count: number;
}

/** Follows alarms as they are told, in order of time. Plain data inside. */
export class FloodWatch {
  private readonly limits: FloodLimits;
  private window: EpochMs[] = [];
  private fromMs: EpochMs | null = null;
  private count = 0;

  constructor(limits: FloodLimits = floodGuidance, state: FloodState | null = null) {
    this.limits = limits;
    if (state === null) return;
    this.window = [...state.window];
    this.fromMs = state.fromMs;
    this.count = state.count;
  }

  save(): FloodState {
    return { window: [...this.window], fromMs: this.fromMs, count: this.count };
  }

  get since(): EpochMs | null {
    return this.fromMs;
  }

  /** An alarm is told; `atMs` never goes back. Gives the flood that ended before it, if one did. */
  told(atMs: EpochMs): Flood | null {
    const ended = this.look(atMs);
    this.window.push(atMs);
    if (this.fromMs !== null) this.count += 1;
    else if (this.window.length > this.limits.beginsAbove) {
      this.fromMs = atMs;
      this.count = this.window.length;
    }
    return ended;
  }

  /** Time passes; the flood that ended by `nowMs`, at the instant it did, or null. */
  look(nowMs: EpochMs): Flood | null {
    const { windowMs, endsBelow } = this.limits;
    let leftAtMs: EpochMs | null = null;
    while (this.window.length > 0 && this.window[0]! + windowMs <= nowMs) {
      const gone = this.window.shift()! + windowMs;
      if (leftAtMs === null && this.window.length < endsBelow) leftAtMs = gone;
    }
    if (this.fromMs === null || leftAtMs === null) return null;
    const flood = { fromMs: this.fromMs, toMs: leftAtMs, count: this.count };
    this.fromMs = null;
    this.count = 0;
    return flood;
  }

  /** The flood that goes on, or null. */
  going(): Flood | null {
    return this.fromMs === null ? null : { fromMs: this.fromMs, toMs: null, count: this.count };
  }
}

/** Every flood among alarms told at `timesMs` (ascending), seen up to `untilMs`. */
export function floods(
  timesMs: readonly EpochMs[],
  untilMs: EpochMs,
  limits: FloodLimits = floodGuidance,
): Flood[] {
  const watch = new FloodWatch(limits);
  const found: Flood[] = [];
  for (const atMs of timesMs) {
    const ended = watch.told(atMs);
    if (ended !== null) found.push(ended);
  }
  const last = watch.look(untilMs) ?? watch.going();
  return last === null ? found : [...found, last];
}

/** When an alarm that came at `timesMs` (ascending) first had chattered; null where it did not. */
export function chatteredAt(
  timesMs: readonly EpochMs[],
  limits: ChatterLimits = chatterGuidance,
): EpochMs | null {
  const { times, windowMs } = limits;
  for (let i = times - 1; i < timesMs.length; i += 1)
    if (timesMs[i]! - timesMs[i - times + 1]! < windowMs) return timesMs[i]!;
  return null;
}
