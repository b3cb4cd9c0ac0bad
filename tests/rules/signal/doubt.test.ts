import { expect, test } from 'vitest';
import { causeStored, gradeStored, isInDoubt } from '../../../rules/signal/doubt.ts';
import { quality } from '../../../rules/signal/quality.ts';
import { sampleFlag } from '../../../rules/signal/sample.ts';

test.each([
  [quality.good, 0, 'good', null],
  [quality.good, sampleFlag.late, 'uncertain', 'late: kept and not judged'],
  [quality.conflict, sampleFlag.conflict, 'uncertain', 'another value came for the same time'],
  [
    quality.jump,
    sampleFlag.late,
    'uncertain',
    'changed faster than it plausibly can; late: kept and not judged',
  ],
  [
    quality.outOfRange,
    sampleFlag.late,
    'bad',
    'outside what the sensor can read; late: kept and not judged',
  ],
  [quality.outOfRange, 0, 'bad', 'outside what the sensor can read'],
] as const)('quality %i with flags %i is %s', (code, flags, grade, cause) => {
  expect([gradeStored(code, flags), causeStored(code, flags)]).toEqual([grade, cause]);
  expect(isInDoubt(code, flags)).toBe(grade === 'uncertain');
});
