import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numberOfText } from '#rules/signal/number-text.ts';

test.each([
  ['21.5', 21.5],
  [' 21.5\r\n', 21.5],
  ['\t-3', -3],
  ['+7', 7],
  ['007.5', 7.5],
  ['.5', 0.5],
  ['-.5', -0.5],
  ['1e3', 1000],
  ['1E-3', 0.001],
  ['1e-400', 0],
  ['0', 0],
])('%j is %d', (text, value) => {
  expect(numberOfText(text)).toBe(value);
});

const none = [
  '',
  ' ',
  '.',
  '5.',
  '-',
  '+-1',
  '0x1f',
  '0b1',
  '1_000',
  '1,5',
  '1 000',
  'e5',
  '1e',
  '21.5 Cel',
  '٣',
  '\u00a07',
  '1n',
  'null',
  'true',
  'infinite',
];
test.each(none)('%j is no number', (text) => {
  expect(numberOfText(text)).toBeNaN();
});

const endless = [
  'NaN',
  'nan',
  '-nan',
  'inf',
  '-Infinity',
  '+INF',
  '1e400',
  '-1e400',
  '9'.repeat(400),
];
test.each(endless)('%j is not finite', (text) => {
  expect(Math.abs(numberOfText(text))).toBe(Number.POSITIVE_INFINITY);
});

test('every double comes back from its own text', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(numberOfText(String(value)) === value).toBe(true);
    }),
  );
});
