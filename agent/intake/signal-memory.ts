/**
 * What intake remembers of one signal between messages. It survives a new plan, by the signal's
 * name, and can be rebuilt from recorded samples.
 */
import { isBad, type QualityCode, quality } from '#rules/signal/quality.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { RecentTimes } from './recent-times.ts';

export class SignalMemory {
  /** The latest usable value and when it held; NaN before the first. */
  value = Number.NaN;
  at: EpochMs = Number.NEGATIVE_INFINITY;
  /** Quality of the latest reading, usable or not. */
  code: QualityCode = quality.good;
  /** When its loop current began to say fault; NaN while it does not. */
  faultSince: EpochMs = Number.NaN;
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

  /** The quality of a reading that is judged, after its value was kept. */
  note(code: QualityCode, at: EpochMs): void {
    if (at < this.at) return;
    this.code = code;
    if (!isBad(code)) this.faultSince = Number.NaN;
    else if (isLoopFault(code) && Number.isNaN(this.faultSince)) this.faultSince = at;
  }

  /** A recorded sample, 0 for a bad one; `ownTime` where it took its time, kept from `fromMs` on. */
  remember(
    at: EpochMs,
    recorded: number,
    code: QualityCode,
    ownTime: boolean,
    fromMs: EpochMs,
  ): void {
    const value = isBad(code) ? Number.NaN : recorded;
    if (!Number.isNaN(value)) this.keep(value, at);
    this.note(code, at);
    if (!ownTime) return;
    this.recent.forgetBefore(fromMs);
    this.recent.take(at, value);
  }
}

const isLoopFault = (code: QualityCode): boolean =>
  code === quality.loopFaultUnsettled ||
  code === quality.loopFaultLow ||
  code === quality.loopFaultHigh;
