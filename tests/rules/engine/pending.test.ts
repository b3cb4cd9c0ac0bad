import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Pending, type PendingSample } from '#rules/engine/pending.ts';
import { SampleBatch } from '#rules/signal/sample.ts';

const step = fc.oneof(
  fc.record({
    signal: fc.nat({ max: 3 }),
    judged: fc.integer({ min: 1, max: 4 }),
    behind: fc.constantFrom(0, 0, 0, 1),
  }),
  fc.constant('take' as const),
);

/** The order as it is meant: (judged, signal, at, arrival), by looking at all of them. */
const firstOf = (waiting: readonly PendingSample[]): number => {
  let best = 0;
  for (const [i, each] of waiting.entries()) {
    const than = waiting[best]!;
    const order = each.judged - than.judged || each.signal - than.signal || each.at - than.at;
    if (order < 0) best = i;
  }
  return best;
};

test('takes in the order (judged, signal, at, arrival), however pushes and takes interleave', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
      const pending = new Pending();
      const waiting: PendingSample[] = [];
      const taken = { signal: 0, at: 0, judged: 0, value: 0, quality: 0, flags: 0 };
      let value = 0;
      for (const each of steps) {
        if (each === 'take') {
          if (waiting.length === 0) continue;
          const [expected] = waiting.splice(firstOf(waiting), 1);
          expect(pending.nextJudged).toBe(expected!.judged);
          pending.take(taken);
          expect(taken).toEqual(expected);
        } else {
          value += 1;
          const sample = { ...each, at: each.judged - each.behind, value, quality: 0, flags: 0 };
          const { signal, at, judged } = sample;
          const batch = new SampleBatch(1);
          batch.push(signal, at, judged, value, 0, 0);
          pending.push(batch, 0);
          waiting.push({ signal, at, judged, value, quality: 0, flags: 0 });
        }
        expect(pending.size).toBe(waiting.length);
      }
      const rest = [...waiting];
      const inOrder: PendingSample[] = [];
      while (rest.length > 0) inOrder.push(...rest.splice(firstOf(rest), 1));
      expect(pending.list()).toEqual(inOrder);
    }),
    { numRuns: 2_000 },
  );
});
