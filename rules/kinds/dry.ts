/**
 * `dry`: a load's heat in the oven within two sides, on metal temperature.
 *
 * Least: so long at or above a temperature. Once what is left before the exit is shorter than what
 * is still missing, it is told; without a dwell the exit itself tells. Most: a peak, and so long
 * at or above an upper temperature. A load enters and leaves by the second input (1 and 0); the
 * answer stands from then until the next load enters. Time not observed counts as not heated.
 */
import { z } from 'zod/mini';
import { msAtOrAbove } from '../process/heat-dose.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Evidence, Reading, RuleKind, Severity, Timer } from './kind.ts';
import { durationSetting, quantitySetting, type SettingsReader } from './settings.ts';

const loadedFrom = 0.5;

/** A time at or above a temperature. */
export interface Heat {
  readonly fromC: number;
  readonly ms: number;
}

export interface DrySettings {
  /** At or above this for at least so long. */
  readonly least: Heat | null;
  /** From entry to exit; null where nobody said. */
  readonly dwellMs: number | null;
  /** Never above this. */
  readonly peak: number | null;
  /** At or above this for at most so long. */
  readonly most: Heat | null;
}

export interface DryMemory {
  /** When the load entered; null while the oven is empty. */
  enteredAt: EpochMs | null;
  /** When the load before, or this one, entered: what the answer is about. */
  aboutAt: EpochMs | null;
  leastMs: number;
  mostMs: number;
  peak: number | null;
  value: number | null;
  at: EpochMs | null;
  /** When the last reading of the metal was judged; null before the first and across a gap. */
  seenAt: EpochMs | null;
  under: boolean;
  over: boolean;
  /** What was left before the exit when it was told. */
  leftMs: number;
}

const written = z.strictObject({
  above: z.optional(quantitySetting('Metal temperature at which the coat dries.')),
  above_for: z.optional(durationSetting('Least time the metal must spend at or above it.')),
  dwell: z.optional(
    durationSetting(
      'Time a load takes from entry to exit; with it, a load that can no longer make its time is told before it leaves.',
    ),
  ),
  peak: z.optional(quantitySetting('Highest temperature the metal may reach.')),
  upper: z.optional(quantitySetting('Metal temperature that begins to harm the coat.')),
  upper_for: z.optional(durationSetting('Longest time the metal may spend at or above it.')),
});

function heatOf(read: SettingsReader, temperature: string, time: string): Heat | null {
  const limit = read.limit(temperature);
  if (limit === null && !read.has(time)) return null;
  if (limit !== null && read.has(time)) return { fromC: limit, ms: read.duration(time, 0) };
  if (!read.has(temperature) || !read.has(time))
    read.report({
      path: [limit === null ? time : temperature],
      problem: `${temperature} and ${time} belong together`,
      fix: 'give the temperature and the time at or above it',
    });
  return null;
}

function compile(read: SettingsReader): DrySettings {
  const least = heatOf(read, 'above', 'above_for');
  const most = heatOf(read, 'upper', 'upper_for');
  const peak = read.limit('peak');
  const dwellMs = read.has('dwell') ? read.duration('dwell', 0) : null;
  if (!['above', 'peak', 'upper'].some((key) => read.has(key)))
    read.report({
      path: [],
      problem: 'a drying without a least and a most judges nothing',
      fix: 'give above and above_for, or peak, or upper and upper_for',
    });
  if (least !== null && least.ms === 0)
    read.report({
      path: ['above_for'],
      problem: 'no time at all is reached by every load',
      fix: 'give the time the data sheet asks for, as "10 min"',
    });
  if (least !== null && dwellMs !== null && dwellMs < least.ms)
    read.report({
      path: ['dwell'],
      problem: 'a load would leave before it could be dry',
      fix: 'make it longer than above_for',
    });
  if (least !== null && peak !== null && peak <= least.fromC)
    read.report({
      path: ['peak'],
      problem: 'a load that is dry would be over its peak',
      fix: 'make it higher than above',
    });
  return { least, dwellMs, peak, most };
}

const begun = (): DryMemory => ({
  enteredAt: null,
  aboutAt: null,
  leastMs: 0,
  mostMs: 0,
  peak: null,
  value: null,
  at: null,
  seenAt: null,
  under: false,
  over: false,
  leftMs: 0,
});

const severity = (settings: DrySettings, memory: DryMemory): Severity =>
  memory.over ? (settings.least === null ? 1 : 2) : memory.under ? 1 : 0;

function enter(memory: DryMemory, at: EpochMs): void {
  Object.assign(memory, begun(), { enteredAt: at, aboutAt: at });
}

/** The load leaves: what it has not reached it will not. */
function leave(settings: DrySettings, memory: DryMemory): void {
  memory.enteredAt = null;
  memory.seenAt = null;
  if (settings.least !== null && memory.leastMs < settings.least.ms) tellUnder(memory, 0);
}

function tellUnder(memory: DryMemory, leftMs: number): void {
  if (!memory.under) memory.leftMs = leftMs;
  memory.under = true;
}

