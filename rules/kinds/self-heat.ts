/**
 * `self-heat`: a surface hotter than the air beside it and rising by itself.
 *
 * Told at any temperature: the excess at its limit, the surface rising, and at least half of that
 * rise its own rather than the air's, which is how a heat that is steady or off shows. Slopes are
 * robust (Sen, over means of the window). Once told it holds while the excess stays at its limit:
 * a rise that slows is no all-clear.
 */
import { z } from 'zod/mini';
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
import type { RuleKind } from './kind.ts';
import {
  type MeansWindow,
  meansBegin,
  meansForget,
  meansShift,
  meansSlope,
  meansTake,
} from './means-window.ts';
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

export interface SelfHeatMemory {
  readonly answer: Delayed;
  readonly excess: MeansWindow;
  readonly surface: MeansWindow;
  value: number | null;
  at: EpochMs | null;
  slopePerMs: number | null;
}

/** Of version 1: one row of times for both, and an open mean that ended where its sum did. */
interface FirstMemory {
  readonly answer: Delayed;
  readonly times: readonly EpochMs[];
  readonly excesses: readonly number[];
  readonly surfaces: readonly number[];
  readonly value: number | null;
  readonly at: EpochMs | null;
  readonly slopePerMs: number | null;
}

/**
 * The open mean is let go, a tenth of the window at most; a time was the end of its mean and is now
 * its middle.
 */
function fromFirst({ answer, times, excesses, surfaces, ...rest }: FirstMemory): SelfHeatMemory {
  const middles = times.map((time, i) => {
    const lengthMs = i > 0 ? time - times[i - 1]! : (times[1] ?? time) - time;
    return time - lengthMs / 2;
  });
  const window = (means: readonly number[]): MeansWindow => ({
    ...meansBegin(),
    times: [...middles],
    means: [...means],
    closedAt: times.at(-1) ?? null,
  });
  const { value, at, slopePerMs } = rest;
  return { answer, excess: window(excesses), surface: window(surfaces), value, at, slopePerMs };
}

/** null where nobody can tell yet. */
function heatsItself(settings: SelfHeatSettings, memory: SelfHeatMemory): boolean | null {
  const { excess, surface, value, answer } = memory;
  if (answer.answer) return value !== null && value >= settings.excess;
  if (Math.min(excess.times.length, surface.times.length) < meansMin) return null;
  const surfacePerMs = meansSlope(surface)?.slope ?? null;
  const excessPerMs = meansSlope(excess)?.slope ?? null;
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
  version: 2,
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
      ...compileDelays(read),
    };
  },
  begin: () => ({
    answer: delayedBegin(),
    excess: meansBegin(),
    surface: meansBegin(),
    value: null,
    at: null,
    slopePerMs: null,
  }),
  stand: answerStand,
  sample(settings, memory, reading, timer) {
    const { judged, input, value } = reading;
    const means = input === 0 ? memory.excess : memory.surface;
    const closed = meansTake(means, settings.windowMs, meansMax, value, judged);
    if (input === 0) {
      memory.value = value;
      memory.at = reading.at;
    }
    // Each reading of the excess may end it, also while it waits for its delay.
    const below = input === 0 && value < settings.excess;
    if (closed || below || (input === 0 && memory.answer.answer)) {
      const says = below ? false : heatsItself(settings, memory);
      if (says !== null) timer.at = delayedSay(settings, memory.answer, says, judged);
    }
    return answered(memory);
  },
  deadline: answerDue,
  /** A slope across unobserved time would be invented; the one it was told by stays. */
  gap(_settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
    meansForget(memory.excess);
    meansForget(memory.surface);
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    meansShift(memory.excess, deltaMs);
    meansShift(memory.surface, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
  },
  migrate: (old, version) => (version === 1 ? fromFirst(old as FirstMemory) : null),
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
