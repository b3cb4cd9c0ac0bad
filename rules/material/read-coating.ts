/** The coating part of a material sheet in canonical numbers. */
import type { ReadDuration, ReadQuantity } from './read-heat.ts';

/** null is unknown: the sheet does not say. */
export interface SheetCoating {
  readonly volumeSolidsPercent: number | null;
  readonly filmTotalLowMm: number | null;
  readonly filmTotalHighMm: number | null;
  readonly partLowC: number | null;
  readonly partHighC: number | null;
  readonly idleTipMs: number | null;
  readonly coatAfterBlastMs: number | null;
  readonly coatAfterConversionMs: number | null;
  readonly profileLowMm: number | null;
  readonly profileHighMm: number | null;
  readonly phosphateLowGPerM2: number | null;
  readonly phosphateHighGPerM2: number | null;
  readonly rinseConductivityHighUSPerCm: number | null;
}

export const readCoating = (quantity: ReadQuantity, duration: ReadDuration): SheetCoating => ({
  volumeSolidsPercent: quantity('volume_solids', '%'),
  filmTotalLowMm: quantity('film_total_low', 'mm'),
  filmTotalHighMm: quantity('film_total_high', 'mm'),
  partLowC: quantity('part_low', 'Cel'),
  partHighC: quantity('part_high', 'Cel'),
  idleTipMs: duration('idle_tip'),
  coatAfterBlastMs: duration('coat_after_blast'),
  coatAfterConversionMs: duration('coat_after_conversion'),
  profileLowMm: quantity('profile_low', 'mm'),
  profileHighMm: quantity('profile_high', 'mm'),
  phosphateLowGPerM2: quantity('phosphate_low', 'g/m2'),
  phosphateHighGPerM2: quantity('phosphate_high', 'g/m2'),
  rinseConductivityHighUSPerCm: quantity('rinse_conductivity_high', 'uS/cm'),
});
