/** How thick residue may have grown since the place was last cleaned: spraying time times a rate. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { residueDepositMm } from '../process/residue-growth.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';
import type { DerivedSettingsReader } from './settings-reader.ts';
import {
  type SumSince,
  sumBegin,
  sumGap,
  sumSaid,
  sumShift,
  sumStart,
  sumTo,
  toldEveryMs,
} from './sum-since.ts';

export interface GrowthSettings {
  readonly mmPerH: number;
  readonly cleaned: number;
}

const mmPerHOfMPerS = 3_600_000;

const depositSettings = ['sprayed', 'onto_parts', 'volume_solids', 'area'] as const;
const minPerH = 60;

/** As gauged here, else all that misses the parts, on one area. */
function growthOf(read: DerivedSettingsReader): number {
  if (read.has('rate')) return read.positive('rate', 'm/s') * mmPerHOfMPerS;
  const missing = depositSettings.find((key) => !read.has(key));
  if (missing !== undefined) {
    read.report({
      path: missing === 'sprayed' ? [] : [missing],
      problem: 'nothing says how fast residue grows here',
      fix: `give rate, or all of ${depositSettings.join(', ')}`,
    });
    return 1;
  }
  const mmPerH = residueDepositMm(
    read.positive('sprayed', 'L/min') * minPerH,
    1,
    (read.quantity('onto_parts', '%') ?? 0) / 100,
    read.positive('volume_solids', '%') / 100,
    read.positive('area', 'm2'),
  );
  if (mmPerH === null)
    read.report({
      path: ['sprayed'],
      problem: 'sprayed, onto_parts, volume_solids and area make no deposit',
      fix: 'look at their units: shares are 0 to 100 %',
    });
  return mmPerH ?? 1;
}

export const residueGrowth: KeepingKind<GrowthSettings, SumSince> = {
  name: 'residue-growth',
  summary:
    'Thickness that residue may have reached since cleaning, from hours of spraying and the rate gauged here, or all that misses the parts on one area; always an estimate, which no gauging by hand may wait for.',
  inputs: [
    { name: 'spraying', unit: '1', meaning: '1 while a gun sprays, else 0' },
    {
      name: 'cleaned',
      unit: '1',
      meaning: 'rises when the place was cleaned: 1 then, or a count of cleanings',
      optional: true,
    },
  ],
  unit: 'mm',
  digits: 2,
  source: 'mass balance; no published source',
  written: z.strictObject({
    rate: z.optional(
      quantitySetting(
        'Growth in an hour of spraying, as "0.07 mm/h": thickness at the last gauging over the hours sprayed before it.',
      ),
    ),
    sprayed: z.optional(
      quantitySetting('Where nobody gauged yet: what the guns spray, as "1 L/h".'),
    ),
    onto_parts: z.optional(quantitySetting('Share of it that lands on parts, as "50 %".')),
    volume_solids: z.optional(quantitySetting('Solids by volume of what is sprayed.')),
    area: z.optional(quantitySetting('Area that the rest lands on, as "2 m2".')),
  }),
  compile: (read) => ({ mmPerH: growthOf(read), cleaned: read.place('cleaned') }),
  version: 1,
  begin: () => sumBegin(true),
  step(settings, memory, now, timer) {
    sumTo(memory, now.at);
    if (settings.cleaned >= 0) sumStart(memory, now.inputs[settings.cleaned]!);
    memory.perH = now.inputs[0]! >= 1 ? settings.mmPerH : 0;
    if (memory.perH > 0) timer.at = now.at + toldEveryMs;
    now.doubt = memory.partial ? quality.unobserved : quality.estimated;
    return memory.sum;
  },
  start: (_, memory, at, now) => sumSaid(memory, at, now),
  gap: (_, memory, fromMs, toMs) => sumGap(memory, fromMs, toMs),
  shift: sumShift,
};
