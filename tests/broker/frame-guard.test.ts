import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FrameGuard } from '#broker/frame-guard.ts';

/** MQTT 3.1.1 table 2.4 (from memory): the smallest and largest value of each length of field. */
const table24: [bytes: number[], value: number][] = [
  [[0x00], 0],
  [[0x7f], 127],
  [[0x80, 0x01], 128],
  [[0xff, 0x7f], 16_383],
  [[0x80, 0x80, 0x01], 16_384],
  [[0xff, 0xff, 0x7f], 2_097_151],
  [[0x80, 0x80, 0x80, 0x01], 2_097_152],
  [[0xff, 0xff, 0xff, 0x7f], 268_435_455],
];

const [publish, subscribe] = [0x30, 0x82];

describe('remaining length', () => {
  it.each(table24)('%j is %i', (bytes, value) => {
    const header = Buffer.from([subscribe, ...bytes]);
    expect(new FrameGuard(value).pass(header)).toEqual(header);
    if (value === 0) return;
    expect(new FrameGuard(value - 1).pass(header)).toBe('packet-too-large');
  });
  it('of five bytes is malformed', () => {
    const guard = new FrameGuard(268_435_455);
    expect(guard.pass(Buffer.from([publish, 0x80, 0x80, 0x80, 0x80, 0x01]))).toBe('malformed');
  });
});

const packet = (first: number, length: number, of = length) => {
  const size = Math.min(length, of);
  const head = size < 128 ? [first, size] : [first, 128 | (size & 127), size >> 7];
  return Buffer.concat([Buffer.from(head), Buffer.alloc(length, length & 255).subarray(0, size)]);
};
const cuts = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 40 });

/** What the guard passes of bytes that come in pieces of these sizes, or the fault it ends with. */
function passed(guard: FrameGuard, bytes: Buffer, sizes: readonly number[]): Buffer | string {
  const out: Buffer[] = [];
  for (let at = 0, turn = 0; at < bytes.length; turn += 1) {
    const size = sizes[turn % sizes.length]!;
    const next = guard.pass(bytes.subarray(at, at + size));
    if (typeof next === 'string') return next;
    out.push(next);
    at += size;
  }
  return Buffer.concat(out);
}

const lengthsOf = fc.array(fc.integer({ min: 0, max: 300 }), { maxLength: 12 });

it('cuts long publishes among short ones, and passes all else as it came, however the bytes are cut', () => {
  fc.assert(
    fc.property(lengthsOf, cuts, (lengths, sizes) => {
      const bytes = Buffer.concat(lengths.map((length) => packet(publish, length)));
      const wanted = Buffer.concat(lengths.map((length) => packet(publish, length, 200)));
      expect(passed(new FrameGuard(200), bytes, sizes)).toEqual(wanted);
    }),
  );
});

it('ends a connection at any other long packet, however the bytes are cut', () => {
  fc.assert(
    fc.property(lengthsOf, cuts, (lengths, sizes) => {
      const bytes = Buffer.concat(lengths.map((length) => packet(subscribe, length)));
      const isLong = lengths.some((length) => length > 200);
      expect(passed(new FrameGuard(200), bytes, sizes)).toEqual(
        isLong ? 'packet-too-large' : bytes,
      );
    }),
  );
});
