/**
 * The formulas of WMO-No. 8, Annex 4.B, as a yardstick of other make than the one under test.
 * They are tested themselves before anything is compared to them.
 */

/** Pa over water, -45 to 60 °C. */
export const magnusOverWaterPa = (t: number): number =>
  611.2 * Math.exp((17.62 * t) / (243.12 + t));
/** Pa over ice, -65 to 0 °C. */
export const magnusOverIcePa = (t: number): number => 611.2 * Math.exp((22.46 * t) / (272.62 + t));
export const enhancementFactor = (hPa: number): number => 1.0016 + 3.15e-6 * hPa - 0.074 / hPa;

export function magnusDewPointOverWaterC(vapourPa: number): number {
  const ln = Math.log(vapourPa / 611.2);
  return (243.12 * ln) / (17.62 - ln);
}

/** Relative humidity, %, from a mixing ratio in kg/kg (eq. 4.A.6), with the enhancement factor. */
export function humidityFromMixingRatioPct(hPa: number, t: number, ratio: number): number {
  const vapourHPa = (hPa * ratio) / (0.62198 + ratio);
  return (vapourHPa / ((enhancementFactor(hPa) * magnusOverWaterPa(t)) / 100)) * 100;
}
