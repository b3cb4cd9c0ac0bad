/**
 * What intake remembers of one signal between messages. It survives a new plan, by the signal's
 * name, and can be rebuilt from recorded samples.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import { RecentTimes } from './recent-times.ts';

export class SignalMemory {
  /** The latest usable value and when it held; NaN before the first. */
  value = Number.NaN;
  at: EpochMs = Number.NEGATIVE_INFINITY;
  /** Times already taken; used only where the signal has a time of its own. */
  readonly recent: RecentTimes;

  constructor(recentTimesMax: number) {
    this.recent = new RecentTimes(recentTimesMax);
  }

  /** A usable value; an older one than the latest changes nothing. */
  keep(value: number, at: EpochMs): void {
    if (at < this.at) return;
    this.value = value;
    this.at = at;
  }

  /** A recorded sample, NaN for a bad one; `ownTime` where it took its time, kept from `fromMs` on. */
  remember(at: EpochMs, value: number, ownTime: boolean, fromMs: EpochMs): void {
    if (!Number.isNaN(value)) this.keep(value, at);
    if (!ownTime) return;
    this.recent.forgetBefore(fromMs);
    this.recent.take(at, value);
  }
}
