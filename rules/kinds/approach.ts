/**
 * `approach`: a value on its way to a limit that it will reach within the time to act.
 *
 * The slope is robust (Theil–Sen over at most 32 means of the window, Sen's interval), so one
 * wild reading bends nothing. The forecast is a range: soonest by the steepest slope the
 * confidence allows, latest by the flattest, each through the middle of the window, where the level
 * is known best. Without confidence that the value moves towards the limit there is no forecast and
 * no alarm. Nor is there one beyond the limit: that is for a band. While the window holds too few
 * readings to tell, as after a gap, the answer stays what it was.
 */
import { z } from 'zod/mini';
import { confidenceZ } from '../process/trend.ts';
import { lastInstantMs } from '../signal/instant-text.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  answerDue,
  answered,
  answerStand,
  compileDelays,
  type Delayed,
  type Delays,
  delayedBegin,
  delayedGap,
  delayedSay,
  delayedShift,
} from './delay.ts';
import type { Evidence, Reading, RuleKind, Severity, Timer } from './kind.ts';
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
  delaySettings,
  durationSetting,
  quantitySetting,
  type SettingsReader,
} from './settings.ts';

const meansMax = 32;
/** Sen's interval by the normal approximation is fair from about ten points. */
const meansMin = 10;
/** Once told, it is over only when the limit is this much further off in time. */
const releaseFactor = 1.25;
const msPerH = 3_600_000;

export interface ApproachSettings extends Delays {
  readonly limit: number;
  readonly side: 'low' | 'high';
  readonly withinMs: number;
  readonly windowMs: number;
  readonly z: number;
}

export interface ApproachMemory extends MeansWindow {
  readonly answer: Delayed;
  value: number | null;
  at: EpochMs | null;
  /** The last forecast; null without confidence. */
  slopePerMs: number | null;
  earliestMs: EpochMs | null;
  latestMs: EpochMs | null;
}

const written = z.strictObject({
  low: z.optional(quantitySetting('The limit it is falling towards.')),
  high: z.optional(quantitySetting('The limit it is rising towards.')),
  within: durationSetting('Alarm once the limit is expected within this time.'),
  window: z.optional(durationSetting('How much of the latest past the trend is taken from.')),
  confidence: z.optional(
    z
      .literal([80, 90, 95, 99])
      .check(
        z.meta({ description: 'How sure the trend must be before it is believed, in per cent.' }),
      ),
  ),
  ...delaySettings,
});

const zOf: Readonly<Record<number, number>> = {
  80: confidenceZ.p80,
  90: confidenceZ.p90,
  95: confidenceZ.p95,
  99: confidenceZ.p99,
};

function compile(read: SettingsReader): ApproachSettings {
  const low = read.limit('low');
  const high = read.limit('high');
  if ((low === null) === (high === null))
    read.report({
      path: [],
      problem: 'an approach is to one limit',
      fix: 'give either low or high; a second rule watches the other side',
    });
  const withinMs = read.duration('within', Number.POSITIVE_INFINITY);
  const windowMs = read.duration('window', withinMs);
  if (withinMs === 0)
    read.report({
      path: ['within'],
      problem: 'there would be no time to act',
      fix: 'give the time people need to act, as "2 h"',
    });
  else if (windowMs === 0)
    read.report({
      path: ['window'],
      problem: 'the window holds no reading',
      fix: 'make it about as long as within',
    });
  if (read.expectEveryMs !== null && windowMs < meansMin * read.expectEveryMs)
    read.report({
      path: ['window'],
      problem: `the window holds fewer than ${meansMin} readings`,
      fix: `make it at least ${(meansMin * read.expectEveryMs) / 1_000} s`,
    });
  return {
    limit: low ?? high ?? 0,
    side: low === null ? 'high' : 'low',
    withinMs,
    windowMs,
    z: zOf[read.number('confidence', 90)]!,
    ...compileDelays(read),
  };
}

function sample(
  settings: ApproachSettings,
  memory: ApproachMemory,
  reading: Reading,
  timer: Timer,
): Severity {
  const { judged } = reading;
  memory.value = reading.value;
  memory.at = reading.at;
  if (meansTake(memory, settings.windowMs, meansMax, reading.value, judged)) {
    const says = nears(settings, memory, judged);
    if (says !== null) timer.at = delayedSay(settings, memory.answer, says, judged);
  }
  return answered(memory);
}

/** Makes the forecast; true where the limit comes within the time to act, null where nobody can tell. */
function nears(settings: ApproachSettings, memory: ApproachMemory, now: EpochMs): boolean | null {
  if (memory.times.length < meansMin) return null;
  memory.slopePerMs = null;
  memory.earliestMs = null;
  memory.latestMs = null;
  const slope = meansSlope(memory, settings.z);
  if (slope === null) return null;
  memory.slopePerMs = slope.slope;
  const sign = settings.side === 'high' ? 1 : -1;
  const [flattest, steepest] = sign > 0 ? [slope.low, slope.high] : [slope.high, slope.low];
  /** Time to the limit along the line of a slope; negative beyond it. */
  const leftMs = (perMs: number): number => (settings.limit - levelAt(memory, perMs, now)) / perMs;
  if (!(sign * flattest > 0)) return false;
  const left = leftMs(slope.slope);
  if (left <= 0) return false;
  memory.earliestMs = instant(now + Math.max(0, leftMs(steepest)));
  memory.latestMs = instant(now + Math.max(0, leftMs(flattest)));
  return left <= settings.withinMs * (memory.answer.answer ? releaseFactor : 1);
}

const instant = (ms: number): EpochMs => Math.min(Math.round(ms), lastInstantMs);

/** The fitted line at a time: the median of what each mean says of it. */
const levelAt = ({ times, means }: MeansWindow, slopePerMs: number, at: EpochMs): number =>
  medianOf(means.map((mean, i) => mean + slopePerMs * (at - times[i]!)));

function evidence(settings: ApproachSettings, memory: ApproachMemory): Evidence {
  return {
    limit: settings.limit,
    side: settings.side,
    ...(memory.value === null ? {} : { value: memory.value }),
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(memory.slopePerMs === null ? {} : { slopePerH: memory.slopePerMs * msPerH }),
    ...(memory.earliestMs === null ? {} : { earliestMs: memory.earliestMs }),
    ...(memory.latestMs === null ? {} : { latestMs: memory.latestMs }),
    ...(memory.answer.sinceMs === null ? {} : { sinceMs: memory.answer.sinceMs }),
  };
}

export const approach: RuleKind<ApproachSettings, ApproachMemory> = {
  name: 'approach',
  version: 1,
  summary: 'A value on its way to a limit that it will reach within the time to act.',
  written,
  compile,
  begin: () => ({
    answer: delayedBegin(),
    ...meansBegin(),
    value: null,
    at: null,
    slopePerMs: null,
    earliestMs: null,
    latestMs: null,
  }),
  stand: answerStand,
  sample,
  deadline: answerDue,
  /** A slope across unobserved time would be invented: the window begins anew. */
  gap(_settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
    meansForget(memory);
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    meansShift(memory, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
    if (memory.earliestMs !== null) memory.earliestMs += deltaMs;
    if (memory.latestMs !== null) memory.latestMs += deltaMs;
  },
  evidence,
  sentence: (evidence) =>
    evidence.side === 'low'
      ? '{$signal} at {$value}, falling {$slope} an hour; {$limit} in {$early} to {$late}.'
      : '{$signal} at {$value}, rising {$slope} an hour; {$limit} in {$early} to {$late}.',
};
