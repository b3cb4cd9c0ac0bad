/** Cases of kinds that judge how a value moves: towards a limit, too fast, away from its baseline. */
import type { KindCase } from './kind-cases.ts';
import { stretches, walk, within } from './lives.ts';

const everyMs = [500, 1_000];
const delay = { onDelay: '2 s', ms: 2_000 };
const known = { reference: '20 Cel', sigma: '1 K' };

export const lives: Readonly<Record<string, KindCase>> = {
  approach: {
    settings: { low: '5 Cel', within: '15 s', window: '20 s' },
    signals: [{}],
    // It never falls.
    calm: walk(20, 0.001, 0, 2_000),
    wild: stretches({ levels: [[20, 30]], slopes: [[-2, -1, -0.5, 0, 1]], everyMs }),
    scaleMs: 1_500,
    held: delay,
  },
  rise: {
    settings: {
      ...{ up: '30 K', down: '40 K', per: '1 min', fall_share: '60 %' },
      ...{ window: '16 s', min_span: '6 s', deadband: '5 K', off_delay: '1 s' },
    },
    signals: [{ digits: null }],
    calm: walk(200, 30 / 60_000, -1, 2_000),
    wild: stretches({ levels: [[20, 60]], slopes: [[-2, -0.5, 0, 0, 0.5, 2]], everyMs }),
    scaleMs: 1_500,
    held: delay,
  },
  drift: {
    settings: { ...known, every: '1 s', off_delay: '1 s' },
    signals: [{}],
    // Steady limits of 3 sigma at a weight of 0.2 lie at 1 sigma.
    calm: within([[19, 21]], 3_000),
    wild: stretches({ levels: [[17, 18, 20, 21, 23]], everyMs }),
    scaleMs: 1_500,
    held: delay,
  },
  chart: {
    settings: known,
    signals: [{}],
    // In turn above and below, within 1 sigma: no pattern of the four.
    calm: within([[19.1, 20.9]], 3_000).map((steps) =>
      steps.map((step, i) => ({ ...step, input: 0, value: i % 2 === 0 ? 20.5 : 19.5 })),
    ),
    wild: stretches({ levels: [[17, 18, 20, 21, 23]], everyMs }),
    scaleMs: 1_500,
    held: delay,
  },
};
