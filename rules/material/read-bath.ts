/** The bath and film of a material sheet in canonical numbers. */
import type { ReadQuantity } from './read-heat.ts';

/** null is unknown: the sheet does not say. */
export interface SheetBath {
  readonly bathC: number | null;
  readonly withdrawalMPerS: number | null;
  readonly ovenSolidsPercent: number | null;
  readonly ovenSolidsUPercent: number | null;
  readonly ovenDensityKgPerM3: number | null;
  readonly ovenDensityUKgPerM3: number | null;
  readonly ovenC: number | null;
  readonly filmLowMm: number | null;
  readonly filmHighMm: number | null;
  readonly phLow: number | null;
  readonly phHigh: number | null;
  readonly conductivityHighUSPerCm: number | null;
  readonly viscosityLowMPaS: number | null;
  readonly viscosityHighMPaS: number | null;
}

export const readBath = (quantity: ReadQuantity): SheetBath => ({
  bathC: quantity('bath_temperature', 'Cel'),
  withdrawalMPerS: quantity('withdrawal_speed', 'm/s'),
  ovenSolidsPercent: quantity('oven_solids', '%'),
  ovenSolidsUPercent: quantity('oven_solids_u', '%'),
  ovenDensityKgPerM3: quantity('oven_density', 'kg/m3'),
  ovenDensityUKgPerM3: quantity('oven_density_u', 'kg/m3'),
  ovenC: quantity('oven_temperature', 'Cel'),
  filmLowMm: quantity('film_low', 'mm'),
  filmHighMm: quantity('film_high', 'mm'),
  phLow: quantity('ph_low', '[pH]'),
  phHigh: quantity('ph_high', '[pH]'),
  conductivityHighUSPerCm: quantity('conductivity_high', 'uS/cm'),
  viscosityLowMPaS: quantity('viscosity_low', 'mPa.s'),
  viscosityHighMPaS: quantity('viscosity_high', 'mPa.s'),
});
