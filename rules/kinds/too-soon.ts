/**
 * `too-soon`: the second thing was done to an item before the first had had its time.
 *
 * Item by item, so that one rack may be coated while another still dries. It stands, from when it was
 * said, for as long as should have been waited; the item is passed on to be held. Time is wall time:
 * a coat dries while nobody looks.
 */

import { z } from 'zod/mini';
import { sameItem } from '../hold/item.ts';
import type { EpochMs } from '../signal/sample.ts';
import { addClock, type Clocks, endClock, itemsMax } from './clocks.ts';
import type { Evidence, Marking, RuleKind, Severity, Timer } from './kind.ts';
import { durationSetting, type SettingsReader } from './settings.ts';

export interface TooSoonSettings {
  readonly notBeforeMs: number;
}

export interface TooSoonMemory extends Clocks {
  /** The last item that was not given its time. */
  soon: {
    readonly item: string | null;
    readonly sinceMs: EpochMs;
    readonly reachedMs: number;
  } | null;
  /** Until then it stands. */
  untilMs: EpochMs | null;
}

function compile(read: SettingsReader): TooSoonSettings {
  const notBeforeMs = read.duration('not_before', 0);
  if (notBeforeMs === 0)
    read.report({ path: ['not_before'], problem: 'it is nothing', fix: 'make it more than 0 s' });
  const [first, second] = read.marks;
  if (first !== second)
    read.report({
      path: [],
      problem: `it begins with a mark of ${first ?? 'the place'} and ends with one of ${second ?? 'the place'}`,
      fix: 'name two marks of the same',
    });
  return { notBeforeMs };
}

function judge(memory: TooSoonMemory, now: EpochMs, timer: Timer): Severity {
  if (memory.untilMs !== null && now >= memory.untilMs) memory.untilMs = null;
  timer.at = memory.untilMs;
  return memory.untilMs === null ? 0 : 1;
}

function mark(
  { notBeforeMs }: TooSoonSettings,
  memory: TooSoonMemory,
  { item, at, judged, input }: Marking,
  timer: Timer,
): Severity {
  if (input === 0) {
    addClock(memory, item, at);
    // The oldest has long had its time.
    if (memory.clocks.length > itemsMax) memory.clocks.shift();
    return judge(memory, judged, timer);
  }
  const clock = memory.clocks.find((each) => sameItem(each.item, item) && each.sinceMs <= at);
  if (clock !== undefined && at - clock.sinceMs < notBeforeMs) {
    memory.soon = { item, sinceMs: clock.sinceMs, reachedMs: at - clock.sinceMs };
    memory.untilMs = judged + notBeforeMs;
    memory.passed.push(item ?? '');
  }
  endClock(memory, item, at);
  return judge(memory, judged, timer);
}

function evidence({ notBeforeMs }: TooSoonSettings, { soon }: TooSoonMemory): Evidence {
  if (soon === null) return { side: 'low', requiredMs: notBeforeMs };
  const { item, sinceMs, reachedMs } = soon;
  return {
    side: 'low',
    sinceMs,
    reachedMs,
    requiredMs: notBeforeMs,
    leftMs: notBeforeMs - reachedMs,
    ...(item === null ? {} : { item }),
  };
}

export const tooSoon: RuleKind<TooSoonSettings, TooSoonMemory> = {
  name: 'too-soon',
  version: 1,
  summary:
    'Somebody wrote down the second of two things before the first had had its time, as a coat over one that still dries; item by item.',
  written: z.strictObject({
    not_before: durationSetting('The second may not come before this long has passed.'),
  }),
  takes: { least: 0, most: 0, units: 'any' },
  marks: { least: 2, most: 2, roles: ['the first thing', 'the second, which may not come yet'] },
  compile,
  outlives: true,
  begin: () => ({ clocks: [], passed: [], soon: null, untilMs: null }),
  sample: (_settings, memory) => (memory.untilMs === null ? 0 : 1),
  mark,
  passed: (memory) => memory.passed.splice(0),
  deadline: (_settings, memory, at, timer) => judge(memory, at, timer),
  gap(_settings, memory, _fromMs, toMs, timer) {
    timer.at = memory.untilMs === null ? null : Math.max(memory.untilMs, toMs + 1);
  },
  shift(memory, deltaMs) {
    for (const clock of memory.clocks) clock.sinceMs += deltaMs;
    if (memory.untilMs !== null) memory.untilMs += deltaMs;
    if (memory.soon !== null)
      memory.soon = { ...memory.soon, sinceMs: memory.soon.sinceMs + deltaMs };
  },
  evidence,
  sentence: ({ item }) =>
    `${item === undefined ? '{$signal}' : '{$item}'}: {$reached} since {$clock}, and {$required} were needed first.`,
};
