/**
 * `duty`: what must run so long within a span has not.
 *
 * Nothing is said before it was watched for a whole span. Time nobody saw counts neither as run nor
 * as rest: the span is one of time that was seen.
 */
import { z } from 'zod/mini';
import type { EpochMs } from '../signal/sample.ts';
import type { RuleKind, Severity, Timer } from './kind.ts';
import { durationSetting, quantitySetting } from './settings.ts';
import {
  type SpanSum,
  spanBegin,
  spanForgetsAt,
  spanHeldMs,
  spanSay,
  spanShift,
  spanTo,
} from './span-sum.ts';

export interface DutySettings {
  /** It runs at or above this. */
  readonly runsFrom: number;
  readonly runMs: number;
  readonly spanMs: number;
}

export interface DutyMemory {
  readonly sum: SpanSum;
  /** Watched for a whole span from then on. */
  watchedAt: EpochMs;
  short: boolean;
  sinceMs: EpochMs | null;
  value: number | null;
  at: EpochMs | null;
}

function judge(settings: DutySettings, memory: DutyMemory, now: EpochMs, timer: Timer): Severity {
  const { sum, watchedAt } = memory;
  const { runMs, spanMs } = settings;
  spanTo(sum, spanMs, now);
  const missingMs = runMs - spanHeldMs(sum);
  const short = now >= watchedAt && missingMs > 0;
  if (short !== memory.short) memory.sinceMs = short ? now : null;
  memory.short = short;
  if (now < watchedAt) timer.at = watchedAt;
  else if (!short) timer.at = spanForgetsAt(sum, spanMs);
  else timer.at = sum.since === null ? null : now + Math.ceil(missingMs);
  return short ? 1 : 0;
}

export const duty: RuleKind<DutySettings, DutyMemory> = {
  name: 'duty',
  version: 1,
  summary:
    'Something that must run for a given time in every span, as a pump in each day, has run too little.',
  written: z.strictObject({
    runs_from: quantitySetting('At or above this it counts as running.'),
    run: durationSetting('How long it must run, all times together.'),
    within: durationSetting('Within this span.'),
  }),
  compile(read) {
    const runMs = read.duration('run', 0);
    const spanMs = read.duration('within', Number.POSITIVE_INFINITY);
    if (runMs <= 0 || runMs >= spanMs)
      read.report({
        path: ['run'],
        problem: 'it is nothing, or more than the span holds',
        fix: 'make it more than 0 s and shorter than within',
      });
    return { runsFrom: read.limit('runs_from') ?? 0, runMs, spanMs };
  },
  begin({ spanMs }, at, timer) {
    timer.at = at + spanMs;
    return {
      sum: spanBegin(spanMs, at),
      watchedAt: at + spanMs,
      short: false,
      sinceMs: null,
      value: null,
      at: null,
    };
  },
  sample(settings, memory, reading, timer) {
    const { value, judged } = reading;
    spanSay(memory.sum, settings.spanMs, value >= settings.runsFrom, judged);
    memory.value = value;
    memory.at = reading.at;
    return judge(settings, memory, judged, timer);
  },
  deadline: judge,
  gap(settings, memory, fromMs, toMs) {
    spanTo(memory.sum, settings.spanMs, fromMs);
    spanShift(memory.sum, toMs - fromMs);
    memory.watchedAt += toMs - fromMs;
  },
  shift(memory, deltaMs) {
    spanShift(memory.sum, deltaMs);
    memory.watchedAt += deltaMs;
    if (memory.sinceMs !== null) memory.sinceMs += deltaMs;
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence: (settings, memory) => ({
    limit: settings.runsFrom,
    side: 'low',
    reachedMs: Math.round(spanHeldMs(memory.sum)),
    requiredMs: settings.runMs,
    ...(memory.value === null ? {} : { value: memory.value }),
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(memory.sinceMs === null ? {} : { sinceMs: memory.sinceMs }),
  }),
  sentence: () => '{$signal} ran for {$reached}, and {$required} were needed.',
};
