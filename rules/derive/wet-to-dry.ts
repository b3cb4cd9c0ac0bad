/** What a wet film comes to once its water has gone. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { dryFromWetUm } from '../process/film.ts';
import type { SettledKind } from './derived-kind.ts';

interface WetToDrySettings {
  readonly volumeSolidsPct: number;
}

const umPerMm = 1_000;

export const wetToDry: SettledKind<WetToDrySettings> = {
  name: 'wet-to-dry',
  summary: 'Dry film that a wet film leaves, by its solids by volume.',
  inputs: [{ name: 'wet', unit: 'mm', meaning: 'wet film, gauged or worked out' }],
  unit: 'mm',
  saidIn: 'um',
  digits: 4,
  source: 'definition of solids by volume',
  range: 'wet film of 0 to 10 mm',
  written: z.strictObject({
    volume_solids: quantitySetting('Solids by volume of what is applied, never by mass.'),
  }),
  compile: (read) => ({ volumeSolidsPct: read.positive('volume_solids', '%') }),
  settled({ volumeSolidsPct }, { inputs }) {
    const dryUm = dryFromWetUm(inputs[0]! * umPerMm, volumeSolidsPct);
    return dryUm === null ? null : dryUm / umPerMm;
  },
};
