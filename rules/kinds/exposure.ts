/**
 * `exposure`: too long beyond a limit within a span, all the times together.
 *
 * A band forgives every return; what ages, soaks or corrodes does not. The last reading holds
 * until the next one; a gap does not count.
 */
import { z } from 'zod/mini';
import type { EpochMs } from '../signal/sample.ts';
import type { RuleKind, Severity, Timer } from './kind.ts';
import { durationSetting, quantitySetting } from './settings.ts';
import {
  type SpanSum,
  spanBegin,
  spanForgetsAt,
  spanGap,
  spanHeldMs,
  spanSay,
  spanShift,
  spanTo,
} from './span-sum.ts';

export interface ExposureSettings {
  readonly limit: number;
  readonly side: 'low' | 'high';
  readonly forMs: number;
  readonly spanMs: number;
}

export interface ExposureMemory {
  readonly sum: SpanSum;
  abnormal: boolean;
  sinceMs: EpochMs | null;
  value: number | null;
  at: EpochMs | null;
}

function judge(
  settings: ExposureSettings,
  memory: ExposureMemory,
  now: EpochMs,
  timer: Timer,
): Severity {
  const { sum } = memory;
  const { forMs, spanMs } = settings;
  spanTo(sum, spanMs, now);
  const heldMs = spanHeldMs(sum);
  const abnormal = heldMs > forMs;
  if (abnormal !== memory.abnormal) memory.sinceMs = abnormal ? now : null;
  memory.abnormal = abnormal;
  if (abnormal) timer.at = spanForgetsAt(sum, spanMs);
  else timer.at = sum.since === null ? null : now + Math.floor(forMs - heldMs) + 1;
  return abnormal ? 1 : 0;
}

export const exposure: RuleKind<ExposureSettings, ExposureMemory> = {
  name: 'exposure',
  version: 1,
  summary: 'A value beyond a limit for too much of a span, all the times added up.',
  written: z.strictObject({
    low: z.optional(quantitySetting('Time below this counts.')),
    high: z.optional(quantitySetting('Time above this counts.')),
    for: durationSetting('Alarm once it adds up to this much.'),
    within: durationSetting('The span looked back over.'),
  }),
  compile(read) {
    const low = read.limit('low');
    const high = read.limit('high');
    if ((low === null) === (high === null))
      read.report({
        path: [],
        problem: 'an exposure is beyond one limit',
        fix: 'give either low or high; a second rule watches the other side',
      });
    const forMs = read.duration('for', Number.POSITIVE_INFINITY);
    const spanMs = read.duration('within', Number.POSITIVE_INFINITY);
    if (forMs >= spanMs)
      read.report({
        path: ['for'],
        problem: 'a span cannot hold so long a time',
        fix: 'make it shorter than within',
      });
    return { limit: low ?? high ?? 0, side: low === null ? 'high' : 'low', forMs, spanMs };
  },
  begin: ({ spanMs }, at) => ({
    sum: spanBegin(spanMs, at),
    abnormal: false,
    sinceMs: null,
    value: null,
    at: null,
  }),
  sample(settings, memory, reading, timer) {
    const { value, judged } = reading;
    const { limit, side, spanMs } = settings;
    spanSay(memory.sum, spanMs, side === 'high' ? value > limit : value < limit, judged);
    memory.value = value;
    memory.at = reading.at;
    return judge(settings, memory, judged, timer);
  },
  deadline: judge,
  gap(settings, memory, fromMs, toMs, timer) {
    spanGap(memory.sum, settings.spanMs, fromMs, toMs);
    // The answer stays; what it comes to is looked at right after.
    if (memory.abnormal || memory.sum.since !== null) timer.at = toMs + 1;
  },
  shift(memory, deltaMs) {
    spanShift(memory.sum, deltaMs);
    if (memory.sinceMs !== null) memory.sinceMs += deltaMs;
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence: (settings, memory) => ({
    limit: settings.limit,
    side: settings.side,
    reachedMs: Math.round(spanHeldMs(memory.sum)),
    requiredMs: settings.forMs,
    ...(memory.value === null ? {} : { value: memory.value }),
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(memory.sinceMs === null ? {} : { sinceMs: memory.sinceMs }),
  }),
  sentence: (evidence) =>
    evidence.side === 'low'
      ? '{$signal} was below {$limit} for {$reached} in all, more than {$required}.'
      : '{$signal} was above {$limit} for {$reached} in all, more than {$required}.',
};
