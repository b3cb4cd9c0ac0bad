/**
 * `sequence`: after one thing, another must come soon enough, or must not come too soon.
 *
 * Either is a signal that comes within its bounds, or a mark. A second thing that is so already
 * when the first happens has come. A new first begins anew. Where `counting` bounds are given, only
 * time with that signal within them counts, as the running time of a mixer. Time nobody saw does not
 * count; a value that was within its bounds when it was first seen is no first.
 */
import { z } from 'zod/mini';
import type { EpochMs } from '../signal/sample.ts';
import type { Evidence, Marking, Reading, RuleKind, Severity, Timer } from './kind.ts';
import { compile, type SequenceSettings } from './sequence-settings.ts';
import { durationSetting, quantitySetting } from './settings.ts';

export interface SequenceMemory {
  /** When the first happened; null while nothing is waited for. */
  startedAt: EpochMs | null;
  countedMs: number;
  /** Since when time counts that `countedMs` does not hold yet. */
  countingFrom: EpochMs | null;
  /** What each was last seen to be; null before the first reading. */
  first: boolean | null;
  second: boolean;
  counts: boolean;
  /** The second has come. */
  done: boolean;
  late: boolean;
  soon: boolean;
  item: string | null;
  seenAt: EpochMs;
}

const elapsed = (memory: SequenceMemory, now: EpochMs): number =>
  memory.countedMs + (memory.countingFrom === null ? 0 : Math.max(0, now - memory.countingFrom));

function forget(memory: SequenceMemory): void {
  memory.startedAt = null;
  memory.countedMs = 0;
  memory.countingFrom = null;
  memory.done = false;
  memory.late = false;
  memory.soon = false;
}

function start(settings: SequenceSettings, memory: SequenceMemory, at: EpochMs): void {
  forget(memory);
  memory.startedAt = at;
  memory.countingFrom = settings.counting === null || memory.counts ? at : null;
}

/** `came`: the second is so, or was just said. */
function judge(
  settings: SequenceSettings,
  memory: SequenceMemory,
  now: EpochMs,
  timer: Timer,
  came: boolean,
): Severity {
  memory.seenAt = now;
  timer.at = null;
  if (memory.startedAt === null) return 0;
  const { withinMs, notBeforeMs } = settings;
  const goneMs = elapsed(memory, now);
  const early = notBeforeMs !== null && goneMs < notBeforeMs;
  if (came && !early) memory.done = true;
  // What was said too soon stays so until it would have been time; what is seen, while it is seen.
  memory.soon = early && (came || (memory.soon && settings.second.mark));
  memory.late = withinMs !== null && !memory.done && goneMs >= withinMs;
  const abnormal = memory.soon || memory.late;
  if (!abnormal && memory.done && !early) forget(memory);
  else if (memory.countingFrom !== null) {
    const ahead = [early ? notBeforeMs : null, memory.done || memory.late ? null : withinMs];
    const next = Math.min(...ahead.map((ms) => ms ?? Number.POSITIVE_INFINITY));
    timer.at = Number.isFinite(next) ? now + Math.max(1, Math.ceil(next - goneMs)) : null;
  }
  return abnormal ? 1 : 0;
}

/** Time counts, or no longer does. */
function count(memory: SequenceMemory, counts: boolean, now: EpochMs): void {
  memory.counts = counts;
  if (memory.startedAt === null) return;
  memory.countedMs = elapsed(memory, now);
  memory.countingFrom = counts ? now : null;
}

function sample(
  settings: SequenceSettings,
  memory: SequenceMemory,
  reading: Reading,
  timer: Timer,
): Severity {
  const { first, second, counting, whileFirst } = settings;
  const { value, input, judged } = reading;
  if (counting?.input === input)
    count(memory, value >= counting.low && value <= counting.high, judged);
  if (!first.mark && first.input === input) {
    const holds = value >= first.low && value <= first.high;
    if (holds && memory.first === false) start(settings, memory, judged);
    if (!holds && memory.first === true && whileFirst) forget(memory);
    memory.first = holds;
  }
  if (!second.mark && second.input === input)
    memory.second = value >= second.low && value <= second.high;
  return judge(settings, memory, judged, timer, memory.second);
}

