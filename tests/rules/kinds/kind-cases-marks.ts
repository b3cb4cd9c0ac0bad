/** Cases of kinds that judge what people write down: too old, too late. */
import type { KindCase, Seen } from './kind-cases.ts';
import { amongHolds, amongMarks, marked } from './lives.ts';

/** When it was last marked, by any of the marks named, before `ms`. */
const lastMark = (seen: readonly Seen[], mark: number, item: unknown, ms: number): number =>
  seen.findLast(
    (each) => 'mark' in each && each.mark === mark && each.item === item && each.at <= ms,
  )?.at ?? Number.NaN;

export const lives: Readonly<Record<string, KindCase>> = {
  age: {
    settings: { limit: '10 s', early: '80 %' },
    signals: [],
    marks: ['rack', 'rack'],
    // The second mark comes within the early part of the limit, each time.
    calm: marked(1, 7_000).map((steps) =>
      steps.flatMap(({ afterMs, ...step }) => [
        { afterMs, ...step },
        { afterMs: 7_900, ...step, mark: 1 },
      ]),
    ),
    wild: marked(2, 9_000),
    scaleMs: 5_000,
    // One scanned again at the very moment it is old is old all the same: that moment comes first.
    held: (seen, { afterMs, evidence }) =>
      afterMs - lastMark(seen, 0, evidence.item, afterMs - 1) >= 8_000,
  },
  present: {
    settings: { low: '5 Cel', inclusive: true },
    signals: [{ unit: 'Cel', digits: 1 }],
    marks: ['rack', 'rack'],
    calm: amongMarks([5.1, 9], 2, 9_000),
    wild: amongMarks([0, 9], 2, 9_000),
    scaleMs: 5_000,
    held: { onDelay: '8 s', ms: 8_000 },
  },
  held: {
    settings: { while_used: true },
    signals: [],
    marks: ['rack', 'rack'],
    // What is held is none of those that are used.
    calm: amongHolds(['rack-1', 'rack-2'], ['rack-3']),
    wild: amongHolds(['rack-1', 'rack-2'], ['rack-1', 'rack-2']),
    scaleMs: 5_000,
    held: (seen, { afterMs, evidence: { item } }) => {
      const last = (verb: 'set' | 'lift'): number =>
        seen.findLast(
          (each) =>
            'hold' in each && each.hold === verb && each.item === item && each.at <= afterMs,
        )?.at ?? Number.NEGATIVE_INFINITY;
      const used = (mark: number): number =>
        seen.findLast(
          (each) =>
            'mark' in each && each.mark === mark && each.item === item && each.at <= afterMs,
        )?.at ?? Number.NEGATIVE_INFINITY;
      return last('set') > Number.NEGATIVE_INFINITY && used(0) > used(1);
    },
  },
  'too-soon': {
    settings: { not_before: '6 s' },
    signals: [],
    marks: ['rack', 'rack'],
    // The second mark comes once the first has had its time, each time.
    calm: marked(1, 9_000).map((steps) =>
      steps.flatMap(({ afterMs, ...step }) => [
        { afterMs, ...step },
        { afterMs: 6_000, ...step, mark: 1 },
      ]),
    ),
    wild: marked(2, 9_000),
    scaleMs: 5_000,
    held: (seen, { afterMs, evidence }) =>
      afterMs - lastMark(seen, 0, evidence.item, afterMs) < 6_000,
  },
  sequence: {
    settings: { within: '6 s' },
    signals: [],
    marks: ['rack', 'rack'],
    calm: marked(1, 9_000).map((steps) =>
      steps.flatMap(({ afterMs, ...step }) => [
        { afterMs, ...step },
        { afterMs: 5_900, ...step, mark: 1 },
      ]),
    ),
    wild: marked(2, 9_000),
    scaleMs: 5_000,
    // One scanned again at the very moment it is late is late all the same: that moment comes first.
    held: (seen, { afterMs, evidence }) =>
      afterMs - lastMark(seen, 0, evidence.item, afterMs - 1) >= 6_000,
  },
};
