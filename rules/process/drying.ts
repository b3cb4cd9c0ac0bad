/**
 * Drying: how fast water leaves a wet film, and out of an open tank. What the exhaust carries is in
 * exhaust.ts.
 *
 * A wet film sits near the wet bulb of the air over it, whatever the oven's set point: so flash-off
 * is judged by wet bulb, film temperature and airflow, not by dew point. The rate here is that of a
 * film still wet at its surface; once it skins over it is slower, so every time here is a least time
 * and never shows that a film is dry.
 *
 * Humidity ratios are kg water a kg dry air; pressure is absolute, Pa. Outside its range a function
 * answers null, never NaN.
 */
import { saturatedHumidityRatioOverWater } from './moist-air.ts';
import type { Subject } from './subject.ts';

const oven = (c: number): boolean => c >= 0 && c <= 200;
const moist = (ratio: number): boolean => ratio >= 0 && ratio <= 1e3;
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Heat of evaporation, J/kg: 2501 - 2.326 t kJ/kg, 0 to 100 °C; null outside. */
export const evaporationHeatJPerKg = (atC: number): number | null =>
  atC >= 0 && atC <= 100 ? 1_000 * (2_501 - 2.326 * atC) : null;

/**
 * Wet bulb in oven air, °C, within 1e-6 K: what a wet film settles near. Dry bulb 0 to 200 °C, wick
 * over water below 100 °C; null outside, for air more than saturated, and below 0 °C wet bulb.
 */
export function ovenWetBulbC(dryBulbC: number, ratio: number, pressurePa: number): number | null {
  if (!oven(dryBulbC) || !moist(ratio)) return null;
  const at = (wetC: number): number | null => ratioAtWetBulb(dryBulbC, wetC, pressurePa);
  let below = 0;
  let above = Math.min(dryBulbC, 100);
  const driest = at(below);
  if (driest === null || driest > ratio) return null;
  // Above the boiling point the wick has no ratio: far too wet.
  const wettest = at(above);
  if (wettest !== null && wettest < ratio) return null;
  while (above - below > 1e-6) {
    const middle = (below + above) / 2;
    const found = at(middle);
    if (found === null || found > ratio) above = middle;
    else below = middle;
  }
  return (below + above) / 2;
}

/** ASHRAE 2017 Fundamentals, chapter 1, equation 33, over water; null where the wick would boil. */
function ratioAtWetBulb(dryC: number, wetC: number, pressurePa: number): number | null {
  const saturated = saturatedHumidityRatioOverWater(wetC, pressurePa);
  if (saturated === null) return null;
  return (
    ((2_501 - 2.326 * wetC) * saturated - 1.006 * (dryC - wetC)) /
    (2_501 + 1.86 * dryC - 4.186 * wetC)
  );
}

/**
 * h = 0.0204 G^0.8, W/m2K, for air that flows along a surface. G 2 450 to 29 300 kg/m2h (0.6 to 8 m/s),
 * 45 to 150 °C (ranges from memory); null outside.
 */
export function alongFlowTransferWPerM2K(massFluxKgPerM2H: number): number | null {
  if (!(massFluxKgPerM2H >= 2_450 && massFluxKgPerM2H <= 29_300)) return null;
  return 0.0204 * massFluxKgPerM2H ** 0.8;
}

/**
 * Water that leaves a wet surface, kg/m2h: 3600 h (T - T_wb)/h_fg. Air 0 to 200 °C and not colder than
 * its wet bulb, wet bulb 0 to 100 °C, h over 0 to 1e4 W/m2K; null outside. Heat by radiation or
 * through the part comes on top.
 */
export function constantRateKgPerM2H(
  airC: number,
  wetBulbC: number,
  transferWPerM2K: number,
): number | null {
  const heat = evaporationHeatJPerKg(wetBulbC);
  if (heat === null || !oven(airC) || !(airC >= wetBulbC)) return null;
  if (!(transferWPerM2K > 0 && transferWPerM2K <= 1e4)) return null;
  return (3_600 * transferWPerM2K * (airC - wetBulbC)) / heat;
}

/**
 * Least minutes for the water of a wet film to leave at that rate: 60 WFT rho (1 - w)/N. WFT 0 to
 * 10 000 µm, density 0.9 to 1.6 g/mL, mass solids 0 to 100 %, rate over 0; null outside.
 */
export function leastFlashOffMin(
  wetUm: number,
  densityGPerMl: number,
  massSolidsPct: number,
  rateKgPerM2H: number,
): number | null {
  if (!(wetUm >= 0 && wetUm <= 10_000) || !(densityGPerMl >= 0.9 && densityGPerMl <= 1.6))
    return null;
  if (!(massSolidsPct >= 0 && massSolidsPct <= 100) || !(rateKgPerM2H > 0)) return null;
  const waterKgPerM2 = (wetUm / 1_000) * densityGPerMl * (1 - massSolidsPct / 100);
  return finite((60 * waterKgPerM2) / rateKgPerM2H);
}

/**
 * Water that leaves an open surface into moving room air, kg/h: (25 + 19 v) A (x_s - x), such as a tank
 * or weir. The figure is by the hour: by the second it is 3600 times less. Negative where the air is
 * wetter than the surface and settles on it. Area 0 to 1000 m2, v 0 to 5 m/s, ratios 0 to 0.1; null
 * outside.
 */
