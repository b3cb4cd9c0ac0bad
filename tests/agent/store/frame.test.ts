import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FramePacker, unpackFrame } from '../../../agent/store/frame.ts';
import { quality } from '../../../rules/signal/quality.ts';
import { SampleBatch } from '../../../rules/signal/sample.ts';
import { type AnySample, anySample, epoch } from './patterns.ts';

const signals = {
  ids: Int32Array.from([1, 2, 127, 128, 20_000, 7, 8, 9, 10]),
  digits: Int8Array.from([0, 1, 2, 3, 4, 5, 6, -1, 9]),
};

function batchOf(samples: readonly (AnySample & { readonly signal: number })[]): SampleBatch {
  const batch = new SampleBatch(1);
  for (const each of samples) {
    batch.push(each.signal, each.at, each.judged, each.value, each.quality, each.flags);
  }
  return batch;
}

const rowsOf = (batch: SampleBatch) =>
  Array.from({ length: batch.count }, (_, i) => ({
    signal: batch.signal[i]!,
    at: batch.at[i]!,
    judged: batch.judged[i]!,
    value: batch.value[i]!,
    quality: batch.quality[i]!,
    flags: batch.flags[i]!,
  }));

const anyBatch = fc.array(
  fc
    .tuple(anySample, fc.integer({ min: 0, max: signals.ids.length - 1 }))
    .map(([sample, signal]) => ({ ...sample, signal })),
  { maxLength: 60 },
);

test('what is packed is unpacked to the bit, whatever decimals were promised', () => {
  const packer = new FramePacker();
  fc.assert(
    fc.property(anyBatch, fc.boolean(), (samples, near) => {
      const judged = near ? epoch : 0;
      const body = packer.pack(batchOf(samples), signals, judged).slice();
      const out = new SampleBatch(1);
      unpackFrame(body, judged, out);
      // toEqual tells 0 from -0.
      expect(rowsOf(out)).toEqual(
        samples.map((each) => ({ ...each, signal: signals.ids[each.signal]! })),
      );
    }),
    { numRuns: 2_000 },
  );
});

test('every decimal from 0 to 6 gives back the nearest double of its decimal text', () => {
  const packer = new FramePacker();
  for (let digits = 0; digits <= 6; digits += 1) {
    for (const k of [0, 1, -1, 3, 7, 123_456, -999_999, 2 ** 31, 2 ** 40 + 1, 2 ** 51]) {
      const value = k / 10 ** digits;
      const batch = batchOf([{ signal: digits, at: 0, judged: 0, value, quality: 0, flags: 0 }]);
      const out = new SampleBatch();
      unpackFrame(packer.pack(batch, signals, 0), 0, out);
      expect(out.value[0]).toBe(value);
    }
  }
});

test('a good sample of its moment costs its head, its id and its value', () => {
  const batch = batchOf([
    { signal: 1, at: epoch, judged: epoch, value: 21.5, quality: 0, flags: 0 },
  ]);
  // version, count, head, id 2, zigzag of 215 in two bytes
  expect([...new FramePacker().pack(batch, signals, epoch)]).toEqual([1, 1, 1, 2, 0xae, 0x03]);
});

test('bad carries no value', () => {
  const bad = { signal: 1, at: epoch, judged: epoch, quality: quality.notFinite, flags: 0 };
  const out = new SampleBatch();
  unpackFrame(new FramePacker().pack(batchOf([{ ...bad, value: 7 }]), signals, epoch), epoch, out);
  expect(rowsOf(out)).toEqual([{ ...bad, signal: 2, value: 0 }]);
});

test('a part of a batch is packed alone', () => {
  const samples = [10, 11, 12].map((value) => ({
    ...{ signal: 0, at: epoch, judged: epoch, quality: 0, flags: 0 },
    value,
  }));
  const out = new SampleBatch();
  unpackFrame(new FramePacker().pack(batchOf(samples), signals, epoch, 1, 2), epoch, out);
  expect(rowsOf(out).map((row) => row.value)).toEqual([11]);
});

describe('where signals of the record are not in the plan', () => {
  test('their samples are left out and the others get the index of the plan', () => {
    const samples = [0, 1, 2, 3].map((signal) => ({
      ...{ at: epoch, judged: epoch, value: signal, quality: 0, flags: 0 },
      signal,
    }));
    const body = new FramePacker().pack(batchOf(samples), signals, epoch);
    const out = new SampleBatch();
    unpackFrame(body, epoch, out, Int32Array.from([-1, -1, 5]));
    expect(rowsOf(out).map((row) => [row.signal, row.value])).toEqual([[5, 1]]);
  });
});

test('bytes that no packer wrote are refused, and never loop or read beyond their end', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => {
      const out = new SampleBatch();
      try {
        unpackFrame(bytes, epoch, out);
      } catch (error) {
        expect(error).toMatchObject({ code: 'STORE_FRAME_UNREADABLE' });
      }
      expect(out.count).toBeLessThanOrEqual(40);
    }),
    { numRuns: 5_000 },
  );
});

test('a frame cut short anywhere is refused', () => {
  const samples = [1, 2, 4].map((signal) => ({
    ...{ at: epoch - 40, judged: epoch + 20, value: 1.25, quality: 2, flags: 1 },
    signal,
  }));
  const body = new FramePacker().pack(batchOf(samples), signals, epoch);
  for (let end = 0; end < body.length; end += 1) {
    expect(() => unpackFrame(body.subarray(0, end), epoch, new SampleBatch())).toThrow(
      'Stored samples cannot be read',
    );
  }
});
