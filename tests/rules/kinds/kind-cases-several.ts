/** Cases of kinds that hold several sensors against each other. */
import type { KindCase } from './kind-cases.ts';
import { stretches, within } from './lives.ts';

const everyMs = [300, 900];
const delay = { onDelay: '2 s', ms: 2_000 };

export const lives: Readonly<Record<string, KindCase>> = {
  stray: {
    settings: { limit: '5 K', deadband: '1 K' },
    signals: [{}, {}, {}],
    calm: within(
      [
        [20, 25],
        [20, 25],
        [20, 25],
      ],
      3_000,
    ),
    wild: stretches({
      levels: [
        [20, 24],
        [20, 30],
        [22, 40],
      ],
      everyMs,
    }),
    scaleMs: 1_500,
    held: delay,
  },
  disagree: {
    settings: { allowed: '5 K', deadband: '1 K', steady: '1 K', steady_for: '3 s' },
    signals: [{}, {}, {}],
    calm: within(
      [
        [20, 25],
        [20, 25],
        [20, 25],
      ],
      3_000,
    ),
    wild: stretches({
      levels: [
        [20, 24],
        [20, 30],
        [22, 40],
      ],
      slopes: [[0, 0, 0.1], [0], [0, 2]],
      everyMs,
    }),
    scaleMs: 1_500,
    held: delay,
  },
};
