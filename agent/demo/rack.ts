/**
 * One rack of bushings: metal, the wet film on it, and the air it stands in.
 *
 * Per m2 of coated surface: rho c d dT/dt = h (T_air - T) - L m', m' = beta (p_s(T) - p_air) while
 * water is left. Heat goes into metal and vapour; a wet film holds the metal back.
 */
import { saturationPressureOverWaterPa } from '#rules/process/saturation.ts';
import { nature, ovenPlant as plant } from './invented-plant.ts';

/** Vapour pressure of the air in oven and hall: the water of the hall's air. */
const airVapourPa = 1_150;

export class Rack {
  metalC = 24;
  waterKgPerM2 = 0;
  /** Water that left the film in the last step. */
  dryingKgPerM2S = 0;

  /** Freshly dipped. */
  load(aroundC: number): void {
    this.metalC = aroundC + 3;
    this.waterKgPerM2 = plant.waterKgPerM2;
  }

  step(airC: number, wPerM2K: number, stepS: number): void {
    const drivenPa = Math.max(0, saturatedPa(this.metalC) - airVapourPa);
    const wantedKgPerM2S = plant.dryingKgPerM2SPa * drivenPa;
    this.dryingKgPerM2S = Math.min(wantedKgPerM2S, this.waterKgPerM2 / stepS);
    this.waterKgPerM2 -= this.dryingKgPerM2S * stepS;
    const heatWPerM2 = wPerM2K * (airC - this.metalC);
    const vapourWPerM2 = nature.evaporationJPerKg * this.dryingKgPerM2S;
    const jPerM2K = nature.steelJPerM3K * plant.metalM;
    this.metalC += ((heatWPerM2 - vapourWPerM2) * stepS) / jPerM2K;
  }
}

/** Boiling is boiling: beyond the formula's range the film is at the pressure of the room. */
const saturatedPa = (atC: number): number => saturationPressureOverWaterPa(atC) ?? 101_325;
