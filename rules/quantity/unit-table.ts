/**
 * The units the product takes: UCUM codes, one canonical code a dimension.
 *
 * A row is [code, times, over, zero]: canonical = (value - zero) * times / over. Two whole
 * numbers instead of one factor keep what is exact on paper exact here: 3 mbar is 0.3 kPa,
 * and 3 * 0.1 is not 0.3. Every row is compared to a full UCUM implementation in the tests.
 *
 * Where we read a code more narrowly than UCUM, on purpose:
 *   - `%` (a ratio) and `1` (a count, a state) are two dimensions, so that 50 % is never a limit of a count;
 *   - `{rpm}` is revolutions per minute, where UCUM sees an annotated 1;
 *   - `K`, `Cel` and `[degF]` annotated {difference} are temperature differences, canonical K.
 * Gauge and absolute pressure are no units: which of the two a signal carries is said where it is taken.
 */
export const dimensions = {
  temperature: { canonical: 'Cel', words: 'a temperature' },
  temperatureDifference: { canonical: 'K', words: 'a temperature difference' },
  temperatureRate: { canonical: 'K/min', words: 'a rate of temperature' },
  pressure: { canonical: 'kPa', words: 'a pressure' },
  length: { canonical: 'mm', words: 'a length' },
  area: { canonical: 'm2', words: 'an area' },
  volume: { canonical: 'L', words: 'a volume' },
  mass: { canonical: 'kg', words: 'a mass' },
  time: { canonical: 's', words: 'a time' },
  speed: { canonical: 'm/s', words: 'a speed' },
  acceleration: { canonical: 'm/s2', words: 'an acceleration' },
  frequency: { canonical: '/min', words: 'a rotation or count per time' },
  ratio: { canonical: '%', words: 'a ratio' },
  number: { canonical: '1', words: 'a bare number' },
  density: { canonical: 'kg/m3', words: 'a density' },
  areaMass: { canonical: 'g/m2', words: 'a mass per area' },
  volumeFlow: { canonical: 'L/min', words: 'a volume flow' },
  viscosity: { canonical: 'mPa.s', words: 'a dynamic viscosity' },
  kinematicViscosity: { canonical: 'mm2/s', words: 'a kinematic viscosity' },
  conductivity: { canonical: 'uS/cm', words: 'a conductivity' },
  voltage: { canonical: 'mV', words: 'a voltage' },
  current: { canonical: 'mA', words: 'a current' },
  resistance: { canonical: 'Ohm', words: 'a resistance' },
  force: { canonical: 'N', words: 'a force' },
  forcePerWidth: { canonical: 'N/mm', words: 'a force per width' },
  power: { canonical: 'W', words: 'a power' },
  acidity: { canonical: '[pH]', words: 'a pH' },
  temperatureTime: { canonical: 'K.h', words: 'a temperature difference over time' },
  heatTransfer: { canonical: 'W/(m2.K)', words: 'a heat transfer coefficient' },
  molarEnergy: { canonical: 'kJ/mol', words: 'an activation energy' },
} as const;

export type Dimension = keyof typeof dimensions;
export type UnitRow = readonly [code: string, times: number, over?: number, zero?: number];

// Exact by definition (NIST SP 811, Appendix B; UCUM takes the same).
const poundKg = 0.45359237;
const gravityMPerS2 = 9.80665;
const inchMm = 25.4;
const footM = 0.3048;
const mileM = 1609.344;
const poundForceN = poundKg * gravityMPerS2;
const gallonL = 3.785411784;
const cubicFootL = 28.316846592;
const squareFootM2 = 0.09290304;
/** Conventional columns as UCUM defines them: mercury 133.322 kPa a metre, water 9.80665. */
const mercuryKPaPerM = 133.322;
const waterKPaPerM = 9.80665;

