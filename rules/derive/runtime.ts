/** How long something has run since it was last started anew: a mixer since the container was changed. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';
import {
  type SumSince,
  sumBegin,
  sumGap,
  sumSaid,
  sumShift,
  sumStart,
  sumTo,
  toldEveryMs,
  wholeMinutesS,
} from './sum-since.ts';

export interface RuntimeSettings {
  readonly above: number;
  readonly below: number;
  /** Place of the input that starts it anew; -1 without one. */
  readonly start: number;
  /** Something starts it anew. */
  readonly awaited: boolean;
}

export const runtime: KeepingKind<RuntimeSettings, SumSince> = {
  name: 'runtime',
  summary:
    'Time the signal was at or above a bound, added up since another signal last rose; whole minutes.',
  inputs: [
    { name: 'signal', unit: 'any', meaning: 'what tells that it runs: a speed, a state, a flow' },
    {
      name: 'start',
      unit: '1',
      meaning: 'rises when it starts anew: 1 when a container was changed, or a count of changes',
      optional: true,
    },
  ],
  unit: 's',
  digits: 0,
  source: 'definition',
  written: z.strictObject({
    above: quantitySetting('Time at or above this counts.'),
    below: z.optional(quantitySetting('Time above this does not count.')),
  }),
  compile(read) {
    const above = read.limit('above') ?? Number.NEGATIVE_INFINITY;
    const below = read.limit('below') ?? Number.POSITIVE_INFINITY;
    if (below < above)
      read.report({
        path: ['below'],
        problem: 'it lies below above',
        fix: 'write the higher bound here',
      });
    const start = read.place('start');
    return { above, below, start, awaited: start >= 0 || read.marked };
  },
  version: 1,
  begin: ({ awaited }) => sumBegin(awaited),
  step(settings, memory, now, timer) {
    sumTo(memory, now.at);
    if (settings.start >= 0) sumStart(memory, now.inputs[settings.start]!);
    const value = now.inputs[0]!;
    const runs = value >= settings.above && value <= settings.below;
    memory.perH = runs ? 1 : 0;
    if (runs) timer.at = now.at + toldEveryMs;
    if (memory.partial) now.doubt = quality.unobserved;
    return wholeMinutesS(memory.sum);
  },
  start: (_, memory, at, now) => sumSaid(memory, at, now),
  gap: (_, memory, fromMs, toMs) => sumGap(memory, fromMs, toMs),
  shift: sumShift,
};
