/** PsychroLib in SI, typed as far as the tests use it: Hyland-Wexler, ice below the triple point. */
import { createRequire } from 'node:module';

interface Psychrolib {
  SetUnitSystem(system: unknown): void;
  readonly SI: unknown;
  /** Pa; over ice at and below 0.01 °C, over water above. */
  GetSatVapPres(temperatureC: number): number;
  /** °C from dry bulb and vapour pressure; over ice below 0.01 °C. */
  GetTDewPointFromVapPres(dryBulbC: number, vapourPa: number): number;
  /** Humidity as a fraction, over ice at and below 0.01 °C. */
  GetTWetBulbFromRelHum(dryBulbC: number, humidity: number, pressurePa: number): number;
  GetTWetBulbFromHumRatio(dryBulbC: number, ratio: number, pressurePa: number): number;
  GetHumRatioFromTWetBulb(dryBulbC: number, wetBulbC: number, pressurePa: number): number;
  /** Clamped to a small figure from boiling on, where there is no limit. */
  GetSatHumRatio(dryBulbC: number, pressurePa: number): number;
  GetHumRatioFromRelHum(dryBulbC: number, humidity: number, pressurePa: number): number;
}

export const psychrolib: Psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);
