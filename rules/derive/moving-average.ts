/** The mean of a signal over a span that moves along: an airflow that flutters, judged on its average. */
import { z } from 'zod/mini';
import { durationSetting } from '../kinds/settings.ts';
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
  spanMean,
} from './span-mean.ts';
import { compileSpan } from './span-setting.ts';

export const movingAverage: KeepingKind<Span, SpanMean> = {
  name: 'moving-average',
  summary:
    'Mean of the signal over a span that moves along, each reading weighed by how long it held.',
  inputs: [{ name: 'signal', unit: 'any', meaning: 'what is averaged' }],
  unit: 'any',
  digits: 2,
  result: ({ unit, digits }) => ({ unit, digits }),
  source: 'definition',
  written: z.strictObject({ span: durationSetting('How long it looks back.') }),
  compile: (read) => compileSpan(read, 64),
  version: 1,
  begin: meanBegin,
  step(span, memory, now, timer) {
    meanSay(memory, span, now.inputs[0]!, now.at);
    if (!halfSeen(memory, span)) now.doubt = quality.unobserved;
    const mean = spanMean(memory);
    // A reading that only comes when it changes: the mean still goes towards it.
    if (mean !== memory.held) timer.at = Math.ceil(memory.endsAt);
    return mean;
  },
  gap: (span, memory, fromMs, toMs) => meanGap(memory, span, fromMs, toMs),
  shift: meanShift,
};
