/**
 * A material sheet in canonical numbers, and what is wrong with it.
 */
import { parseDuration } from '../quantity/duration.ts';
import { parseQuantity, withoutDust } from '../quantity/quantity.ts';
import { dimensionWords, toCanonical } from '../quantity/unit.ts';
import type { SiteProblem } from '../site/problem.ts';
import { readBath, type SheetBath } from './read-bath.ts';
import { readCoating, type SheetCoating } from './read-coating.ts';
import { heatProblems, readHeat, type SheetHeat } from './read-heat.ts';
import { readKeeping, type SheetKeeping } from './read-keeping.ts';
import type { SheetWritten } from './sheet.ts';

/** null is unknown: the sheet does not say. */
export interface Sheet extends SheetHeat, SheetBath, SheetCoating, SheetKeeping {
  readonly name: string;
  readonly source: string;
  readonly storageLowC: number | null;
  readonly storageHighC: number | null;
  readonly shelfLifeMs: number | null;
  readonly maxRestMs: number | null;
  readonly stirTimeMs: number | null;
  readonly targetSolidsPercent: number | null;
  readonly residueLimitC: number | null;
  /** Unknown behaves as the worse. */
  readonly residueKind: 'oxidising' | 'self-reactive' | 'unknown';
  readonly agitatorLowPerMin: number | null;
  readonly agitatorHighPerMin: number | null;
}

/** Every problem is returned; a field with one reads as unknown. */
export function readSheet(written: SheetWritten): {
  readonly sheet: Sheet;
  readonly problems: readonly SiteProblem[];
} {
  const problems: SiteProblem[] = [];
  const quantity = (key: keyof SheetWritten, canonical: string): number | null => {
    const text = written[key];
    if (text === undefined) return null;
    const read = parseQuantity(text, `7 ${canonical}`);
    if (!read.ok) {
      problems.push({ path: [key], problem: read.problem, fix: `${read.fix}.` });
      return null;
    }
    // A difference of temperature is written in the units of temperature.
    if (canonical === 'K' && read.value.unit.canonical === 'Cel') {
      const { value, unit } = read.value;
      return withoutDust(toCanonical(value, unit) - toCanonical(0, unit));
    }
    if (read.value.unit.canonical === canonical)
      return withoutDust(toCanonical(read.value.value, read.value.unit));
    problems.push({
      path: [key],
      problem: `"${text}" is ${dimensionWords(read.value.unit)}`,
      fix: `Write it in ${canonical}, or another unit of the same quantity.`,
    });
    return null;
  };
  const duration = (key: keyof SheetWritten): number | null => {
    const text = written[key];
    if (text === undefined) return null;
    const read = parseDuration(text);
    if (read.ok) return read.value;
    problems.push({ path: [key], problem: read.problem, fix: `${read.fix}.` });
    return null;
  };
  const sheet: Sheet = {
    name: written.name,
    source: written.source,
    storageLowC: quantity('storage_low', 'Cel'),
    storageHighC: quantity('storage_high', 'Cel'),
    shelfLifeMs: duration('shelf_life'),
    maxRestMs: duration('max_rest'),
    stirTimeMs: duration('stir_time'),
    targetSolidsPercent: quantity('target_solids', '%'),
    ...readHeat(quantity, duration),
    ...readBath(quantity),
    ...readCoating(quantity, duration),
    ...readKeeping(quantity, duration),
    residueLimitC: quantity('residue_limit', 'Cel'),
    residueKind: written.residue_kind ?? 'unknown',
    agitatorLowPerMin: quantity('agitator_low', '/min'),
    agitatorHighPerMin: quantity('agitator_high', '/min'),
  };
  const ascending = (lower: string, a: number | null, b: number | null): void => {
    if (a !== null && b !== null && a >= b)
      problems.push({
        path: [lower],
        problem: `it is not below ${lower.replace('_low', '_high')}`,
        fix: 'Give the lower value first; look at the data sheet again.',
      });
  };
  ascending('storage_low', sheet.storageLowC, sheet.storageHighC);
  ascending('agitator_low', sheet.agitatorLowPerMin, sheet.agitatorHighPerMin);
  ascending('film_low', sheet.filmLowMm, sheet.filmHighMm);
  ascending('film_total_low', sheet.filmTotalLowMm, sheet.filmTotalHighMm);
  ascending('part_low', sheet.partLowC, sheet.partHighC);
  ascending('profile_low', sheet.profileLowMm, sheet.profileHighMm);
  ascending('phosphate_low', sheet.phosphateLowGPerM2, sheet.phosphateHighGPerM2);
  ascending('ph_low', sheet.phLow, sheet.phHigh);
  ascending('viscosity_low', sheet.viscosityLowMPaS, sheet.viscosityHighMPaS);
  problems.push(...heatProblems(sheet));
  return { sheet, problems };
}
