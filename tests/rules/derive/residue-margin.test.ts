/** What is left to where residue as thick as gauged may light itself. */
import { describe, expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { loweringRows } from '../../vectors/residue-ignition.ts';
import { KindDrive } from './drive-kind.ts';

const margin = (surfaceC: number, thicknessMm: number, limit = '112 Cel') =>
  new KindDrive('residue-margin', { limit }, ['surface', 'thickness'])
    .values('surface', [0, surfaceC])
    .values('thickness', [0, thicknessMm])
    .advance(200).last;

describe('the margin of gauged residue', () => {
  test.each([0, 1, 10])('%d mm keeps the limit: thin residue raises none', (thicknessMm) => {
    expect(margin(100, thicknessMm)).toMatchObject({ value: 12, quality: quality.good });
  });
  test('50 mm takes the worse end of what is not known, and says that it is an estimate', () => {
    const worst = loweringRows.find((row) => row.thicknessMm === 50)!.lowC;
    const found = margin(40, 50);
    expect(Math.abs(found.value! - (worst - 40))).toBeLessThan(0.6);
    expect(found.quality).toBe(quality.estimated);
  });
  test('past the limit it is negative; of no thickness at all there is none', () => {
    expect(margin(120, 5).value).toBe(-8);
    expect(margin(40, -1).quality).toBe(quality.outsideFormula);
    expect(margin(40, 2_001).quality).toBe(quality.outsideFormula);
  });
});
