/** Cases of kinds that judge heat: a load in the oven, residue that heats itself. */
import type { KindCase } from './kind-cases.ts';
import type { Step } from './kind-life.ts';
import { stretches, within } from './lives.ts';

/** 1.5 K a minute beside steady air, a reading of each every 10 s. */
const reacting = (fromS: number, toS: number): Step[] => {
  const steps: Step[] = [];
  for (let s = fromS; s <= toS; s += 10) {
    const surface = 80 + (1.5 * s) / 60;
    steps.push({ afterMs: 9_900, input: 1, value: surface });
    steps.push({ afterMs: 100, input: 0, value: surface - 80 });
  }
  return steps;
};

export const lives: Readonly<Record<string, KindCase>> = {
  dry: {
    settings: {
      ...{ above: '20 Cel', above_for: '3 s', dwell: '10 s' },
      ...{ upper: '40 Cel', upper_for: '2 s', peak: '49 Cel' },
    },
    signals: [{}, { unit: '1', digits: 0 }],
    // The oven stays empty.
    calm: within(
      [
        [0, 60],
        [0, 0.4],
      ],
      3_000,
    ),
    wild: stretches({
      levels: [
        [10, 18, 25, 42, 50],
        [0, 1],
      ],
      everyMs: [300, 900],
    }),
    scaleMs: 1_500,
    held: (_seen, { evidence }) => {
      const { side, reachedMs, requiredMs, leftMs, value } = evidence as Record<string, number>;
      if (evidence.side === 'low') return reachedMs! + leftMs! <= requiredMs!;
      return side !== undefined && (reachedMs! > requiredMs! || value! > 49 || value! >= 40);
    },
  },
  'self-heat': {
    settings: { excess: '5 K', rise: '6 K', rise_per: '1 min', window: '10 s' },
    signals: [{ unit: 'K' }, {}],
    calm: within(
      [
        [0, 4.9],
        [20, 150],
      ],
      2_000,
    ),
    wild: stretches({
      levels: [
        [2, 6, 9],
        [60, 90],
      ],
      slopes: [
        [0, 0.5, 1],
        [0, 0.5, 1],
      ],
      everyMs: [400, 1_000],
    }),
    scaleMs: 1_000,
    held: { onDelay: '2 s', ms: 2_000 },
    older: {
      1: {
        settings: { excess: '5 K', rise: '1 K', rise_per: '1 min', on_delay: '60 s' },
        memory: {
          answer: { answer: false, changeAt: null, sinceMs: null },
          times: [30_000, 60_000, 90_000, 120_000, 150_000, 180_000],
          excesses: [0.25, 1, 1.75, 2.5, 3.25, 4],
          surfaces: [80.375, 81.25, 82, 82.75, 83.5, 84.25],
          openAt: 180_000,
          excess: { sum: 14.25, count: 3 },
          surface: { sum: 169.75, count: 2 },
          slopePerMs: 0.000025,
          value: 5,
          at: 200_100,
        },
        leftMs: 200_100,
        deadlineMs: null,
        steps: reacting(210, 600),
        told: [['raised', 270_000]],
        // Means of half a minute may close half a minute apart.
        withinMs: 30_000,
      },
    },
  },
};
