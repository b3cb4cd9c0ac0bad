/**
 * Heat dose of a metal part: how long it was at or above a temperature, how hot it became, how fast,
 * and whether a minimum can still be met.
 *
 * Between two readings the temperature is taken to run straight from one to the other; the
 * crossing is interpolated. By definition, no source. Equivalent minutes at a reference temperature
 * are in heat-equivalent.ts.
 */
import type { Subject } from './subject.ts';

/**
 * Milliseconds at or above `limit` on the straight line from (`fromMs`, `from`) to (`toMs`, `to`).
 * Times in ms, `toMs` not before `fromMs`; temperatures and limit in one unit; 0 to toMs - fromMs.
 */
export function msAtOrAbove(
  fromMs: number,
  from: number,
  toMs: number,
  to: number,
  limit: number,
): number {
  const span = toMs - fromMs;
  if (from >= limit && to >= limit) return span;
  if (from < limit && to < limit) return 0;
  const share = (Math.max(from, to) - limit) / Math.abs(to - from);
  return span * share;
}

/** Readings of one metal temperature through one run: times strictly ascending, both finite. */
export interface Profile {
  readonly timesMs: readonly number[];
  readonly metalC: readonly number[];
}

/** At least one reading, lists of one length, times ascending, all finite. */
export function soundProfile({ timesMs, metalC }: Profile): boolean {
  if (timesMs.length === 0 || timesMs.length !== metalC.length) return false;
  return timesMs.every(
    (at, i) =>
      Number.isFinite(at) && Number.isFinite(metalC[i]!) && (i === 0 || at > timesMs[i - 1]!),
  );
}

/** Milliseconds of a whole profile at or above `limitC`; null for a profile that is not sound. */
export function profileMsAtOrAbove(profile: Profile, limitC: number): number | null {
  if (!soundProfile(profile) || !Number.isFinite(limitC)) return null;
  const { timesMs, metalC } = profile;
  let sum = 0;
  for (let i = 1; i < timesMs.length; i += 1)
    sum += msAtOrAbove(timesMs[i - 1]!, metalC[i - 1]!, timesMs[i]!, metalC[i]!, limitC);
  return sum;
}

/** The hottest reading, °C; null for a profile that is not sound. */
export const peakC = (profile: Profile): number | null =>
  soundProfile(profile) ? profile.metalC.reduce((a, b) => Math.max(a, b)) : null;

const minuteMs = 60_000;

/**
 * Steepest rise of one whole minute's mean over the minute's before, K/min; negative where it only
 * cools. Means are of the straight lines, over minutes counted from the first reading. Null for a
 * profile that is not sound or shorter than two minutes.
 */
export function steepestRampKPerMin(profile: Profile): number | null {
  if (!soundProfile(profile)) return null;
  const { timesMs } = profile;
  const first = timesMs[0]!;
  const minutes = Math.floor((timesMs.at(-1)! - first) / minuteMs);
  let steepest: number | null = null;
  let before = minutes >= 2 ? meanC(profile, first, first + minuteMs) : 0;
  for (let m = 1; m < minutes; m += 1) {
    const mean = meanC(profile, first + m * minuteMs, first + (m + 1) * minuteMs);
    steepest = Math.max(steepest ?? Number.NEGATIVE_INFINITY, mean - before);
    before = mean;
  }
  return steepest;
}

/** Mean of the straight lines between two times within the profile. */
function meanC({ timesMs, metalC }: Profile, fromMs: number, toMs: number): number {
  let area = 0;
  for (let i = 1; i < timesMs.length; i += 1) {
    const a = Math.max(fromMs, timesMs[i - 1]!);
    const b = Math.min(toMs, timesMs[i]!);
    if (b <= a) continue;
    const slope = (metalC[i]! - metalC[i - 1]!) / (timesMs[i]! - timesMs[i - 1]!);
    const middle = metalC[i - 1]! + slope * ((a + b) / 2 - timesMs[i - 1]!);
    area += middle * (b - a);
  }
  return area / (toMs - fromMs);
}

