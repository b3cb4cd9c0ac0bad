/**
 * Moisture of exhaust air: what a dryer's air carries away, and when it can carry no more.
 *
 * Air that cools in a duct below its dew point drips back, with the residue it has washed down. The
 * dew point of the exhaust against the coldest place it meets is the figure; relative humidity at
 * oven temperature says nothing. From the boiling point on there is no limit to compare with, and a
 * formula that goes on regardless turns negative: such a question is refused. Humidity ratios are
 * kg water a kg dry air; pressure is absolute, Pa. Outside its range a function answers null.
 */
import { saturatedHumidityRatioOverWater, vapourPressureFromRatioPa } from './moist-air.ts';
import { dewPointOverWaterC } from './saturation.ts';
import type { Subject } from './subject.ts';

const moist = (ratio: number): boolean => ratio >= 0 && ratio <= 1e3;
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Humidity ratio of the exhaust: W_in + water/dry air. Water 0 to 1e6 kg/h, dry air over 0 to 1e7 kg/h; null outside. */
export function exhaustRatio(
  supplyRatio: number,
  waterKgPerH: number,
  dryAirKgPerH: number,
): number | null {
  if (!moist(supplyRatio) || !(waterKgPerH >= 0 && waterKgPerH <= 1e6)) return null;
  if (!(dryAirKgPerH > 0 && dryAirKgPerH <= 1e7)) return null;
  const ratio = supplyRatio + waterKgPerH / dryAirKgPerH;
  return moist(ratio) ? ratio : null;
}

/**
 * How near the exhaust is to dripping at the coldest place it meets, % of what it could carry there:
 * 100 W/W_sat(T). Over 100 it drips. Coldest place 0 to 100 °C; null outside, and where water boils
 * at this pressure, since such air has no limit.
 */
export function exhaustSaturationPct(
  ratio: number,
  coldestC: number,
  pressurePa: number,
): number | null {
  if (!moist(ratio) || !(coldestC >= 0 && coldestC <= 100)) return null;
  const saturated = saturatedHumidityRatioOverWater(coldestC, pressurePa);
  return saturated === null ? null : finite((100 * ratio) / saturated);
}

/** Dew point of the exhaust, °C: the coldest a duct may be. Ratio over 0 to 1000, p 1 kPa to 2 MPa; null outside. */
export function exhaustDewPointC(ratio: number, pressurePa: number): number | null {
  const vapourPa = vapourPressureFromRatioPa(ratio, pressurePa);
  return vapourPa === null ? null : dewPointOverWaterC(vapourPa);
}

/** Dry air needed so that the exhaust stays at `mostRatio`, kg/h: water/(W_most - W_in). W_most above W_in; null outside. */
export function dryAirNeededKgPerH(
  waterKgPerH: number,
  supplyRatio: number,
  mostRatio: number,
): number | null {
  if (!(waterKgPerH >= 0 && waterKgPerH <= 1e6) || !moist(supplyRatio) || !moist(mostRatio))
    return null;
  return mostRatio > supplyRatio ? finite(waterKgPerH / (mostRatio - supplyRatio)) : null;
}

export const subject: Subject = {
  title: 'Exhaust air',
  about:
    "How much water a dryer's exhaust carries and how near it is to dripping in its duct. Says nothing of solvent vapour, which has its own limits, and of airflow, which has its own proof.",
  symbols: {
    W: 'humidity ratio of the exhaust, kg/kg; W_in of the supply, W_sat saturated, W_most allowed',
    T: 'temperature of the coldest place, °C',
    p: 'absolute pressure, Pa',
    e: 'vapour pressure, Pa',
    water: 'water taken up, kg/h',
    'dry air': 'dry air that passes, kg/h',
  },
  source: 'Mass balance; ASHRAE Fundamentals 2017, chapter 1; saturation by Sonntag 1990.',
  uncertainty: 'Humidity ratios 0.5 to 1.2 % low, as ideal gases.',
  functions: {
    exhaustRatio: {
      formula: 'W = W_in + water/dry air',
      range: 'Water 0 to 1e6 kg/h, dry air over 0 to 1e7 kg/h; nothing outside.',
    },
    exhaustSaturationPct: {
      formula: '100 W/W_sat(T of the coldest place)',
      range: '0 to 100 °C; nothing outside and where water boils at this pressure.',
    },
    exhaustDewPointC: {
      formula: 'dew point of e = p W/(0.621945 + W)',
      range: 'W over 0 to 1000; nothing outside -100 to 100 °C.',
    },
    dryAirNeededKgPerH: {
      formula: 'water/(W_most - W_in)',
      range: 'W_most above W_in; nothing else.',
    },
  },
};
