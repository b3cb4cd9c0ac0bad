import type { Sourced } from './sourced.ts';

const processTests =
  'published self-heating tests of an open process library (inputs and formulas); figures computed';

/** Activation energy, W/m3 and W/(m K) of the rows below. */
export const publishedKinetics = { activationJPerMol: 110_000, heatReleaseWPerM3: 5e13, conductivityWPerMK: 0.09 };

export const deltaRow = {
  halfSizeM: 0.05, kelvin: 430, delta: 4.3171807e-3, ratioToSlab: 4.91706e-3, toleranceShare: 1e-7,
  source: processTests, flag: 'calc',
} as const satisfies Sourced & Record<string, unknown>;

export interface IgnitionRow extends Sourced {
  readonly shape: 'slab' | 'cylinder' | 'sphere' | 'cube' | 'equicylinder';
  readonly halfSizeM: number;
  readonly kelvin: number;
  readonly toleranceK: number;
}
const ignition = (shape: IgnitionRow['shape'], kelvin: number): IgnitionRow => ({
  shape, halfSizeM: 0.05, kelvin, toleranceK: 1e-3, source: processTests, flag: 'calc',
});
export const ignitionRows: readonly IgnitionRow[] = [
  ignition('slab', 528.3451),
  ignition('cylinder', 547.9553),
  ignition('sphere', 560.8196),
  ignition('cube', 553.7372),
  ignition('equicylinder', 556.0483),
];

export const halfSizeRows = [
  { kelvin: 420, halfSizeM: 1.0045475, source: processTests, flag: 'calc' },
  { kelvin: 430, halfSizeM: 0.7130453, source: processTests, flag: 'calc' },
  { kelvin: 453.15, halfSizeM: 0.3424343, source: processTests, flag: 'calc' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];

/** Critical values as printed, and as solving the equation gives them. */
export const criticalValues = [
  { shape: 'slab', used: 0.878, published: 0.88, computed: 0.87845768, source: 'a review of thermal explosion (0.88, 2, 3.32); computed by finite differences', flag: 'seen' },
  { shape: 'cylinder', used: 2, published: 2, computed: 2, source: 'a review of thermal explosion (0.88, 2, 3.32); computed by finite differences', flag: 'seen' },
  { shape: 'sphere', used: 3.322, published: 3.32, computed: 3.321992118, source: 'a review of thermal explosion (0.88, 2, 3.32); computed by finite differences', flag: 'seen' },
  { shape: 'cube', used: 2.52, published: 2.52, computed: 2.47504, source: 'Bowes 1984 as used by an open process library; computed by finite differences', flag: 'seen' },
  { shape: 'equicylinder', used: 2.76, published: 2.76, computed: 2.765795, source: 'Bowes 1984 as used by an open process library; computed by finite differences', flag: 'seen' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];

/** Cubes of two sides in mm, one known and one that follows. */
export const scalingRows = [
  { name: '10 cm cube to 3 m', knownC: 140, knownMm: 100, wantedMm: 3_000, activationJPerMol: 77_000, ignitionC: 37.76, toleranceK: 0.01, source: 'computed from the published case', flag: 'calc' },
  { name: '10 cm cube to 3 m, as published', knownC: 140, knownMm: 100, wantedMm: 3_000, activationJPerMol: 77_000, ignitionC: 38, toleranceK: 0.5, source: 'a paper on shipping tests of coals and carbons', flag: 'seen' },
  { name: 'the energy behind it, backwards', knownC: 139.85, knownMm: 100, wantedMm: 3_000, activationJPerMol: 77_160, ignitionC: 37.85, toleranceK: 0.05, source: 'a paper on shipping tests of coals and carbons', flag: 'seen' },
  { name: 'UN test N.4: 27 m3 at 50 °C is 100 mm at 140 °C', knownC: 140, knownMm: 100, wantedMm: 3_000, activationJPerMol: 89_960, ignitionC: 50, toleranceK: 0.05, source: 'UN Manual of Tests and Criteria 33.4.6, from memory', flag: 'memory' },
  { name: '3 m3 at 50 °C', knownC: 50, knownMm: 1_442.25, wantedMm: 100, activationJPerMol: 89_960, ignitionC: 116.46, toleranceK: 0.05, source: 'computed with the energy of UN test N.4; its rule is 120 °C (CLP, annex I, 2.11.2)', flag: 'calc' },
  { name: '450 L at 50 °C', knownC: 50, knownMm: 766.31, wantedMm: 100, activationJPerMol: 89_960, ignitionC: 98.27, toleranceK: 0.05, source: 'computed with the energy of UN test N.4; its rule is 100 °C (CLP, annex I, 2.11.2)', flag: 'calc' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];

/** 112 °C taken as true for 10 mm, E 70 to 150 kJ/mol. */
export const loweringRows = [
  { thicknessMm: 1, lowC: 156, highC: 230, source: 'engineering judgement of the trade; scaling computed', flag: 'calc' },
  { thicknessMm: 50, lowC: 59, highC: 86, source: 'engineering judgement of the trade; scaling computed', flag: 'calc' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];