/** What a part has been through before rubber: preheat, primer bake, drying, re-bake, minutes in the hot mould. */
export interface Heat {
  readonly name: string;
  /** Equivalent minutes, or minutes above; null where nobody saw it. */
  readonly minutes: number | null;
}

export interface HeatSum {
  /** Of what was seen: with anything unseen, at least this. */
  readonly minutes: number;
  /** Names of the heats nobody saw. */
  readonly unseen: readonly string[];
}

/**
 * Every heat before rubber, summed. A heat that nobody saw is named and counts nothing, so the sum is
 * then a least figure: enough to find a part over its dose, never to pass one. Null where a figure
 * is negative or not finite.
 */
export function sumOfHeats(heats: readonly Heat[]): HeatSum | null {
  const seen = heats.flatMap(({ minutes }) => (minutes === null ? [] : [minutes]));
  if (!seen.every((minutes) => minutes >= 0 && Number.isFinite(minutes))) return null;
  const minutes = seen.reduce((sum, each) => sum + each, 0);
  const unseen = heats.filter((heat) => heat.minutes === null).map(({ name }) => name);
  return Number.isFinite(minutes) ? { minutes, unseen } : null;
}

/**
 * The earliest moment from which a minimum can no longer be met, ms: exit - missing, for a part that
 * is not yet hot. `toReachMs` is the least time the part still needs to become hot (heating.ts,
 * timeToReachS): 0 where it is hot or where nobody knows. 'met' where nothing is missing. A moment
 * before `nowMs` means: already too late. Times finite, none but `nowMs` and `exitMs` negative; null
 * outside.
 */
export function unreachableFromMs(
  nowMs: number,
  exitMs: number,
  requiredMs: number,
  reachedMs: number,
  toReachMs: number | 'never',
): number | 'met' | null {
  if (![nowMs, exitMs].every(Number.isFinite)) return null;
  if (!(requiredMs >= 0 && reachedMs >= 0)) return null;
  if (!Number.isFinite(requiredMs) || !Number.isFinite(reachedMs)) return null;
  const missing = requiredMs - reachedMs;
  if (missing <= 0) return 'met';
  if (toReachMs === 'never') return nowMs;
  if (!(toReachMs >= 0 && Number.isFinite(toReachMs))) return null;
  return exitMs - missing - toReachMs;
}

export const subject: Subject = {
  title: 'Heat dose',
  about:
    'Time at or above a temperature, peak, ramp, the sum over every heat before rubber, and when a minimum is out of reach. Metal temperature only: oven air leads it by tens of kelvin. Drying, pre-bake and cure are three different heats and are never counted for one another.',
  symbols: {
    T: 'metal temperature, °C',
    L: 'limit, °C',
    t: 'time, ms',
    M: 'time required at or above L, ms',
    S: 'time reached, ms',
    E: 'exit from the oven, ms',
    W: 'least time until the part is hot, ms',
  },
  source: 'By definition. The minutes and temperatures themselves: the material data sheet.',
  uncertainty:
    'Exact for readings joined by straight lines; the thermocouple and its place on the part decide.',
  functions: {
    msAtOrAbove: {
      formula: 'the part of the straight line that is at or above L',
      range: 'Finite, times not descending; 0 to the whole span.',
    },
    soundProfile: {
      formula: 'at least one reading, times strictly ascending, all finite',
      range: 'Any.',
    },
    profileMsAtOrAbove: {
      formula: 'sum of the parts of the straight lines at or above L',
      range: 'A sound profile; nothing else.',
    },
    peakC: { formula: 'max T', range: 'A sound profile; nothing else.' },
    steepestRampKPerMin: {
      formula: 'max over minutes m of mean T(m) - mean T(m - 1)',
      range: 'A sound profile of two minutes or more; nothing else.',
    },
    sumOfHeats: {
      formula: 'sum of minutes; heats nobody saw are named and count nothing',
      range: 'Minutes 0 or more; nothing outside. With anything unseen the sum is a least figure.',
    },
    unreachableFromMs: {
      formula: 'E - (M - S) - W',
      range: 'Finite; "met" where M is reached; now where the part never becomes hot.',
    },
  },
};
