/** The oven test a lot's density curve hangs on, as the site writes it, and a reading held against it. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { type SolidsAnchor, type SolidsAnswer, solidsFromDensity } from '../process/solids.ts';
import type { DerivedInput } from './derived-kind.ts';
import type { DerivedSettingsReader } from './settings-reader.ts';

export interface AnchorSettings {
  readonly anchor: SolidsAnchor;
  readonly densityUGPerMl: number;
  readonly temperatureUK: number;
}

const kgPerM3PerGPerMl = 1_000;

export const anchorInputs: readonly DerivedInput[] = [
  {
    name: 'density',
    unit: 'kg/m3',
    meaning: 'density of a sample without foam, stirred, corrected to its temperature',
  },
  { name: 'temperature', unit: 'Cel', meaning: 'temperature of that sample, 5 to 45 °C' },
];

/** Every u is a standard uncertainty: half of what covers 95 %. */
export const anchorWritten = {
  oven_solids: quantitySetting('Solids by mass of this lot, by oven (ISO 3251 or ASTM D2369).'),
  oven_solids_u: quantitySetting('Standard uncertainty of that oven test.'),
  oven_density: quantitySetting('Density of the same sample.'),
  oven_density_u: quantitySetting('Standard uncertainty of that density.'),
  oven_temperature: quantitySetting('Temperature at which that density was read.'),
  density_u: quantitySetting('Standard uncertainty of the density read in the tank.'),
  temperature_u: z.optional(
    quantitySetting('Standard uncertainty of the thermometer; 0.3 K unless given.'),
  ),
} as const;

const temperatureUK = 0.3;

export const compileAnchor = (read: DerivedSettingsReader): AnchorSettings => ({
  anchor: {
    ovenSolidsPct: read.positive('oven_solids', '%'),
    ovenSolidsUPct: read.positive('oven_solids_u', '%'),
    densityGPerMl: read.positive('oven_density', 'kg/m3') / kgPerM3PerGPerMl,
    densityUGPerMl: read.positive('oven_density_u', 'kg/m3') / kgPerM3PerGPerMl,
    temperatureC: read.quantity('oven_temperature', 'Cel') ?? 0,
  },
  densityUGPerMl: read.positive('density_u', 'kg/m3') / kgPerM3PerGPerMl,
  temperatureUK: read.quantity('temperature_u', 'K') ?? temperatureUK,
});

/** Inputs as `anchorInputs`: kg/m3 and °C. */
export const readAgainst = (
  { anchor, densityUGPerMl, temperatureUK: uK }: AnchorSettings,
  inputs: ArrayLike<number>,
): SolidsAnswer =>
  solidsFromDensity(anchor, {
    densityGPerMl: inputs[0]! / kgPerM3PerGPerMl,
    densityUGPerMl,
    temperatureC: inputs[1]!,
    temperatureUK: uK,
  });

export const anchorSource = 'ideal mixing, anchored per lot to ISO 3251 or ASTM D2369; JCGM 100';
export const anchorRange =
  '0.9 to 1.6 g/mL, 5 to 45 °C, between water and the solids of this lot; of foam it knows nothing';
