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

describe('remaining length', () => {
  it.each(table24)('%j is %i', (bytes, value) => {
    expect(new FrameGuard(value).inspect(Uint8Array.of(0x30, ...bytes))).toBeNull();
    if (value === 0) return;
    expect(new FrameGuard(value - 1).inspect(Uint8Array.of(0x30, ...bytes))).toBe(
      'packet-too-large',
    );
  });
  it('of five bytes is malformed', () => {
    const guard = new FrameGuard(268_435_455);
    expect(guard.inspect(Uint8Array.of(0x30, 0x80, 0x80, 0x80, 0x80, 0x01))).toBe('malformed');
  });
});

it('finds the one long packet among short ones, however the bytes are cut', () => {
  const packet = (length: number) => {
    const head = length < 128 ? [0x30, length] : [0x30, 128 | (length & 127), length >> 7];
    return Buffer.concat([Buffer.from(head), Buffer.alloc(length, 0xff)]);
  };
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 300 }), { maxLength: 12 }),
      fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 40 }),
      (lengths, cuts) => {
        const bytes = Buffer.concat(lengths.map(packet));
        const guard = new FrameGuard(200);
        let fault = null;
        for (let at = 0, cut = 0; at < bytes.length && fault === null; cut++) {
          const step = cuts[cut % cuts.length]!;
          fault = guard.inspect(bytes.subarray(at, at + step));
          at += step;
        }
        expect(fault).toBe(lengths.some((length) => length > 200) ? 'packet-too-large' : null);
      },
    ),
  );
});
