/**
 * What names say of a quantity, and the units in which such a quantity is sent, each with the range of
 * numbers it can show on a coating line. The ranges are wide on purpose and rest on common practice,
 * no published source: they only rule out what cannot be.
 */
export interface UnitRange {
  /** UCUM. */
  readonly unit: string;
  readonly least: number;
  readonly most: number;
}

export interface Quantity {
  readonly name: string;
  /** These words say what is measured. */
  readonly words: readonly string[];
  /** These say where it stands: by themselves they leave open what is measured there. */
  readonly places: readonly string[];
  readonly units: readonly UnitRange[];
}

const unit = (code: string, least: number, most: number): UnitRange => ({
  unit: code,
  least,
  most,
});

const quantity = (
  name: string,
  words: readonly string[],
  places: readonly string[],
  ...units: readonly UnitRange[]
): Quantity => ({ name, words, places, units });

export const temperature = 'temperature';
const temperatureWords = ['temp', 'temps', 'temperature', 'temperatures'];

export const quantities: readonly Quantity[] = [
  quantity(
    temperature,
    temperatureWords,
    ['air', 'wall', 'metal', 'surface', 'zone', 'zones', 'oven', 'room', 'mould', 'mold', 'bath'],
    unit('Cel', -60, 600),
    unit('[degF]', -76, 1_112),
    unit('K', 213, 873),
  ),
  quantity(
    'dew point',
    ['dewpoint', 'pdp', 'dew'],
    [],
    unit('Cel', -100, 60),
    unit('[degF]', -148, 140),
  ),
  // No room is as dry as 2 %: there it is a fraction.
  quantity('relative humidity', ['humidity', 'rh'], [], unit('%', 2, 105), unit('Pa/Pa', 0, 1.05)),
  quantity(
    'pressure drop',
    ['dp', 'differential'],
    ['separator'],
    unit('Pa', -1_000, 20_000),
    unit('mbar', -10, 200),
    unit('kPa', -1, 20),
    unit('bar', -0.1, 2),
    unit('[psi]', -1, 30),
    unit("[in_i'H2O]", -4, 80),
    unit('mm[H2O]', -100, 2_000),
  ),
  quantity(
    'pressure',
    ['pressure'],
    ['header', 'pot', 'atomising', 'atomizing', 'blast'],
    unit('bar', -1, 16),
    unit('[psi]', -15, 235),
    unit('kPa', -101, 1_600),
    unit('mbar', -1_013, 16_000),
    unit('MPa', -0.1, 1.6),
  ),
  quantity(
    'speed',
    ['speed'],
    ['agitator', 'shaft', 'stirrer', 'conveyor', 'hoist', 'withdrawal'],
    unit('/min', 0, 4_000),
    unit('Hz', 0, 100),
    unit('m/min', 0, 60),
    unit('m/s', 0, 30),
    unit('%', 0, 100),
  ),
  quantity(
    'air speed',
    ['velocity'],
    [],
    unit('m/s', 0, 30),
    unit('m/min', 0, 1_800),
    unit('[ft_i]/min', 0, 6_000),
  ),
  quantity(
    'flow',
    ['flow', 'airflow'],
    [],
    unit('L/min', 0, 5_000),
    unit('m3/h', 0, 100_000),
    unit('[gal_us]/min', 0, 1_300),
    unit('[cft_i]/min', 0, 60_000),
    unit('m/s', 0, 30),
  ),
  quantity(
    'conductivity',
    ['conductivity'],
    ['rinse', 'di'],
    unit('uS/cm', 0, 100_000),
    unit('mS/cm', 0, 100),
    unit('mS/m', 0, 10_000),
  ),
  quantity(
    'level',
    ['level'],
    ['weir'],
    unit('mm', -500, 5_000),
    unit('%', -5, 110),
    unit('cm', -50, 500),
    unit('m', -0.5, 5),
    unit('[in_i]', -20, 200),
  ),
  quantity(
    'thickness',
    ['thickness'],
    ['film'],
    unit('um', 0, 1_000),
    unit('mm', 0, 10),
    unit('[mil_i]', 0, 40),
  ),
  quantity('solids by mass', ['solids'], [], unit('%', 2, 100), unit('kg/kg', 0, 1)),
  quantity(
    'density',
    ['density'],
    [],
    unit('g/mL', 0.6, 2.5),
    unit('kg/m3', 600, 2_500),
    unit('[lb_av]/[gal_us]', 5, 20),
  ),
];

/**
 * Temperatures, narrowed by the place that a name gives; the first place that fits counts. Where people
 * work indoors it freezes in no scale and is no 46 Cel; a press warms up and cools down.
 */
export const temperaturesAt: readonly {
  readonly places: readonly string[];
  readonly units: readonly UnitRange[];
}[] = [
  {
    places: ['room', 'hall', 'booth', 'climate'],
    units: [unit('Cel', 0, 45), unit('[degF]', 33, 113), unit('K', 273, 318)],
  },
  {
    places: ['store', 'ambient', 'outside', 'racks'],
    units: [unit('Cel', -40, 45), unit('[degF]', -40, 113), unit('K', 233, 318)],
  },
  {
    places: ['mould', 'mold', 'platen', 'cavity'],
    units: [unit('Cel', 0, 260), unit('[degF]', 32, 500), unit('K', 273, 533)],
  },
  {
    places: ['oven', 'zone', 'zones', 'metal', 'surface', 'residue', 'duct', 'shroud'],
    units: [unit('Cel', -20, 400), unit('[degF]', -4, 752), unit('K', 253, 673)],
  },
  {
    places: ['bath', 'tank', 'drum', 'pipe', 'bin'],
    units: [unit('Cel', -20, 100), unit('[degF]', -4, 212), unit('K', 253, 373)],
  },
];

/** A unit as the last word of a name; `c` or `f` alone may be anything. */
export const unitWords: Readonly<Record<string, readonly [name: string, range: UnitRange]>> = {
  degc: [temperature, unit('Cel', -200, 1_800)],
  celsius: [temperature, unit('Cel', -200, 1_800)],
  degf: [temperature, unit('[degF]', -328, 3_272)],
  fahrenheit: [temperature, unit('[degF]', -328, 3_272)],
  bar: ['pressure', unit('bar', -1.1, 1_000)],
  mbar: ['pressure', unit('mbar', -1_100, 100_000)],
  psi: ['pressure', unit('[psi]', -16, 15_000)],
  kpa: ['pressure', unit('kPa', -110, 100_000)],
  pa: ['pressure', unit('Pa', -110_000, 10_000_000)],
  rpm: ['speed of rotation', unit('/min', -100_000, 100_000)],
  percent: ['ratio', unit('%', -200, 1_000)],
  pct: ['ratio', unit('%', -200, 1_000)],
  mm: ['length', unit('mm', -100_000, 100_000)],
  lpm: ['flow', unit('L/min', -100_000, 100_000)],
  mps: ['speed', unit('m/s', -100, 100)],
  ph: ['pH', unit('[pH]', -1, 15)],
};
