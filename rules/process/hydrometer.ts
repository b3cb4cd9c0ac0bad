/**
 * What a hydrometer says: density at the temperature of the reading, and how sure that is.
 *
 * The body floats deeper where it has grown with warmth, so a reading taken off its calibration
 * temperature is corrected for the body: little for glass, ten times as much for plastic. That
 * gives the true density at the temperature of the reading, which is what solids.ts takes.
 *
 * Bringing a reading to the calibration temperature of the instrument is another thing: it also
 * needs the expansion of the liquid. The customary polynomial holds for water-like liquids only,
 * not for a dispersion of rubber or resin. Outside its range a function answers null, never NaN.
 */
import type { Subject } from './subject.ts';

/** Expansion by volume, per K: soda-lime or borosilicate floats (ISO 649 takes 25e-6); polycarbonate (three times 66e-6, from memory). */
export const bodyExpansionPerK = { glass: 25e-6, plastic: 200e-6 } as const;
export type HydrometerBody = keyof typeof bodyExpansionPerK;

const liquid = (c: number): boolean => c >= 0 && c <= 60;
const readable = (g: number): boolean => g >= 0.6 && g <= 2;

/**
 * rho = R (1 - gamma (T - T_cal)) to first order, g/mL: R / (1 + gamma (T - T_cal)). R in the unit of a
 * scale of density, 0.6 to 2 g/mL, both temperatures 0 to 60 °C; null outside. A scale of relative
 * density is first multiplied by the density of water at its reference.
 */
export function densityAtReadingGPerMl(
  readingGPerMl: number,
  temperatureC: number,
  calibratedAtC: number,
  body: HydrometerBody,
): number | null {
  if (!readable(readingGPerMl) || !liquid(temperatureC) || !liquid(calibratedAtC)) return null;
  return readingGPerMl / (1 + bodyExpansionPerK[body] * (temperatureC - calibratedAtC));
}

/**
 * Standard uncertainty of a corrected reading, g/mL: half a division either way by eye, and the
 * scale's own error, as rectangles; with the body's expansion known to a third of itself. The scale's
 * error is its certificate's, or one division where there is none (as the classes of ISO 649 allow,
 * from memory). Division 1e-5 to 0.05 g/mL, error 0 to 0.05; ranges else as the reading; null outside.
 */
export function hydrometerUGPerMl(
  readingGPerMl: number,
  temperatureC: number,
  calibratedAtC: number,
  body: HydrometerBody,
  divisionGPerMl: number,
  scaleErrorGPerMl = divisionGPerMl,
): number | null {
  if (!readable(readingGPerMl) || !liquid(temperatureC) || !liquid(calibratedAtC)) return null;
  if (!(divisionGPerMl >= 1e-5 && divisionGPerMl <= 0.05)) return null;
  if (!(scaleErrorGPerMl >= 0 && scaleErrorGPerMl <= 0.05)) return null;
  const byEye = divisionGPerMl / 2 / Math.sqrt(3);
  const byScale = scaleErrorGPerMl / Math.sqrt(3);
  const byBody =
    (readingGPerMl * bodyExpansionPerK[body] * Math.abs(temperatureC - calibratedAtC)) / 3;
  return Math.hypot(byEye, byScale, byBody);
}

/**
 * Relative density of a water-like liquid brought to the calibration temperature:
 * SG h(F)/h(F_cal), F in °F. SG 0.9 to 1.2, both 0 to 60 °C; null outside. Only for water, must and
 * thin solutions: never for the adhesive.
 */
export function waterLikeGravityAtCalibration(
  gravity: number,
  temperatureC: number,
  calibratedAtC: number,
): number | null {
  if (!(gravity >= 0.9 && gravity <= 1.2)) return null;
  if (!liquid(temperatureC) || !liquid(calibratedAtC)) return null;
  return (gravity * expansionFactor(temperatureC)) / expansionFactor(calibratedAtC);
}

function expansionFactor(temperatureC: number): number {
  const f = 1.8 * temperatureC + 32;
  return 1.00130346 - 1.34722124e-4 * f + 2.04052596e-6 * f ** 2 - 2.32820948e-9 * f ** 3;
}

export const subject: Subject = {
  title: 'Hydrometer',
  about:
    'True density at the temperature of the reading, from a glass or plastic float, with its uncertainty. "1.0 to 1.2" on a float is the scale of the instrument and no limit. Read at the bottom of the meniscus, in a sample free of foam.',
  symbols: {
    R: 'reading, g/mL',
    rho: 'density at the reading, g/mL',
    gamma: 'expansion of the float by volume, 1/K',
    T: 'temperature of the sample, °C; T_cal of the calibration',
    d: 'scale division, g/mL',
    s: 'error of the scale, g/mL',
    SG: 'relative density, no unit',
    F: 'temperature, °F',
  },
  source:
    'Expansion of glass: ISO 649 (from memory); of plastic: polycarbonate, from memory. Polynomial: printed alike by several public calculators.',
  uncertainty:
    'A 0.002 g/mL division without a certificate: 0.0013 g/mL, which is 0.4 % solids at 35 % and 1.10 g/mL.',
  functions: {
    densityAtReadingGPerMl: {
      formula: 'rho = R/(1 + gamma (T - T_cal)), gamma 25e-6 glass, 200e-6 plastic',
      range: 'R 0.6 to 2 g/mL, 0 to 60 °C; nothing outside.',
    },
    hydrometerUGPerMl: {
      formula: 'u = root of (d/2)^2/3 + s^2/3 + (R gamma (T - T_cal)/3)^2',
      range: 'd 1e-5 to 0.05 g/mL, s 0 to 0.05, one division where unknown; nothing outside.',
    },
    waterLikeGravityAtCalibration: {
      formula:
        'SG h(F)/h(F_cal), h = 1.00130346 - 1.34722124e-4 F + 2.04052596e-6 F^2 - 2.32820948e-9 F^3',
      range: 'SG 0.9 to 1.2, 0 to 60 °C; nothing outside. Water-like liquids only.',
      uncertainty: 'Against water and a glass float: 3e-4 from 10 to 30 °C, 1e-3 at 60 °C.',
    },
  },
};
