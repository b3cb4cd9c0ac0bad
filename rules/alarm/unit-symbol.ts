/** How a canonical unit is printed for people; UCUM codes are for files. */
const symbols: Readonly<Record<string, string>> = {
  Cel: '°C',
  K: 'K',
  'K/min': 'K/min',
  '/min': '/min',
  '1': '',
  kPa: 'kPa',
  'kg/m3': 'kg/m³',
  'g/m2': 'g/m²',
  m2: 'm²',
  'm/s2': 'm/s²',
  'mm2/s': 'mm²/s',
  'mPa.s': 'mPa·s',
  'uS/cm': 'µS/cm',
  Ohm: 'Ω',
  '[pH]': 'pH',
  'K.h': 'K·h',
  'W/(m2.K)': 'W/(m²·K)',
};

export const unitSymbol = (code: string): string => symbols[code] ?? code;