export function surfaceEvaporationKgPerH(
  areaM2: number,
  airMPerS: number,
  surfaceRatio: number,
  airRatio: number,
): number | null {
  if (!(areaM2 >= 0 && areaM2 <= 1_000) || !(airMPerS >= 0 && airMPerS <= 5)) return null;
  if (![surfaceRatio, airRatio].every((ratio) => ratio >= 0 && ratio <= 0.1)) return null;
  return (25 + 19 * airMPerS) * areaM2 * (surfaceRatio - airRatio);
}

/** Air leaving a dryer without heat of its own, °C: T_wb + (T_in - T_wb) e^-NTU. 0 to 200 °C, NTU 0 to 100; null outside. */
export function adiabaticOutletC(
  inletC: number,
  wetBulbC: number,
  transferUnits: number,
): number | null {
  if (!oven(inletC) || !oven(wetBulbC) || !(inletC >= wetBulbC)) return null;
  if (!(transferUnits >= 0 && transferUnits <= 100)) return null;
  return wetBulbC + (inletC - wetBulbC) * Math.exp(-transferUnits);
}

/**
 * Water taken out, kg, from the dried product and its water before and after, % of the whole:
 * P (x1 - x2)/(100 - x1). Product 0 to 1e9 kg, 100 > x1 >= x2 >= 0; null outside.
 */
export function waterRemovedKg(
  driedKg: number,
  beforePct: number,
  afterPct: number,
): number | null {
  if (!(driedKg >= 0 && driedKg <= 1e9)) return null;
  if (!(beforePct < 100 && beforePct >= afterPct && afterPct >= 0)) return null;
  return finite((driedKg * (beforePct - afterPct)) / (100 - beforePct));
}

export const subject: Subject = {
  title: 'Drying and flash-off',
  about:
    'How fast water leaves a wet film, by wet bulb and airflow. Least times only: no time computed here shows that a film is dry. Says nothing of solvent vapour, which has its own limits.',
  symbols: {
    T: 'air temperature, °C; T_wb wet bulb',
    W: 'humidity ratio, kg/kg; W_sat saturated',
    'W*': 'saturated humidity ratio at the wet bulb, kg/kg',
    p: 'absolute pressure, Pa',
    h: 'heat transfer, W/(m2 K)',
    G: 'mass flux of the air, kg/(m2 h)',
    h_fg: 'heat of evaporation, J/kg',
    N: 'drying rate, kg/(m2 h)',
    WFT: 'wet film, m',
    rho: 'density of the wet film, kg/m3',
    w: 'solids by mass, share',
    v: 'air speed, m/s',
    A: 'surface, m2',
    x: 'humidity ratio of the room, kg/kg; x_s saturated at the surface',
    NTU: 'transfer units of a dryer, no unit',
    P: 'dried product, kg',
    x1: 'water before, % of the whole; x2 after',
  },
  source:
    'Wet bulb: ASHRAE Fundamentals 2017, chapter 1, eq. 33. Rate: C. J. Geankoplis, Transport Processes, 9.6 (from memory). Open surfaces: a public engineering reference. Dryer: Coulson and Richardson, volume 2, chapter 16; Treybal, chapter 12.',
  uncertainty:
    'Rates within 20 to 30 % (the transfer coefficient decides); humidity ratios 0.5 to 1.2 % low, as ideal gases.',
  functions: {
    evaporationHeatJPerKg: {
      formula: 'h_fg = 1000 (2501 - 2.326 T)',
      range: '0 to 100 °C; nothing outside.',
      uncertainty: '0.6 % against steam tables up to 100 °C.',
    },
    ovenWetBulbC: {
      formula:
        'W = ((2501 - 2.326 T_wb) W* - 1.006 (T - T_wb))/(2501 + 1.86 T - 4.186 T_wb), solved for T_wb',
      range: 'T 0 to 200 °C, wet bulb 0 to 100 °C; nothing outside or for air over saturation.',
    },
    alongFlowTransferWPerM2K: {
      formula: 'h = 0.0204 G^0.8',
      range: 'G 2 450 to 29 300 kg/m2h (from memory); nothing outside.',
    },
    constantRateKgPerM2H: {
      formula: 'N = 3600 h (T - T_wb)/h_fg',
      range: '0 to 200 °C, T not below T_wb, h over 0 to 1e4 W/m2K; nothing outside.',
    },
    leastFlashOffMin: {
      formula: '60 WFT rho (1 - w)/N',
      range: 'WFT 0 to 10 000 µm, 0.9 to 1.6 g/mL, solids 0 to 100 %, N over 0; nothing outside.',
    },
    surfaceEvaporationKgPerH: {
      formula: '(25 + 19 v) A (x_s - x), kg/h',
      range: 'A 0 to 1000 m2, v 0 to 5 m/s, ratios 0 to 0.1; nothing outside.',
    },
    adiabaticOutletC: {
      formula: 'T_wb + (T_in - T_wb) exp(-NTU)',
      range: '0 to 200 °C, NTU 0 to 100; nothing outside.',
    },
    waterRemovedKg: {
      formula: 'P (x1 - x2)/(100 - x1)',
      range: '100 > x1 >= x2 >= 0; nothing outside.',
    },
  },
};
