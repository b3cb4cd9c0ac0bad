import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plainDecimalOfBytes } from '#agent/intake/number-bytes.ts';
import { numberOfText } from '#rules/signal/number-text.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test('the fast way never differs from the strict grammar', () => {
  const almostNumber = fc.string({ unit: fc.constantFrom(...'0123456789.+-e ,x'), maxLength: 20 });
  fc.assert(
    fc.property(almostNumber, (text) => {
      const fast = plainDecimalOfBytes(bytes(text));
      if (fast !== null) expect(fast).toBe(numberOfText(text));
    }),
    { numRuns: 20_000 },
  );
});

test('the fast way gives the nearest double for every decimal it takes', () => {
  const decimal = fc.tuple(
    fc.bigInt({ min: 0n, max: 10n ** 15n - 1n }),
    fc.integer({ min: 0, max: 15 }),
  );
  fc.assert(
    fc.property(decimal, ([whole, decimals]) => {
      const digits = String(whole).padStart(decimals, '0');
      const cut = digits.length - decimals;
      const text = decimals === 0 ? digits : `${digits.slice(0, cut)}.${digits.slice(cut)}`;
      const fast = plainDecimalOfBytes(bytes(text));
      expect(fast).toBe(Number(text));
    }),
    { numRuns: 20_000 },
  );
});

test.each(['', '.', '-', '+', '5.', '1.2.3', '1e3', ' 1', '0x1', '1234567890123456'])(
  '%j is left to the slow way',
  (text) => {
    expect(plainDecimalOfBytes(bytes(text))).toBeNull();
  },
);
