/**
 * What to write instead of a unit we do not take: for error messages, never for guessing a reading's unit.
 */
import { unitCodes, unitOf } from './unit.ts';

/** What people write, folded as `fold` does, and the UCUM codes they mean. */
const meant: Readonly<Record<string, readonly string[]>> = {
  c: ['Cel'],
  degc: ['Cel'],
  celsius: ['Cel'],
  centigrade: ['Cel'],
  f: ['[degF]'],
  degf: ['[degF]'],
  fahrenheit: ['[degF]'],
  degk: ['K'],
  kelvin: ['K'],
  psi: ['[psi]'],
  psig: ['[psi]'],
  psia: ['[psi]'],
  barg: ['bar'],
  bara: ['bar'],
  'bar(g)': ['bar'],
  'bar(a)': ['bar'],
  mmhg: ['mm[Hg]'],
  inhg: ["[in_i'Hg]"],
  mmh2o: ['mm[H2O]'],
  mmwc: ['mm[H2O]'],
  inh2o: ["[in_i'H2O]"],
  inwc: ["[in_i'H2O]"],
  rpm: ['/min', '{rpm}'],
  'r/min': ['/min', '{rpm}'],
  'rev/min': ['/min', '{rpm}'],
  'u/min': ['/min', '{rpm}'],
  permin: ['/min'],
  hertz: ['Hz'],
  mil: ['[mil_i]'],
  mils: ['[mil_i]'],
  thou: ['[mil_i]'],
  micron: ['um'],
  microns: ['um'],
  micrometer: ['um'],
  micrometre: ['um'],
  in: ['[in_i]'],
  inch: ['[in_i]'],
  ft: ['[ft_i]'],
  foot: ['[ft_i]'],
  fpm: ['[ft_i]/min'],
  'ft/min': ['[ft_i]/min'],
  mph: ['[mi_i]/h'],
  kph: ['km/h'],
  kmh: ['km/h'],
  percent: ['%'],
  pct: ['%'],
  '%rh': ['%', '%{RH}'],
  rh: ['%', '%{RH}'],
  '[rh]': ['%', '%{RH}'],
  ppm: ['[ppm]'],
  ppb: ['[ppb]'],
  fraction: ['Pa/Pa', 'kg/kg'],
  kgm3: ['kg/m3'],
  'kg/m^3': ['kg/m3'],
  'g/cc': ['g/cm3'],
  sg: ['g/mL'],
  lpm: ['L/min'],
  slpm: ['L/min'],
  cfm: ['[cft_i]/min'],
  scfm: ['[cft_i]/min'],
  gpm: ['[gal_us]/min'],
  'm^3/h': ['m3/h'],
  liter: ['L'],
  litre: ['L'],
  gal: ['[gal_us]', '[gal_br]'],
  cps: ['mPa.s', 'cP'],
  centipoise: ['mPa.s', 'cP'],
  mpas: ['mPa.s'],
  'us/cm2': ['uS/cm'],
  ohms: ['Ohm'],
  ω: ['Ohm'],
  volt: ['V'],
  volts: ['V'],
  amp: ['A'],
  amps: ['A'],
  lb: ['[lb_av]'],
  lbs: ['[lb_av]'],
  oz: ['[oz_av]'],
  lbf: ['[lbf_av]'],
  'lbf/in': ['[lbf_av]/[in_i]'],
  pli: ['[lbf_av]/[in_i]'],
  hp: ['[HP]'],
  ph: ['[pH]'],
  sec: ['s'],
  secs: ['s'],
  seconds: ['s'],
  mins: ['min'],
  minutes: ['min'],
  hr: ['h'],
  hrs: ['h'],
  hours: ['h'],
  day: ['d'],
  days: ['d'],
  count: ['1'],
  none: ['1'],
};

/** Said of a pressure written with its reference. */
const gaugeNote = '; gauge or absolute is no part of the unit';

/** The codes meant, likeliest first; empty where we cannot tell. Each one is a code we take. */
export function suggestedCodes(code: string): readonly string[] {
  const folded = fold(code);
  const known = Object.hasOwn(meant, folded) ? meant[folded] : undefined;
  if (known !== undefined) return known;
  if (folded !== code && unitOf(folded) !== null) return [folded];
  const sameButCase = unitCodes.filter((candidate) => fold(candidate) === folded);
  return sameButCase.slice(0, 3);
}

/** What to write instead, as a clause: `write "/min" or "{rpm}"`. */
export function unitFix(code: string): string {
  const codes = suggestedCodes(code);
  if (codes.length === 0) return 'write a UCUM code, such as Cel, %, bar, mm, m/s, /min or kg/m3';
  const either = codes.map((suggested) => JSON.stringify(suggested)).join(' or ');
  return `write ${either}${/^(bar|psi)\(?[ga]\)?$/.test(fold(code)) ? gaugeNote : ''}`;
}

/** Small letters, no spaces, no degree sign; raised and Greek letters as UCUM writes them. */
function fold(code: string): string {
  return code
    .trim()
    .toLowerCase()
    .replace(/[\s°º]/g, '')
    .replace(/[µμ]/g, 'u')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[·⋅*]/g, '.')
    .replace(/℃/g, 'c')
    .replace(/℉/g, 'f')
    .replace(/⁻¹/g, '-1');
}
