/**
 * `rise`: a value that changes too fast, or has fallen by too much of itself.
 *
 * How fast is a robust slope over a window (Sen's, over at most 32 means, rules/kinds/means-window.ts):
 * one wild reading bends nothing, and a step is for a moment a ramp over the whole window. A fall by
 * a share is for what drops at once, as a filter that tears: the middle of the newest third of the
 * window against the middle of the oldest. That answer goes with the window; an alarm that must stay
 * latches. Nothing is said before the window holds enough readings over enough time, and nothing is
 * drawn across a gap.
 */
import { z } from 'zod/mini';
import { withoutDust } from '../quantity/quantity.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  answerDue,
  answered,
  answerSay,
  answerStand,
  compileDelays,
  type Delayed,
  type Delays,
  delayedBegin,
  delayedGap,
  delayedShift,
} from './delay.ts';
import type { Evidence, RuleKind } from './kind.ts';
import {
  type MeansWindow,
  meansBegin,
  meansForget,
  meansShift,
  meansSlope,
  meansTake,
  medianOf,
} from './means-window.ts';
import {
  deadbandSetting,
  delaySettings,
  durationSetting,
  quantitySetting,
  type SettingsReader,
} from './settings.ts';

const meansMax = 32;
/** A median of fewer slopes is bent by one wild reading of them. */
const meansMin = 6;
const msPerH = 3_600_000;

export interface RiseSettings extends Delays {
  /** How much it may go up and down in `perMs`; null where that way is free. */
  readonly up: number | null;
  readonly down: number | null;
  readonly perMs: number;
  /** Of its earlier level, which must be above nothing. */
  readonly fallShare: number | null;
  readonly deadband: number;
  readonly windowMs: number;
  readonly spanMs: number;
}

export interface RiseMemory {
  readonly answer: Delayed;
  readonly window: MeansWindow;
  value: number | null;
  at: EpochMs | null;
  slopePerMs: number | null;
  /** What it was compared with, for the fall by a share. */
  earlier: number | null;
  /** Which limit it is past, or was last. */
  past: 'up' | 'down' | 'share' | null;
  /** By how much it changed, as the limit counts it, and how much it may. */
  change: number;
  allowed: number;
}

const written = z.strictObject({
  up: z.optional(quantitySetting('With per: how much it may rise in that time.')),
  down: z.optional(quantitySetting('With per: how much it may fall in that time.')),
  per: z.optional(durationSetting('The time that up and down are meant in.')),
  fall_share: z.optional(
    quantitySetting('How much of its earlier level it may lose within the window, as 30 %.'),
  ),
  window: durationSetting('How much of the latest past is looked at.'),
  min_span: z.optional(
    durationSetting(
      'Nothing is said before the readings reach back this far; half the window unless given.',
    ),
  ),
  deadband: deadbandSetting,
  ...delaySettings,
});

function compile(read: SettingsReader): RiseSettings {
  const way = (key: 'up' | 'down'): number | null =>
    read.has(key) ? read.difference(key, Number.POSITIVE_INFINITY) : null;
  const [up, down, fallShare] = [way('up'), way('down'), shareOf(read)];
  const perMs = read.duration('per', 0);
  const windowMs = read.duration('window', Number.POSITIVE_INFINITY);
  const spanMs = read.duration('min_span', Number.isFinite(windowMs) ? windowMs / 2 : 0);
  const deadband = read.difference('deadband', 0);
  if (!['up', 'down', 'fall_share'].some((key) => read.has(key)))
    read.report({
      path: [],
      problem: 'a change without a limit judges nothing',
      fix: 'give at least one of up, down (with per) and fall_share',
    });
  if ((up !== null || down !== null) !== read.has('per') || (read.has('per') && perMs === 0))
    read.report({
      path: ['per'],
      problem: read.has('per') ? 'it belongs to up or down' : 'nobody says in what time',
      fix: 'give up or down, and per with the time they are meant in, as "1 min"',
    });
  for (const [key, limit] of [
    ['up', up],
    ['down', down],
  ] as const)
    if (limit !== null && deadband >= limit)
      read.report({
        path: [limit === 0 ? key : 'deadband'],
        problem:
          limit === 0 ? 'every change would be too fast' : `no change ${key} would be well again`,
        fix: limit === 0 ? 'make it more than nothing' : `make it less than ${key}, ${limit}`,
      });
  reportWindow(read, windowMs, spanMs);
  return { up, down, perMs, fallShare, deadband, windowMs, spanMs, ...compileDelays(read) };
}

