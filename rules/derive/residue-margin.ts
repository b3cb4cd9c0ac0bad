/**
 * How far a surface is from where residue of the thickness gauged on it may light itself.
 *
 * The limit is taken to hold for a layer; what lies thicker lowers it, by the least favourable
 * activation energy, and thinner residue never raises it (process/residue-ignition.ts).
 */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { loweredLimitC, provenThicknessMm } from '../process/residue-ignition.ts';
import { quality } from '../signal/quality.ts';
import type { SettledKind } from './derived-kind.ts';

export interface ResidueMarginSettings {
  readonly limitC: number;
}

export const residueMargin: SettledKind<ResidueMarginSettings> = {
  name: 'residue-margin',
  summary:
    'Kelvin left from a surface to where residue as thick as gauged on it may light itself; over 10 mm the limit is lowered, and uncertain; thinner residue keeps it.',
  inputs: [
    { name: 'surface', unit: 'Cel', meaning: 'temperature of the surface that gathers residue' },
    { name: 'thickness', unit: 'mm', meaning: 'thickness gauged on it' },
  ],
  unit: 'K',
  digits: 1,
  source: 'Frank-Kamenetskii, activation energy 70 kJ/mol',
  range: 'thickness up to 2 m, limit -20 to 400 °C',
  written: z.strictObject({
    limit: quantitySetting('Where it may light itself, thickness not counted.'),
  }),
  compile: (read) => ({ limitC: read.quantity('limit', 'Cel') ?? 0 }),
  settled(settings, now) {
    const thicknessMm = now.inputs[1]!;
    if (thicknessMm <= provenThicknessMm && thicknessMm >= 0)
      return settings.limitC - now.inputs[0]!;
    const lowered = loweredLimitC(settings.limitC, provenThicknessMm, thicknessMm);
    if (lowered === null) return null;
    now.doubt = quality.estimated;
    return lowered.limitC - now.inputs[0]!;
  },
};