// biome-ignore format: a table reads better dense
export const unitTable: Readonly<Record<Dimension, readonly UnitRow[]>> = {
  temperature: [['Cel', 1], ['K', 1, 1, 273.15], ['[degF]', 5, 9, 32], ['[degR]', 5, 9, 491.67]],
  temperatureDifference: [['K{difference}', 1], ['Cel{difference}', 1], ['[degF]{difference}', 5, 9]],
  temperatureRate: [['K/min', 1], ['K/h', 1, 60], ['K/s', 60]],
  pressure: [
    ['kPa', 1], ['Pa', 1, 1000], ['hPa', 1, 10], ['MPa', 1000], ['bar', 100], ['mbar', 1, 10],
    ['[psi]', poundForceN * 1000, inchMm * inchMm], ['atm', 101.325],
    ['mm[Hg]', mercuryKPaPerM, 1000], ["[in_i'Hg]", mercuryKPaPerM * inchMm, 1000],
    ['m[H2O]', waterKPaPerM], ['cm[H2O]', waterKPaPerM, 100], ['mm[H2O]', waterKPaPerM, 1000],
    ["[in_i'H2O]", waterKPaPerM * inchMm, 1000],
  ],
  length: [
    ['mm', 1], ['m', 1000], ['cm', 10], ['um', 1, 1000], ['nm', 1, 1e6], ['km', 1e6],
    ['[in_i]', inchMm], ['[ft_i]', footM * 1000], ['[mil_i]', inchMm, 1000],
    // The US survey mil is longer than [mil_i] by 2e-6 of itself; both are taken as what they say.
    ['[mil_us]', 100, 3937],
  ],
  area: [
    ['m2', 1], ['dm2', 1, 100], ['cm2', 1, 1e4], ['mm2', 1, 1e6],
    ['[sft_i]', squareFootM2], ['[sin_i]', squareFootM2, 144],
  ],
  volume: [
    ['L', 1], ['l', 1], ['mL', 1, 1000], ['ml', 1, 1000], ['cL', 1, 100], ['dL', 1, 10],
    ['m3', 1000], ['dm3', 1], ['cm3', 1, 1000],
    ['[gal_us]', gallonL], ['[gal_br]', 4.54609], ['[cft_i]', cubicFootL],
  ],
  mass: [
    ['kg', 1], ['g', 1, 1000], ['mg', 1, 1e6], ['t', 1000],
    ['[lb_av]', poundKg], ['[oz_av]', poundKg, 16],
  ],
  time: [
    ['s', 1], ['ms', 1, 1000], ['us', 1, 1e6], ['min', 60], ['h', 3600], ['d', 86400],
    ['wk', 604800],
  ],
  speed: [
    ['m/s', 1], ['m/min', 1, 60], ['m/h', 1, 3600], ['mm/h', 1, 3600000], ['cm/s', 1, 100], ['cm/min', 1, 6000],
    ['mm/s', 1, 1000], ['mm/min', 1, 60000], ['km/h', 1000, 3600],
    ['[ft_i]/s', footM], ['[ft_i]/min', footM, 60], ['[in_i]/s', inchMm, 1000],
    ['[in_i]/min', inchMm, 60000], ['[mi_i]/h', mileM, 3600],
  ],
  acceleration: [['m/s2', 1], ['mm/s2', 1, 1000], ['[g]', gravityMPerS2]],
  frequency: [
    ['/min', 1], ['1/min', 1], ['min-1', 1], ['{rpm}', 1], ['Hz', 60], ['kHz', 60000],
    ['/s', 60], ['1/s', 60], ['s-1', 60], ['/h', 1, 60], ['1/h', 1, 60], ['h-1', 1, 60],
  ],
  ratio: [
    ['%', 1], ['10*-2', 1], ['[ppth]', 1, 10], ['[ppm]', 1, 1e4], ['[ppb]', 1, 1e7],
    ['kg/kg', 100], ['g/g', 100], ['g/kg', 1, 10], ['mg/kg', 1, 1e4],
    ['L/L', 100], ['mL/L', 1, 10], ['mol/mol', 100],
    // A relative humidity published as a fraction: vapour pressure over saturation pressure.
    ['Pa/Pa', 100],
  ],
  number: [['1', 1]],
  density: [
    ['kg/m3', 1], ['g/mL', 1000], ['g/ml', 1000], ['g/cm3', 1000], ['kg/L', 1000],
    ['kg/l', 1000], ['kg/dm3', 1000], ['g/L', 1], ['g/l', 1], ['g/m3', 1, 1000],
    ['mg/L', 1, 1000], ['mg/l', 1, 1000], ['mg/m3', 1, 1e6], ['ug/m3', 1, 1e9],
    ['[lb_av]/[gal_us]', poundKg * 1000, gallonL], ['[lb_av]/[cft_i]', poundKg * 1000, cubicFootL],
  ],
  areaMass: [
    ['g/m2', 1], ['mg/m2', 1, 1000], ['kg/m2', 1000], ['mg/cm2', 10], ['mg/dm2', 1, 10],
    ['mg/[sft_i]', 1, squareFootM2 * 1000],
  ],
  volumeFlow: [
    ['L/min', 1], ['l/min', 1], ['L/s', 60], ['l/s', 60], ['L/h', 1, 60], ['l/h', 1, 60],
    ['mL/min', 1, 1000], ['ml/min', 1, 1000], ['m3/h', 1000, 60], ['m3/min', 1000],
    ['m3/s', 60000], ['[cft_i]/min', cubicFootL], ['[cft_i]/h', cubicFootL, 60],
    ['[gal_us]/min', gallonL], ['[gal_us]/h', gallonL, 60],
  ],
  viscosity: [['mPa.s', 1], ['Pa.s', 1000], ['cP', 1], ['P', 100]],
  kinematicViscosity: [['mm2/s', 1], ['m2/s', 1e6], ['cSt', 1], ['St', 100]],
  conductivity: [
    ['uS/cm', 1], ['mS/cm', 1000], ['S/cm', 1e6], ['S/m', 1e4], ['mS/m', 10], ['uS/m', 1, 100],
  ],
  voltage: [['mV', 1], ['V', 1000], ['kV', 1e6], ['uV', 1, 1000]],
  current: [['mA', 1], ['A', 1000], ['uA', 1, 1000]],
  resistance: [['Ohm', 1], ['mOhm', 1, 1000], ['kOhm', 1000], ['MOhm', 1e6]],
  force: [['N', 1], ['mN', 1, 1000], ['kN', 1000], ['[lbf_av]', poundForceN]],
  forcePerWidth: [
    ['N/mm', 1], ['mN/m', 1, 1e6], ['N/cm', 1, 10], ['N/m', 1, 1000], ['kN/m', 1],
    ['[lbf_av]/[in_i]', poundForceN, inchMm],
  ],
  power: [['W', 1], ['mW', 1, 1000], ['kW', 1000], ['[HP]', 550 * footM * poundForceN]],
  acidity: [['[pH]', 1]],
  temperatureTime: [['K.h', 1], ['K.min', 1, 60], ['K.d', 24]],
  heatTransfer: [['W/(m2.K)', 1], ['W/m2/K', 1], ['kW/(m2.K)', 1000]],
  molarEnergy: [['kJ/mol', 1], ['J/mol', 1, 1000]],
};
