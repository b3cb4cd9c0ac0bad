import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { KeptEvents } from '#agent/web/kept-events.ts';

const ids = (frames: readonly string[] | null): number[] | null =>
  frames === null ? null : frames.map((text) => Number(/^id: (\d+)\n/.exec(text)![1]));

describe('what is kept', () => {
  test('everything after an id, in order; nothing after the newest; null before the first', () => {
    const kept = new KeptEvents(100);
    kept.keep('a\n\n');
    kept.keepSample('wall', 's1\n\n');
    kept.keep('b\n\n');
    kept.keepSample('wall', 's2\n\n');
    expect(kept.since(100)).toEqual(['id: 101\na\n\n', 'id: 103\nb\n\n', 'id: 104\ns2\n\n']);
    expect(kept.since(103)).toEqual(['id: 104\ns2\n\n']);
    expect(kept.since(104)).toEqual([]);
    expect(kept.since(99)).toBeNull();
    expect(kept.since(105)).toBeNull();
    expect(kept.since(Number.NaN)).toBeNull();
  });

  test('the latest samples come in the order in which they came', () => {
    const kept = new KeptEvents(0);
    for (const signal of ['a', 'b', 'a']) kept.keepSample(signal, signal);
    expect(kept.samplesSince(0)).toEqual(['b', 'a']);
    expect(kept.samplesSince(2)).toEqual(['a']);
  });

  test('a bounded number of events', () => {
    const kept = new KeptEvents(0);
    for (let i = 0; i < limits.streamKeptEventsMax + 5; i += 1) kept.keep('x');
    expect(kept.since(4)).toBeNull();
    expect(kept.since(5)?.length).toBe(limits.streamKeptEventsMax);
  });

  test('a bounded number of bytes, even where one event is larger than all', () => {
    const kept = new KeptEvents(0);
    const quarter = 'x'.repeat(limits.streamKeptBytesMax / 8);
    for (let i = 0; i < 6; i += 1) kept.keep(quarter);
    expect(kept.since(1)).toBeNull();
    expect(ids(kept.since(2))).toEqual([3, 4, 5, 6]);
    kept.keep('x'.repeat(limits.streamKeptBytesMax));
    expect(kept.since(6)).toBeNull();
    expect(kept.since(7)).toEqual([]);
  });

  test('ids of two agents have nothing to do with each other', () => {
    const [one, two] = [new KeptEvents(), new KeptEvents()];
    expect(Math.abs(one.lastId - two.lastId)).toBeGreaterThan(limits.streamKeptEventsMax);
    expect(Number.isSafeInteger(one.lastId + 2 ** 52)).toBe(true);
  });

  // Against the plainest telling of the same: all events in a list.
  test('a listener misses no event and no latest sample, whenever it left', () => {
    const happening = fc.oneof(
      fc.constant({ signal: null }),
      fc.record({ signal: fc.constantFrom('a', 'b', 'c') }),
    );
    fc.assert(
      fc.property(fc.array(happening, { maxLength: 60 }), fc.nat(60), (happenings, left) => {
        const kept = new KeptEvents(0);
        for (const { signal } of happenings) {
          if (signal === null) kept.keep('event');
          else kept.keepSample(signal, 'sample');
        }
        const expected = happenings.flatMap(({ signal }, i) => {
          const superseded =
            signal !== null && happenings.slice(i + 1).some((later) => later.signal === signal);
          return i + 1 > left && !superseded ? [i + 1] : [];
        });
        expect(ids(kept.since(left))).toEqual(left > happenings.length ? null : expected);
      }),
    );
  });
});
