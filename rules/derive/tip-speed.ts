/** How fast the tip of a blade moves: what shears and foams is the tip, not the turns. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import type { SettledKind } from './derived-kind.ts';

interface TipSettings {
  readonly diameterM: number;
}

export const tipSpeed: SettledKind<TipSettings> = {
  name: 'tip-speed',
  summary: 'Speed of the blade’s tip, from the turns of the shaft and the diameter of the blade.',
  inputs: [{ name: 'speed', unit: '/min', meaning: 'turns of the shaft, not of the motor' }],
  unit: 'm/s',
  digits: 2,
  source: 'geometry: pi times diameter times turns',
  range: '0 to 100,000 turns a minute',
  written: z.strictObject({
    blade_diameter: quantitySetting('Diameter of the circle that the blade’s tips draw.'),
  }),
  compile: (read) => ({ diameterM: read.positive('blade_diameter', 'mm') / 1_000 }),
  settled({ diameterM }, { inputs }) {
    const turnsPerMin = inputs[0]!;
    const covered = turnsPerMin >= 0 && turnsPerMin <= 100_000;
    return covered ? (Math.PI * diameterM * turnsPerMin) / 60 : null;
  },
};
