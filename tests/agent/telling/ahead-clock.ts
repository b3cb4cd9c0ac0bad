/** The system's clock, set forward by the test: time goes by for the agent all the same. */
import type { ClockSource } from '#agent/clock/engine-clock.ts';

export interface AheadClock extends ClockSource {
  forward(ms: number): void;
}

export function systemHeld(): AheadClock {
  let aheadMs = 0;
  return {
    wallMs: () => Date.now() + aheadMs,
    monotonicMs: () => performance.now() + aheadMs,
    forward: (ms) => {
      aheadMs += ms;
    },
  };
}
