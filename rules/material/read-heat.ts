/** The heats of a material sheet in canonical numbers; no oven heat may be a cure. */
import type { SiteProblem } from '../site/problem.ts';
import type { SheetWritten } from './sheet.ts';

/** null is unknown: the sheet does not say. */
export interface SheetHeat {
  readonly dryAboveC: number | null;
  readonly dryForMs: number | null;
  readonly prebakeAboveC: number | null;
  readonly prebakeForMs: number | null;
  readonly coverAfterMs: number | null;
  readonly coverWithinMs: number | null;
  readonly bakePeakC: number | null;
  readonly bakeUpperC: number | null;
  readonly bakeUpperForMs: number | null;
  readonly doseAtC: number | null;
  readonly doseZK: number | null;
  readonly doseKJPerMol: number | null;
  readonly doseLimitMs: number | null;
  readonly cureAboveC: number | null;
  readonly cureForMs: number | null;
  readonly curePressureKPa: number | null;
  readonly insertWaitMs: number | null;
}

export type ReadQuantity = (key: keyof SheetWritten, canonical: string) => number | null;
export type ReadDuration = (key: keyof SheetWritten) => number | null;

export const readHeat = (quantity: ReadQuantity, duration: ReadDuration): SheetHeat => ({
  dryAboveC: quantity('dry_above', 'Cel'),
  dryForMs: duration('dry_for'),
  prebakeAboveC: quantity('prebake_above', 'Cel'),
  prebakeForMs: duration('prebake_for'),
  coverAfterMs: duration('cover_after'),
  coverWithinMs: duration('cover_within'),
  bakePeakC: quantity('bake_peak', 'Cel'),
  bakeUpperC: quantity('bake_upper', 'Cel'),
  bakeUpperForMs: duration('bake_upper_for'),
  doseAtC: quantity('dose_at', 'Cel'),
  doseZK: quantity('dose_z', 'K'),
  doseKJPerMol: quantity('dose_energy', 'kJ/mol'),
  doseLimitMs: duration('dose_limit'),
  cureAboveC: quantity('cure_above', 'Cel'),
  cureForMs: duration('cure_for'),
  curePressureKPa: quantity('cure_pressure', 'kPa'),
  insertWaitMs: duration('insert_wait'),
});

/**
 * Curing begins above 140 °C, in the press alone (common practice, no published source): an oven
 * heat that high was copied from the wrong line of the data sheet.
 */
export const cureFromC = 140;

export function heatProblems(sheet: SheetHeat): SiteProblem[] {
  const ovens = [
    ['dry_above', sheet.dryAboveC, 'drying'],
    ['prebake_above', sheet.prebakeAboveC, 'pre-bake'],
  ] as const;
  const cures = ovens.flatMap(([key, aboveC, heat]): SiteProblem[] =>
    aboveC === null || aboveC < cureFromC
      ? []
      : [
          {
            path: [key],
            problem: `${aboveC} Cel is a temperature of cure, and no ${heat}`,
            fix: `Write the temperature of ${heat}; that of cure belongs to the press, as cure_above.`,
          },
        ],
  );
  const { coverAfterMs, coverWithinMs } = sheet;
  if (coverAfterMs === null || coverWithinMs === null || coverAfterMs < coverWithinMs) return cures;
  return [
    ...cures,
    {
      path: ['cover_after'],
      problem: 'the cover coat may not come before it is too late',
      fix: 'Make it shorter than cover_within; look at the data sheet again.',
    },
  ];
}
