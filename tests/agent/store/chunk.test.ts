import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeChunk, encodeColumn } from '../../../agent/store/chunk.ts';
import { Column } from '../../../agent/store/columns.ts';
import { epochOf, pieceSamplesMax } from '../../../agent/store/segment.ts';
import { isInDoubt } from '../../../rules/signal/doubt.ts';
import { anySample, columnOf, processColumn, samplesOf } from './patterns.ts';

const anyDigits = fc.constantFrom(null, 0, 1, 2, 3, 4, 5, 6, 9);

function roundTrip(column: Column, digits: number | null): Column {
  const out = new Column();
  for (const chunk of encodeColumn(1, digits, 0, column)) {
    decodeChunk(chunk.codec, chunk.crc, chunk.data, out);
  }
  return out;
}

test('decoding gives what was encoded, in the order of judgement', () => {
  fc.assert(
    fc.property(fc.array(anySample, { maxLength: 80 }), anyDigits, (samples, digits) => {
      // Array.prototype.sort is stable: arrival decides last.
      const sorted = samples.toSorted((a, b) => a.judged - b.judged || a.at - b.at);
      expect(samplesOf(roundTrip(columnOf(samples), digits))).toEqual(sorted);
    }),
    { numRuns: 2_000 },
  );
});

test('the figures of a chunk are those of its samples', () => {
  fc.assert(
    fc.property(fc.array(anySample, { minLength: 1, maxLength: 80 }), (samples) => {
      const [chunk] = encodeColumn(7, 1, 3, columnOf(samples));
      const usable = samples.filter((each) => each.quality < 100 && (each.flags & 2) === 0);
      const values = usable.map((each) => each.value);
      expect(chunk).toMatchObject({
        signal: 7,
        n: samples.length,
        bad: samples.filter((each) => each.quality >= 100).length,
        late: samples.filter(({ quality, flags }) => isInDoubt(quality, flags)).length,
        t0: Math.min(...samples.map((each) => each.at)),
        t1: Math.max(...samples.map((each) => each.at)),
      });
      expect(epochOf(chunk!.part)).toBe(3);
      expect(chunk!.lo === null).toBe(values.length === 0);
      if (chunk!.lo !== null) {
        // Arithmetic equality: 0 and -0 are the same least value.
        expect(chunk!.lo + 0).toBe(Math.min(...values) + 0);
        expect(chunk!.hi! + 0).toBe(Math.max(...values) + 0);
      }
      const conflicts = samples.filter((each) => each.quality < 100 && (each.flags & 2) !== 0);
      expect(chunk!.sum === null).toBe(values.length === 0 || conflicts.length > 0);
    }),
    { numRuns: 500 },
  );
});

test('a long column is cut in pieces that follow each other', () => {
  const column = processColumn(pieceSamplesMax * 2 + 5, { everyMs: 20, jitterMs: 0 });
  const chunks = encodeColumn(1, 1, 2, column);
  expect(chunks.map((chunk) => chunk.n)).toEqual([pieceSamplesMax, pieceSamplesMax, 5]);
  expect(chunks.map((chunk) => chunk.part)).toEqual([131_072, 131_073, 131_074]);
  const out = new Column();
  for (const chunk of chunks) decodeChunk(chunk.codec, chunk.crc, chunk.data, out);
  expect(out.count).toBe(column.count);
  expect(out.value.subarray(0, out.count)).toEqual(column.value.subarray(0, out.count));
  expect(out.at.subarray(0, out.count)).toEqual(column.at.subarray(0, out.count));
});

describe('bytes a sample, an hour at 1 Hz', () => {
  /** The budget of the store is 1.5; the minutes outlive the rest and count too. */
  const cases = [
    ['0.1 resolution, on time', { jitterMs: 0 }, 0.6],
    ['0.1 resolution, arrivals within 100 ms', { jitterMs: 100 }, 0.95],
    ['0.1 resolution, arrivals within 1 s', { jitterMs: 1_000 }, 1.3],
    ['0.01 resolution, arrivals within 100 ms', { digits: 2 }, 1.5],
  ] as const;
  test.each(cases)('%s: under the bound', (_, pattern, bytesMax) => {
    for (let seed = 1; seed <= 5; seed += 1) {
      const column = processColumn(3_600, { ...pattern, seed });
      const [chunk] = encodeColumn(1, 'digits' in pattern ? pattern.digits : 1, 0, column);
      const bytes = chunk!.data.length + chunk!.minutes.length;
      expect(bytes / 3_600, `seed ${seed}`).toBeLessThan(bytesMax);
    }
  });
});

describe('damage', () => {
  const [chunk] = encodeColumn(1, 1, 0, processColumn(300));

  test('any flipped bit is noticed and leaves the column as it was', () => {
    const column = processColumn(3);
    for (let bit = 0; bit < chunk!.data.length * 8; bit += 7) {
      const data = chunk!.data.slice();
      data[bit >> 3]! ^= 1 << (bit & 7);
      expect(() => decodeChunk(chunk!.codec, chunk!.crc, data, column)).toThrow(
        'the checksum does not hold',
      );
      expect(column.count).toBe(3);
    }
  });

  test('a codec of a later version is refused', () => {
    expect(() => decodeChunk(2, chunk!.crc, chunk!.data, new Column())).toThrow('codec is 2');
  });
});
