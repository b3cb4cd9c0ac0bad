/** How fast a signal rises or falls: the median slope over a span, which one wild reading does not move. */
import { z } from 'zod/mini';
import { durationSetting } from '../kinds/settings.ts';
import { confidenceZ, type SenSlope, senSlope } from '../process/trend.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind, ResultOf } from './derived-kind.ts';
import {
  halfSeen,
  meanBegin,
  meanGap,
  meanSay,
  meanShift,
  type Span,
  type SpanMean,
} from './span-mean.ts';
import { compileSpan } from './span-setting.ts';

const slices = 16;
const msPerMin = 60_000;
const pointsLeast = 3;

interface RateOf extends ResultOf {
  /** Units of the result in one unit of the signal a minute. */
  readonly times: number;
}

/** What rate a quantity has; one that is not here has none with a unit of its own. */
const rates: Readonly<Record<string, RateOf>> = {
  Cel: { unit: 'K/min', digits: 2, times: 1 },
  K: { unit: 'K/min', digits: 2, times: 1 },
  L: { unit: 'L/min', digits: 2, times: 1 },
  '1': { unit: '/min', digits: 2, times: 1 },
  mm: { unit: 'm/s', saidIn: 'mm/h', digits: 7, times: 1 / 60_000 },
};

interface RateSettings extends Span {
  readonly times: number;
}

const times = new Float64Array(slices + 1);
const values = new Float64Array(slices + 1);
const sen: SenSlope = { slope: 0, low: 0, high: 0 };

/** Slope of the slices' means, units a minute; null where too few were seen. */
function slopePerMin({ spanMs }: Span, memory: SpanMean): number | null {
  const sliceMin = spanMs / slices / msPerMin;
  let points = 0;
  for (const [i, seenMs] of memory.seen.entries()) {
    if (seenMs <= 0) continue;
    times[points] = i * sliceMin;
    values[points] = memory.sums[i]! / seenMs;
    points += 1;
  }
  if (points < pointsLeast) return null;
  return senSlope(times, values, points, confidenceZ.p95, sen)?.slope ?? null;
}

export const rate: KeepingKind<RateSettings, SpanMean> = {
  name: 'rate',
  summary:
    'Median slope of the signal over a span that moves along (Theil–Sen, of its sixteen means); a temperature in K/min.',
  inputs: [{ name: 'signal', unit: 'any', meaning: 'a temperature, a level, a volume or a count' }],
  unit: 'any',
  digits: 2,
  result: ({ unit }) => rates[unit] ?? null,
  source: 'Sen 1968',
  written: z.strictObject({ span: durationSetting('How long it looks back.') }),
  compile: (read) => ({ ...compileSpan(read, slices), times: rates[read.unit]?.times ?? 1 }),
  version: 1,
  begin: meanBegin,
  step(settings, memory, now, timer) {
    meanSay(memory, settings, now.inputs[0]!, now.at);
    if (!halfSeen(memory, settings)) now.doubt = quality.unobserved;
    const slope = slopePerMin(settings, memory);
    // A reading that only comes when it changes: that nothing comes is news too.
    timer.at = Math.ceil(memory.endsAt);
    if (slope === null) now.doubt = quality.tooEarly;
    return slope === null ? null : slope * settings.times;
  },
  gap: (settings, memory, fromMs, toMs) => meanGap(memory, settings, fromMs, toMs),
  shift: meanShift,
};
