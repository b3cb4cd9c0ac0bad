/** A reading as a share of what it is when all is well: of a clean filter, of a free line. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import type { SettledKind } from './derived-kind.ts';

interface ShareSettings {
  readonly whole: number;
}

const share = (
  name: string,
  summary: string,
  input: SettledKind['inputs'][number],
  setting: string,
  description: string,
): SettledKind<ShareSettings> => ({
  name,
  summary,
  inputs: [input],
  unit: '%',
  digits: 0,
  source: 'definition',
  range: '0 to 100 times the whole',
  written: z.strictObject({ [setting]: quantitySetting(description) }),
  compile: (read) => ({ whole: read.positive(setting, read.unit) }),
  settled({ whole }, { inputs }) {
    const part = inputs[0]! / whole;
    return part >= 0 && part <= 100 ? 100 * part : null;
  },
});

export const filterShare = share(
  'filter-share',
  'Pressure drop as a share of what it was across the clean filter: far above 100 % it is loaded, below 50 % torn or missing.',
  { name: 'drop', unit: 'kPa', meaning: 'pressure drop across the filter, fan or pump running' },
  'clean',
  'Pressure drop across the clean filter at normal flow.',
);

export const flowShare = share(
  'flow-share',
  'Flow, strokes or pressure drop as a share of what it is in normal production.',
  {
    name: 'flow',
    unit: 'any',
    meaning: 'what tells the flow: the flow itself, strokes of the pump, a pressure drop',
  },
  'normal',
  'What it reads in normal production.',
);
