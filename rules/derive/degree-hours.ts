/** How far and how long a store was too warm or too cold, over a span that moves along. */
import { z } from 'zod/mini';
import { durationSetting, quantitySetting } from '../kinds/settings.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';
import {
  halfSeen,
  meanBegin,
  meanGap,
  meanSay,
  meanShift,
  type Span,
  type SpanMean,
  spanSum,
} from './span-mean.ts';
import { compileSpan } from './span-setting.ts';

export interface DegreeHoursSettings extends Span {
  readonly limitC: number;
  readonly side: 'above' | 'below';
}

const msPerH = 3_600_000;

export const degreeHours: KeepingKind<DegreeHoursSettings, SpanMean> = {
  name: 'degree-hours',
  summary:
    'Kelvin beyond a temperature times hours, added up over a span that moves along; to compare stores and seasons, never a shelf life.',
  inputs: [{ name: 'temperature', unit: 'Cel', meaning: 'temperature of the store' }],
  unit: 'K.h',
  digits: 1,
  source: 'definition',
  written: z.strictObject({
    above: z.optional(quantitySetting('Kelvin above this count.')),
    below: z.optional(quantitySetting('Kelvin below this count.')),
    span: durationSetting('How long it looks back.'),
  }),
  compile(read) {
    const above = read.limit('above');
    const below = read.limit('below');
    if ((above === null) === (below === null))
      read.report({
        path: [],
        problem: 'degree-hours count beyond one temperature',
        fix: 'give either above or below; a second signal counts the other',
      });
    return {
      ...compileSpan(read, 64),
      limitC: above ?? below ?? 0,
      side: above === null ? 'below' : 'above',
    };
  },
  version: 1,
  everyMs: 60_000,
  begin: meanBegin,
  step(settings, memory, now, timer) {
    const aboveK = now.inputs[0]! - settings.limitC;
    meanSay(memory, settings, Math.max(0, settings.side === 'above' ? aboveK : -aboveK), now.at);
    if (!halfSeen(memory, settings)) now.doubt = quality.unobserved;
    const sum = spanSum(memory);
    if (sum > 0) timer.at = Math.ceil(memory.endsAt);
    return sum / msPerH;
  },
  gap: (settings, memory, fromMs, toMs) => meanGap(memory, settings, fromMs, toMs),
  shift: meanShift,
};
