/** Cases of kinds that judge one value by itself: beyond a limit, silent, still, too long, too seldom. */
import type { KindCase, Seen } from './kind-cases.ts';
import { stretches, walk, within } from './lives.ts';

const everyMs = [200, 700, 1_500];
const levels = [[5, 12, 20, 29, 31, 45]];
const delay = { onDelay: '2 s', ms: 2_000 };
const value = (seen: Seen): number => ('value' in seen ? seen.value : Number.NaN);

/** For how long the last of `spanMs` before `to` it was so, each reading holding until the next. */
function heldMs(
  seen: readonly Seen[],
  fromMs: number,
  toMs: number,
  so: (value: number) => boolean,
): number {
  let held = 0;
  for (const [i, each] of seen.entries()) {
    const until = Math.min(seen[i + 1]?.at ?? toMs, toMs);
    if (so(value(each))) held += Math.max(0, until - Math.max(each.at, fromMs));
  }
  return held;
}

export const lives: Readonly<Record<string, KindCase>> = {
  band: {
    settings: { low: '10 Cel', high: '30 Cel', deadband: '1 K', off_delay: '1 s' },
    signals: [{}],
    calm: within([[10, 30]], 5_000),
    wild: stretches({ levels, everyMs }),
    scaleMs: 1_500,
    held: delay,
  },
  deviation: {
    settings: { target: '20 Cel', below: '50 %', above: '10 K', deadband: '1 K' },
    signals: [{}],
    calm: within([[10, 30]], 5_000),
    wild: stretches({ levels, everyMs }),
    scaleMs: 1_500,
    held: delay,
  },
  exposure: {
    settings: { high: '30 Cel', for: '6 s', within: '20 s' },
    signals: [{}],
    calm: within([[0, 30]], 5_000),
    wild: stretches({ levels, everyMs }),
    scaleMs: 1_500,
    // The oldest of 64 slices counts whole.
    held: (seen, { afterMs }) =>
      heldMs(seen, afterMs - (20_000 * 65) / 64, afterMs, (v) => v > 30) >= 6_000,
  },
  duty: {
    settings: { runs_from: '20 Cel', run: '5 s', within: '15 s' },
    signals: [{}],
    calm: within([[20, 40]], 5_000),
    wild: stretches({ levels, everyMs }),
    scaleMs: 1_500,
    held: (seen, { afterMs }) =>
      afterMs >= 15_000 && heldMs(seen, afterMs - 15_000, afterMs, (v) => v >= 20) <= 5_000,
  },
  lost: {
    settings: { after: '5 s' },
    signals: [{}],
    calm: within([[0, 50]], 4_999),
    calmEndMs: 0,
    wild: stretches({ levels, everyMs: [700, 4_000, 9_000] }),
    scaleMs: 3_000,
    held: (seen, { afterMs }) => seen.every(({ at }) => at <= afterMs - 5_000 || at >= afterMs),
  },
  stuck: {
    settings: { for: '5 s', tolerance: '0.2 K' },
    signals: [{}],
    calm: walk(20, 0.0001, 1, 2_000).map((steps) =>
      steps.map((step, i) => ({ ...step, input: 0, value: 20 + (i % 2) })),
    ),
    calmEndMs: 0,
    wild: stretches({ levels, slopes: [[0, 0, 0.1, 0.5]], everyMs }),
    scaleMs: 1_500,
    held: (seen, { afterMs }) => {
      const lately = seen.filter(({ at }) => at >= afterMs - 5_000 && at < afterMs).map(value);
      const first = seen.findLast(({ at }) => at <= afterMs - 5_000);
      return lately.every(
        (each) => first !== undefined && Math.abs(each - value(first)) <= 0.4 + 1e-9,
      );
    },
  },
};
