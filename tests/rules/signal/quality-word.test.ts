import { expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { qualityOfWord } from '#rules/signal/quality-word.ts';

test.each([
  ['good', quality.good],
  ['Good', quality.good],
  [' UNCERTAIN ', quality.sensorUncertain],
  ['bad', quality.sensorBad],
  [true, quality.good],
  [false, quality.sensorBad],
])('%j is quality %d', (word, code) => {
  expect(qualityOfWord(word)).toBe(code);
});

// 0 is good in one common convention and bad in another, so numbers say nothing.
test.each([[0], [1], [192], ['0'], ['ok'], [''], [null], [undefined], [{}], [['good']]])(
  '%j says nothing',
  (word) => {
    expect(qualityOfWord(word)).toBeNull();
  },
);