function mark(
  settings: SequenceSettings,
  memory: SequenceMemory,
  marking: Marking,
  timer: Timer,
): Severity {
  const { first, second } = settings;
  const { at, judged, item, input } = marking;
  let came = memory.second;
  if (first.mark && first.input === input) {
    start(settings, memory, settings.counting === null ? at : judged);
    memory.item = item;
  }
  if (
    second.mark &&
    second.input === input &&
    memory.startedAt !== null &&
    at >= memory.startedAt
  ) {
    came = true;
    if (!first.mark) memory.item = item;
  }
  return judge(settings, memory, judged, timer, came);
}

function evidence(settings: SequenceSettings, memory: SequenceMemory): Evidence {
  const { startedAt, item, soon, seenAt } = memory;
  const required = soon ? settings.notBeforeMs : (settings.withinMs ?? settings.notBeforeMs);
  return {
    side: soon || settings.withinMs === null ? 'low' : 'high',
    ...(required === null ? {} : { requiredMs: required }),
    ...(startedAt === null
      ? {}
      : { sinceMs: startedAt, reachedMs: Math.round(elapsed(memory, seenAt)) }),
    ...(item === null ? {} : { item }),
  };
}

const bound = (what: string) => z.optional(quantitySetting(what));

export const sequence: RuleKind<SequenceSettings, SequenceMemory> = {
  name: 'sequence',
  version: 1,
  summary: 'After one thing another did not come in time, or came too soon.',
  written: z.strictObject({
    first_low: bound('The first thing has happened once its signal is at or above this …'),
    first_high: bound('… and at or below this. Without either, the first thing is a mark.'),
    then_low: bound('The second thing is so while its signal is at or above this …'),
    then_high: bound('… and at or below this. Without either, the second thing is a mark.'),
    within: z.optional(durationSetting('The second must come before this long has passed.')),
    not_before: z.optional(
      durationSetting('The second must not come before this long has passed.'),
    ),
    while_first: z.optional(
      z.boolean().check(
        z.meta({
          description: 'Nothing is waited for any more once the first signal left its bounds.',
        }),
      ),
    ),
    counting_low: bound('Only time with the last signal at or above this counts …'),
    counting_high: bound('… and at or below this. Without either, all time counts.'),
  }),
  takes: {
    least: 0,
    most: 3,
    units: 'any',
    roles: [
      'the first thing, where it is a signal',
      'the second, where it is a signal; one signal alone may be both',
      'what counts the time, where counting bounds are given',
    ],
  },
  marks: {
    least: 0,
    most: 2,
    roles: ['the first thing, where it is a mark', 'the second, where it is a mark'],
  },
  compile,
  outlives: true,
  begin: (_settings, at) => ({
    startedAt: null,
    countedMs: 0,
    countingFrom: null,
    first: null,
    second: false,
    counts: false,
    done: false,
    late: false,
    soon: false,
    item: null,
    seenAt: at,
  }),
  sample,
  mark,
  deadline: (settings, memory, at, timer) => judge(settings, memory, at, timer, memory.second),
  gap(_settings, memory, fromMs, toMs) {
    if (memory.countingFrom === null) return;
    memory.countedMs = elapsed(memory, fromMs);
    memory.countingFrom = toMs;
  },
  shift(memory, deltaMs) {
    memory.seenAt += deltaMs;
    if (memory.startedAt !== null) memory.startedAt += deltaMs;
    if (memory.countingFrom !== null) memory.countingFrom += deltaMs;
  },
  evidence,
  sentence: ({ side }) =>
    side === 'low'
      ? '{$signal}: {$reached} since {$clock}, and {$required} were needed first.'
      : '{$signal}: {$reached} since {$clock}, and what must follow within {$required} has not come.',
};
