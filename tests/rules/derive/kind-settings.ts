/** One set of settings for every derived kind that has any, and readings it may meet. */
interface KindCase {
  readonly written: Readonly<Record<string, unknown>>;
  /** Of the first input, where the kind takes any. */
  readonly unit?: string;
  /** By input: least and most that a random reading has. */
  readonly readings: Readonly<Record<string, readonly [number, number]>>;
}

const anchor = {
  oven_solids: '35 %',
  oven_solids_u: '0.2 %',
  oven_density: '1.10 g/mL',
  oven_density_u: '0.0005 g/mL',
  oven_temperature: '20 Cel',
  density_u: '0.0005 g/mL',
};
const drum = { transfer: '8 W/(m2.K)', start: '15 Cel' };
const state = [0, 1] as const;

export const kindCases: Readonly<Record<string, KindCase>> = {
  'drum-bulk-temperature': {
    written: drum,
    readings: { air: [-70, 40], stirred: state, arrived: state },
  },
  'drum-time-to-floor': {
    written: { ...drum, floor: '5 Cel' },
    readings: { air: [-70, 40], arrived: state },
  },
  'freight-margin': {
    written: { ...drum, floor: '5 Cel' },
    readings: { coldest: [-70, 70], transit: [-100, 4_000_000] },
  },
  'drum-wall-temperature': { written: drum, readings: { air: [-70, 40], arrived: state } },
  'film-from-withdrawal': {
    written: { viscosity: '20 mPa.s', surface_tension: '30 mN/m', density: '1.1 g/mL' },
    readings: { withdrawal: [0, 0.1] },
  },
  'film-over-base': {
    written: { gauge_u: '1 um' },
    readings: { gauge: [-1, 12], base: [-1, 12] },
  },
  'filter-share': { written: { clean: '125 Pa' }, readings: { drop: [-1, 10] } },
  'flow-share': { written: { normal: '12 /min' }, unit: '/min', readings: { flow: [-1, 50] } },
  'residue-margin': {
    written: { limit: '112 Cel' },
    readings: { surface: [-20, 200], thickness: [-1, 3_000] },
  },
  'degree-hours': {
    written: { above: '25 Cel', span: '2 min' },
    readings: { temperature: [-20, 60] },
  },
  'heat-dose': {
    written: { reference: '120 Cel', activation_energy: '90 kJ/mol' },
    readings: { temperature: [-120, 520], loaded: state },
  },
  'rack-dose': {
    written: { reference: '120 Cel', z_value: '30 K' },
    readings: { temperature: [-120, 520], loaded: state },
  },
  'mean-kinetic-temperature': {
    written: { span: '2 min' },
    readings: { temperature: [-5, 60] },
  },
  'moving-average': { written: { span: '30 s' }, unit: 'm/s', readings: { signal: [-5, 60] } },
  'part-temperature': {
    written: {
      time_constant: '1 min',
      entry: '20 Cel',
      evaporation: '60 K',
      wet_at: '45 Cel',
    },
    readings: { air: [-120, 300], loaded: state },
  },
  rate: { written: { span: '1 min' }, unit: 'Cel', readings: { signal: [-5, 60] } },
  'residue-growth': {
    written: { rate: '0.07 mm/h' },
    readings: { spraying: state, cleaned: [0, 3] },
  },
  runtime: {
    written: { above: '5 /min' },
    unit: '/min',
    readings: { signal: [0, 30], start: [0, 3] },
  },
  solids: { written: anchor, readings: { density: [850, 1_700], temperature: [0, 50] } },
  'solids-margin': {
    written: { ...anchor, target: '35 %', allowed: '1 %' },
    readings: { density: [850, 1_700], temperature: [0, 50] },
  },
  'time-above': {
    written: { above: '100 Cel' },
    readings: { temperature: [20, 180], loaded: state },
  },
  'tip-speed': { written: { blade_diameter: '0.4 m' }, readings: { speed: [-1, 60] } },
  turnover: {
    written: { stroke_volume: '0.5 L', tank_volume: '300 L' },
    readings: { strokes: [-1, 40], start: [0, 3] },
  },
  'wet-to-dry': { written: { volume_solids: '29 %' }, readings: { wet: [-1, 12] } },
};
