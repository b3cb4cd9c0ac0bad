/** How long a part was at or above a temperature since its load came in. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { msAtOrAbove } from '../process/heat-dose.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';
import { type LoadClock, loadBegin, loadGap, loadReads, loadShift } from './load-clock.ts';

export interface TimeAboveSettings {
  readonly limitC: number;
  readonly loaded: number;
}

export interface TimeAboveMemory extends LoadClock {
  ms: number;
}

export const timeAbove: KeepingKind<TimeAboveSettings, TimeAboveMemory> = {
  name: 'time-above',
  summary:
    'Time at or above a temperature since the load came in; stands when it has left, until the next one. Between readings the temperature runs straight.',
  inputs: [
    { name: 'temperature', unit: 'Cel', meaning: 'temperature of the metal, not of the air' },
    {
      name: 'loaded',
      unit: '1',
      meaning: '1 while a load is inside, else 0',
      optional: true,
    },
  ],
  unit: 's',
  digits: 0,
  source: 'definition',
  written: z.strictObject({ above: quantitySetting('Time at or above this counts.') }),
  compile: (read) => ({ limitC: read.limit('above') ?? 0, loaded: read.place('loaded') }),
  version: 1,
  begin: ({ loaded }) => ({ ...loadBegin(loaded >= 0), ms: 0 }),
  step(settings, memory, now) {
    const value = now.inputs[0]!;
    const loaded = settings.loaded < 0 ? null : now.inputs[settings.loaded]! >= 1;
    const { fresh, since, from } = loadReads(memory, now.at, value, loaded);
    if (fresh) memory.ms = 0;
    if (since !== null) memory.ms += msAtOrAbove(since, from, now.at, value, settings.limitC);
    if (memory.partial) now.doubt = quality.unobserved;
    return memory.ms / 1_000;
  },
  gap(settings, memory, fromMs, toMs) {
    const counts = memory.at !== null && memory.loaded !== false;
    if (counts && memory.value >= settings.limitC) memory.ms += Math.max(0, fromMs - memory.at!);
    loadGap(memory, toMs);
  },
  shift: loadShift,
};
