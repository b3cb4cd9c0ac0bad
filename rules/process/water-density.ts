/**
 * Density of liquid water at atmospheric pressure: what a dispersion in water is measured against.
 *
 * Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97-105, on the temperature scale of 1968. One
 * widely read copy of a later paper prints the denominator as 16.89785e-3, two digits swapped:
 * 0.27 kg/m3 wrong at 20 °C. Outside its range the function answers null, never NaN.
 */
import type { Subject } from './subject.ts';

/** kg/m3 of air-free water at 101.325 kPa, 0 to 100 °C; null outside. Within 0.005 kg/m3 to 40 °C. */
export function waterDensityKgPerM3(temperatureC: number): number | null {
  if (!(temperatureC >= 0 && temperatureC <= 100)) return null;
  const t = temperatureC;
  const above =
    999.83952 +
    t *
      (16.945176 +
        t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - 280.54253e-12 * t))));
  return above / (1 + 16.87985e-3 * t);
}

export const subject: Subject = {
  title: 'Density of water',
  about: 'The liquid of the dispersion, against which its solids are weighed.',
  symbols: { t: 'temperature, °C', rho: 'density, kg/m3' },
  source: 'G. S. Kell, J. Chem. Eng. Data 20 (1975) 97-105 (temperature scale of 1968).',
  uncertainty: '0.005 kg/m3 against IAPWS-95 up to 40 °C, 0.01 kg/m3 at 60 °C.',
  functions: {
    waterDensityKgPerM3: {
      formula:
        'rho = (999.83952 + 16.945176 t - 7.9870401e-3 t^2 - 46.170461e-6 t^3 + 105.56302e-9 t^4 - 280.54253e-12 t^5) / (1 + 16.87985e-3 t)',
      range: '0 to 100 °C; nothing outside.',
    },
  },
};