function heat(settings: DrySettings, memory: DryMemory, reading: Reading): void {
  const { value, judged } = reading;
  const { least, most, peak } = settings;
  if (memory.seenAt !== null && memory.value !== null) {
    const { seenAt, value: before } = memory;
    if (least !== null) memory.leastMs += msAtOrAbove(seenAt, before, judged, value, least.fromC);
    if (most !== null) memory.mostMs += msAtOrAbove(seenAt, before, judged, value, most.fromC);
  }
  memory.value = value;
  memory.at = reading.at;
  memory.seenAt = judged;
  memory.peak = memory.peak === null ? value : Math.max(memory.peak, value);
  if (peak !== null && value > peak) memory.over = true;
}

/** Judges what is known at `now`, and answers when it would otherwise be told. */
function judge(settings: DrySettings, memory: DryMemory, now: EpochMs): EpochMs | null {
  const { least, most, dwellMs } = settings;
  const { enteredAt, value, seenAt } = memory;
  if (enteredAt === null) return null;
  let due: EpochMs | null = null;
  const hot = (limit: number): boolean => seenAt !== null && value !== null && value >= limit;
  if (most !== null && !memory.over) {
    // While it stays hot the time since the last reading counts too.
    const since = hot(most.fromC) ? now - seenAt! : 0;
    if (memory.mostMs + since > most.ms) memory.over = true;
    else if (hot(most.fromC)) due = now + Math.floor(most.ms - memory.mostMs - since) + 1;
  }
  if (least === null) return due;
  const since = hot(least.fromC) ? now - seenAt! : 0;
  const missing = least.ms - memory.leastMs - since;
  if (missing <= 0) memory.under = false;
  if (dwellMs === null || missing <= 0) return due;
  const leftMs = enteredAt + dwellMs - now;
  if (leftMs < missing) tellUnder(memory, Math.max(0, leftMs));
  else if (!hot(least.fromC)) due = sooner(due, now + Math.floor(leftMs - missing) + 1);
  return due;
}

const sooner = (a: EpochMs | null, b: EpochMs): EpochMs => (a === null ? b : Math.min(a, b));

function sample(
  settings: DrySettings,
  memory: DryMemory,
  reading: Reading,
  timer: Timer,
): Severity {
  const { judged } = reading;
  if (reading.input === 0) {
    if (memory.enteredAt !== null) heat(settings, memory, reading);
    else {
      memory.value = reading.value;
      memory.at = reading.at;
    }
  } else if (reading.value >= loadedFrom && memory.enteredAt === null) enter(memory, judged);
  else if (reading.value < loadedFrom && memory.enteredAt !== null) leave(settings, memory);
  timer.at = judge(settings, memory, judged);
  return severity(settings, memory);
}

function evidence(settings: DrySettings, memory: DryMemory): Evidence {
  const { least, most, peak } = settings;
  const about = {
    ...(memory.at === null ? {} : { at: memory.at }),
    ...(memory.aboutAt === null ? {} : { sinceMs: memory.aboutAt }),
  };
  if (!memory.over)
    return {
      ...about,
      side: 'low',
      ...(memory.value === null ? {} : { value: memory.value }),
      ...(least === null
        ? {}
        : {
            limit: least.fromC,
            reachedMs: Math.round(memory.leastMs),
            requiredMs: least.ms,
            leftMs: memory.leftMs,
          }),
    };
  const byPeak = peak !== null && memory.peak !== null && memory.peak > peak;
  const limit = byPeak ? peak : (most?.fromC ?? null);
  return {
    ...about,
    side: 'high',
    ...(memory.peak === null ? {} : { value: memory.peak }),
    ...(limit === null ? {} : { limit }),
    ...(most === null ? {} : { reachedMs: Math.round(memory.mostMs), requiredMs: most.ms }),
  };
}

export const dry: RuleKind<DrySettings, DryMemory> = {
  name: 'dry',
  version: 1,
  summary:
    'Whether the metal of a load was hot enough for long enough in the oven, and not too hot or too long.',
  written,
  takes: { least: 2, most: 2, units: ['Cel', '1'], roles: ['the metal', '1 while loaded'] },
  compile,
  begin: begun,
  sample,
  deadline(settings, memory, at, timer) {
    timer.at = judge(settings, memory, at);
    return severity(settings, memory);
  },
  /** The oven went on meanwhile, so the exit does not move; nobody saw whether the metal was hot. */
  gap(settings, memory, _fromMs, toMs, timer) {
    memory.seenAt = null;
    const { enteredAt } = memory;
    const { least, dwellMs } = settings;
    timer.at =
      enteredAt === null || least === null || dwellMs === null || memory.leastMs >= least.ms
        ? null
        : Math.max(toMs + 1, enteredAt + dwellMs - Math.ceil(least.ms - memory.leastMs) + 1);
  },
  shift(memory, deltaMs) {
    for (const key of ['enteredAt', 'aboutAt', 'at', 'seenAt'] as const) {
      const at = memory[key];
      if (at !== null) memory[key] = at + deltaMs;
    }
  },
  evidence,
  sentence: (evidence) =>
    evidence.side === 'low'
      ? '{$signal}: {$reached} at or above {$limit}, {$required} needed, and {$left} left before exit.'
      : '{$signal} reached {$value}; {$limit} may not be passed, or not for so long.',
};