function shareOf(read: SettingsReader): number | null {
  const share = read.share('fall_share');
  if (read.has('fall_share') && (share === null || share === 0 || share >= 1))
    read.report({
      path: ['fall_share'],
      problem: 'it is no part of a level',
      fix: 'write it in per cent, over 0 and under 100, as "30 %"',
    });
  return share;
}

function reportWindow(read: SettingsReader, windowMs: number, spanMs: number): void {
  const leastMs = meansMin * Math.max(read.expectEveryMs ?? 0, 1);
  if (windowMs < leastMs)
    read.report({
      path: ['window'],
      problem: `the window holds fewer than ${meansMin} readings`,
      fix: `make it at least ${leastMs / 1_000} s`,
    });
  // The newest mean and the oldest lie in the middle of a 32nd each.
  else if (spanMs > windowMs * (1 - 2 / meansMax))
    read.report({
      path: ['min_span'],
      problem: 'the window never reaches back so far',
      fix: 'make it shorter than the window, by a tenth at least',
    });
}

/** The first limit it is past; null where it is past none, undefined where nobody can tell. */
function pastLimit(settings: RiseSettings, memory: RiseMemory): RiseMemory['past'] | undefined {
  const { times, means } = memory.window;
  memory.slopePerMs = null;
  memory.earlier = null;
  if (times.length < meansMin || times.at(-1)! - times[0]! < settings.spanMs) return undefined;
  memory.slopePerMs = meansSlope(memory.window)?.slope ?? null;
  if (memory.slopePerMs === null) return undefined;
  const back = memory.answer.answer ? settings.deadband : 0;
  const { up, down, fallShare } = settings;
  const change = withoutDust(memory.slopePerMs * settings.perMs);
  const isPast = (past: 'up' | 'down' | 'share', by: number, allowed: number): boolean => {
    if (!(by > withoutDust(allowed - back))) return false;
    Object.assign(memory, { past, change: by, allowed });
    return true;
  };
  if (up !== null && isPast('up', change, up)) return 'up';
  if (down !== null && isPast('down', -change, down)) return 'down';
  if (fallShare === null) return null;
  const third = Math.floor(means.length / 3);
  const earlier = medianOf(means.slice(0, third));
  memory.earlier = earlier;
  const fall = withoutDust(earlier - medianOf(means.slice(-third)));
  return earlier > 0 && isPast('share', fall, withoutDust(fallShare * earlier)) ? 'share' : null;
}

function evidence(settings: RiseSettings, memory: RiseMemory): Evidence {
  const { past, slopePerMs, earlier, answer } = memory;
  return {
    ...(memory.value === null ? {} : { value: memory.value }),
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(slopePerMs === null ? {} : { slopePerH: slopePerMs * msPerH }),
    ...(past === null
      ? {}
      : {
          side: past === 'up' ? 'high' : 'low',
          difference: memory.change,
          allowed: memory.allowed,
          perMs: past === 'share' ? settings.windowMs : settings.perMs,
          ...(past === 'share' && earlier !== null ? { reference: withoutDust(earlier) } : {}),
        }),
    ...(answer.sinceMs === null ? {} : { sinceMs: answer.sinceMs }),
  };
}

export const rise: RuleKind<RiseSettings, RiseMemory> = {
  name: 'rise',
  version: 1,
  summary: 'A value that rises or falls too fast, or has lost too much of its level.',
  written,
  compile,
  begin: () => ({
    answer: delayedBegin(),
    window: meansBegin(),
    value: null,
    at: null,
    slopePerMs: null,
    earlier: null,
    past: null,
    change: 0,
    allowed: 0,
  }),
  stand: answerStand,
  sample(settings, memory, reading, timer) {
    const { value, judged } = reading;
    memory.value = value;
    memory.at = reading.at;
    if (!meansTake(memory.window, settings.windowMs, meansMax, value, judged))
      return answered(memory);
    const past = pastLimit(settings, memory);
    return answerSay(settings, memory, past === undefined ? null : past !== null, judged, timer);
  },
  deadline: answerDue,
  gap(_settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
    meansForget(memory.window);
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    meansShift(memory.window, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence,
  sentence: ({ side, reference }) => {
    if (reference !== undefined)
      return '{$signal} at {$value}: fell by {$difference} from {$reference} within {$per}; {$allowed} is allowed.';
    return side === 'low'
      ? '{$signal} at {$value}, falling {$difference} in {$per}; {$allowed} is allowed.'
      : '{$signal} at {$value}, rising {$difference} in {$per}; {$allowed} is allowed.';
  },
};
