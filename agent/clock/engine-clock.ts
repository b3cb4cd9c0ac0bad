/**
 * Engine time: an anchor and the monotonic clock, so that it never goes back by itself.
 *
 * `check` compares it with the wall clock. Ahead by more than 2 s, the wall clock was stepped
 * forward or the box slept: the caller enters a gap and sets the time. Behind by more than ten
 * minutes it was set back: the caller enters a rebase. In between engine time runs 1 % faster or
 * slower until the two agree, and while it is ahead of the wall by more than 2 s it is in doubt.
 */
import type { EpochMs } from '#rules/signal/sample.ts';

export interface ClockSource {
  /** Milliseconds since 1970, as the system believes. */
  wallMs(): number;
  /** Milliseconds that only ever grow. */
  monotonicMs(): number;
}

export const systemClock: ClockSource = {
  wallMs: () => Date.now(),
  monotonicMs: () => performance.now(),
};

export type ClockStep =
  | { readonly kind: 'ahead'; readonly toMs: EpochMs }
  | { readonly kind: 'back'; readonly deltaMs: number };

const stepAheadMs = 2_000;
const stepBackMs = 600_000;
const agreeMs = 50;
const slew = 0.01;

export class EngineClock {
  private readonly source: ClockSource;
  private anchorMs: number;
  private anchorMonotonicMs: number;
  private rate = 1;
  private doubted = false;

  constructor(source: ClockSource, startMs: EpochMs) {
    this.source = source;
    this.anchorMs = startMs;
    this.anchorMonotonicMs = source.monotonicMs();
  }

  now(): EpochMs {
    const elapsed = this.source.monotonicMs() - this.anchorMonotonicMs;
    return Math.floor(this.anchorMs + elapsed * this.rate);
  }

  /** Engine time is ahead of the wall clock by more than it should be. */
  get inDoubt(): boolean {
    return this.doubted;
  }

  /** Looks at the wall clock; a step is the caller's to enter, then to `set`. */
  check(): ClockStep | null {
    const now = this.now();
    const behindMs = this.source.wallMs() - now;
    if (behindMs > stepAheadMs) return { kind: 'ahead', toMs: Math.floor(now + behindMs) };
    if (behindMs < -stepBackMs) return { kind: 'back', deltaMs: Math.round(behindMs) };
    this.doubted = behindMs < -stepAheadMs;
    const rate = behindMs > agreeMs ? 1 + slew : behindMs < -agreeMs ? 1 - slew : 1;
    if (rate !== this.rate) this.anchor(now, rate);
    return null;
  }

  set(nowMs: EpochMs): void {
    this.doubted = false;
    this.anchor(nowMs, 1);
  }

  private anchor(nowMs: EpochMs, rate: number): void {
    this.anchorMs = nowMs;
    this.anchorMonotonicMs = this.source.monotonicMs();
    this.rate = rate;
  }
}
