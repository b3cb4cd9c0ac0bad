/**
 * `self-heat`: a surface hotter than the air beside it and rising by itself.
 *
 * Told at any temperature: the excess at its limit, the surface rising, and at least half of that
 * rise its own rather than the air's, which is how a heat that is steady or off shows. Slopes are
 * robust (Sen, over means of the window). Once told it holds while the excess stays at its limit:
 * a rise that slows is no all-clear.
 */
import { z } from 'zod/mini';
import { confidenceZ, type SenSlope, senSlope } from '../process/trend.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  type Delayed,
  type Delays,
  delayedBegin,
  delayedDue,
  delayedGap,
  delayedSay,
  delayedShift,
} from './delay.ts';
import type { RuleKind } from './kind.ts';
import { delaySettings, durationSetting, quantitySetting } from './settings.ts';

const meansMax = 10;
const meansMin = 5;
/** Of the surface's rise: judgement, to tell a reaction from an oven that heats up. */
const ownShare = 0.5;
const msPerH = 3_600_000;

export interface SelfHeatSettings extends Delays {
  readonly excess: number;
  readonly risePerMs: number;
  readonly windowMs: number;
}

interface Mean {
  sum: number;
  count: number;
}

export interface SelfHeatMemory {
  readonly answer: Delayed;
  times: EpochMs[];
  excesses: number[];
  surfaces: number[];
  openAt: EpochMs | null;
  excess: Mean;
  surface: Mean;
  value: number | null;
  at: EpochMs | null;
  slopePerMs: number | null;
}

const noMean = (): Mean => ({ sum: 0, count: 0 });
const emptied = () => ({
  times: [],
  excesses: [],
  surfaces: [],
  openAt: null,
  excess: noMean(),
  surface: noMean(),
  slopePerMs: null,
});

const scratch: SenSlope = { slope: 0, low: 0, high: 0 };

function slopeOf(times: readonly number[], values: readonly number[]): number | null {
  const since = times.map((time) => time - times[0]!);
  return senSlope(since, values, values.length, confidenceZ.p90, scratch)?.slope ?? null;
}

function closeMean(settings: SelfHeatSettings, memory: SelfHeatMemory, now: EpochMs): void {
  const { times, excesses, surfaces, excess, surface } = memory;
  times.push(now);
  excesses.push(excess.sum / excess.count);
  surfaces.push(surface.sum / surface.count);
  Object.assign(memory, { openAt: now, excess: noMean(), surface: noMean() });
  while (times.length > meansMax || times[0]! < now - settings.windowMs) {
    times.shift();
    excesses.shift();
    surfaces.shift();
  }
}

/** null where nobody can tell yet. */
function heatsItself(settings: SelfHeatSettings, memory: SelfHeatMemory): boolean | null {
  const { times, excesses, surfaces, value, answer } = memory;
  if (answer.answer) return value !== null && value >= settings.excess;
  if (times.length < meansMin) return null;
  const surfacePerMs = slopeOf(times, surfaces);
  const excessPerMs = slopeOf(times, excesses);
  memory.slopePerMs = surfacePerMs;
  if (surfacePerMs === null || excessPerMs === null || value === null) return null;
  return (
    value >= settings.excess &&
    surfacePerMs >= settings.risePerMs &&
    excessPerMs >= ownShare * surfacePerMs
  );
}

export const selfHeat: RuleKind<SelfHeatSettings, SelfHeatMemory> = {
  name: 'self-heat',
  version: 1,
  summary: 'A surface hotter than the air beside it and rising by itself.',
  written: z.strictObject({
    excess: quantitySetting('How much hotter than the air beside it the surface may be.'),
    rise: quantitySetting('With rise_per: how fast the surface must be rising.'),
    rise_per: durationSetting('The time that rise takes.'),
    window: z.optional(durationSetting('How much of the latest past the rise is taken from.')),
    ...delaySettings,
  }),
  takes: { least: 2, most: 2, units: ['K', 'Cel'], roles: ['surface less air', 'surface'] },
  compile(read) {
    const excess = read.difference('excess', Number.POSITIVE_INFINITY);
    const rise = read.difference('rise', Number.POSITIVE_INFINITY);
    const perMs = read.duration('rise_per', 1);
    const windowMs = read.duration('window', 300_000);
    for (const [key, value] of [
      ['excess', excess],
      ['rise', rise],
      ['rise_per', perMs],
      ['window', windowMs],
    ] as const)
      if (value <= 0)
        read.report({
          path: [key],
          problem: 'every surface would count as heating itself',
          fix: 'make it more than nothing',
        });
    return {
      excess,
      risePerMs: rise / perMs,
      windowMs,
      onDelayMs: read.duration('on_delay', 0),
      offDelayMs: read.duration('off_delay', 0),
    };
  },
  begin: () => ({ answer: delayedBegin(), ...emptied(), value: null, at: null }),
  sample(settings, memory, reading, timer) {
    const { judged, input, value } = reading;
    memory.openAt ??= judged;
    const mean = input === 0 ? memory.excess : memory.surface;
    mean.sum += value;
    mean.count += 1;
    if (input === 0) {
      memory.value = value;
      memory.at = reading.at;
    }
    const whole = memory.excess.count > 0 && memory.surface.count > 0;
    const full = whole && judged - memory.openAt >= settings.windowMs / meansMax;
    if (full) closeMean(settings, memory, judged);
    if (full || (input === 0 && memory.answer.answer)) {
      const says = heatsItself(settings, memory);
      if (says !== null) timer.at = delayedSay(settings, memory.answer, says, judged);
    }
    return memory.answer.answer ? 1 : 0;
  },
  deadline(settings, memory, at, timer) {
    timer.at = delayedDue(settings, memory.answer, at);
    return memory.answer.answer ? 1 : 0;
  },
  /** A slope across unobserved time would be invented. */
  gap(_settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
    Object.assign(memory, emptied());
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    memory.times = memory.times.map((time) => time + deltaMs);
    if (memory.openAt !== null) memory.openAt += deltaMs;
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence: (settings, memory) => ({
    limit: settings.excess,
    side: 'high',
    // Which surface.
    input: 1,
    ...(memory.value === null ? {} : { value: memory.value }),
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(memory.slopePerMs === null ? {} : { slopePerH: memory.slopePerMs * msPerH }),
    ...(memory.answer.sinceMs === null ? {} : { sinceMs: memory.answer.sinceMs }),
  }),
  sentence: () => '{$signal} at {$value} and rising {$slope} an hour with the heat steady or off.',
};
