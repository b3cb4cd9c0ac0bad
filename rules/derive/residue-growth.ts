/** How thick residue may have grown since the place was last cleaned: spraying time times a rate. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';
import {
  type SumSince,
  sumBegin,
  sumGap,
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

export const residueGrowth: KeepingKind<GrowthSettings, SumSince> = {
  name: 'residue-growth',
  summary:
    'Thickness that residue may have reached since cleaning, from hours of spraying and the rate gauged here; always an estimate, which no gauging by hand may wait for.',
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
  source: 'spraying hours times the rate between two gaugings by hand; no published source',
  written: z.strictObject({
    rate: quantitySetting(
      'Growth in an hour of spraying, as "0.07 mm/h": thickness at the last gauging over the hours sprayed before it.',
    ),
  }),
  compile: (read) => ({
    mmPerH: read.positive('rate', 'm/s') * mmPerHOfMPerS,
    cleaned: read.place('cleaned'),
  }),
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
  gap: (_, memory, fromMs, toMs) => sumGap(memory, fromMs, toMs),
  shift: sumShift,
};
