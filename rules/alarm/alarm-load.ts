/**
 * Alarm performance over a span: are there more alarms than people can answer, and which?
 *
 * Figures and guidance of ISA-18.2 / IEC 62682, clause "monitoring and assessment" (targets from
 * memory and public summaries; the standard wants 30 days or more). Never by person: a figure of a
 * person makes people acknowledge unread.
 */
import type { EpochMs } from '../signal/sample.ts';
import { chatteredAt, type Flood, floods } from './flood.ts';
import { fleetingMs } from './nuisance.ts';
import type { Priority } from './priority.ts';

const tenMinutesMs = 600_000;
const hourMs = 3_600_000;
const dayMs = 86_400_000;

/** One annunciation: an alarm was told, or told again. */
export interface Annunciation {
  readonly rule: string;
  readonly priority: Priority;
  readonly atMs: EpochMs;
  /** False where the same occurrence was told again. */
  readonly fresh: boolean;
  /** When the condition went; null while it holds. */
  readonly returnedMs: EpochMs | null;
  /** When somebody first had it; null while nobody has. */
  readonly acknowledgedMs: EpochMs | null;
}

/** What the standard calls very likely acceptable, and the most that can be managed. */
export const loadGuidance = {
  perDay: { acceptable: 144, manageable: 288 },
  perHour: { acceptable: 6, manageable: 12 },
  perTenMinutes: { acceptable: 1, manageable: 2 },
  mostInTenMinutes: 10,
  shareOfHoursAbove30: 0.01,
  shareOfTenMinutesAbove10: 0.01,
  shareInFlood: 0.01,
  shareOfTopTen: 0.05,
  chattering: 0,
  standing: 5,
  byPriority: { high: 0.05, medium: 0.15, low: 0.8 },
} as const;

export { fleetingMs } from './nuisance.ts';
/** Longer than this an alarm is standing. */
export const standingMs = dayMs;

export interface Answering {
  readonly answered: number;
  readonly unanswered: number;
  /** Of those answered; null where none was. */
  readonly medianMs: number | null;
  readonly slowestTenthMs: number | null;
}

export interface AlarmLoad {
  readonly fromMs: EpochMs;
  readonly untilMs: EpochMs;
  readonly told: number;
  /** Of those, told for the first time. */
  readonly fresh: number;
  readonly perDay: number;
  readonly perHour: number;
  readonly perTenMinutes: number;
  readonly mostInTenMinutes: number;
  readonly shareOfHoursAbove30: number;
  readonly shareOfTenMinutesAbove10: number;
  readonly floods: readonly Flood[];
  readonly shareInFlood: number;
  readonly topTen: readonly {
    readonly rule: string;
    readonly count: number;
    readonly share: number;
  }[];
  readonly shareOfTopTen: number;
  readonly chattering: readonly { readonly rule: string; readonly atMs: EpochMs }[];
  readonly fleeting: readonly { readonly rule: string; readonly count: number }[];
  /** Rules that stood for longer than a day by the end, longest first. */
  readonly standing: readonly { readonly rule: string; readonly sinceMs: EpochMs }[];
  readonly byPriority: Readonly<
    Record<
      Priority,
      { readonly count: number; readonly share: number; readonly answering: Answering }
    >
  >;
}

/**
 * Figures of [`fromMs`, `untilMs`). `all` may reach beyond on both sides: what was raised before
 * and still stands counts as standing alone. Hours and ten minutes are counted from `fromMs`; a
 * part of one at the end counts as a whole one. Throws RangeError where the span is empty.
 */
export function alarmLoad(
  all: readonly Annunciation[],
  fromMs: EpochMs,
  untilMs: EpochMs,
): AlarmLoad {
  if (!(untilMs > fromMs)) throw new RangeError('the span must end after it begins');
  const told = all
    .filter(({ atMs }) => atMs >= fromMs && atMs < untilMs)
    .sort((a, b) => a.atMs - b.atMs);
  const fresh = told.filter((one) => one.fresh);
  const timesMs = told.map(({ atMs }) => atMs);
  const spanMs = untilMs - fromMs;
  const found = floods(timesMs, untilMs);
  const byRule = Map.groupBy(fresh, ({ rule }) => rule);
  const topTen = top(byRule, fresh.length);
  return {
    fromMs,
    untilMs,
    told: told.length,
    fresh: fresh.length,
    perDay: (told.length * dayMs) / spanMs,
    perHour: (told.length * hourMs) / spanMs,
    perTenMinutes: (told.length * tenMinutesMs) / spanMs,
    mostInTenMinutes: mostWithin(timesMs, tenMinutesMs),
    shareOfHoursAbove30: shareAbove(timesMs, fromMs, untilMs, hourMs, 30),
    shareOfTenMinutesAbove10: shareAbove(timesMs, fromMs, untilMs, tenMinutesMs, 10),
    floods: found,
    shareInFlood: sum(found.map((flood) => (flood.toMs ?? untilMs) - flood.fromMs)) / spanMs,
    topTen,
    shareOfTopTen: sum(topTen.map(({ share }) => share)),
    chattering: chattering(byRule),
    fleeting: fleeting(byRule),
    standing: standing(all, untilMs),
    byPriority: {
      high: ofPriority(told, 'high'),
      medium: ofPriority(told, 'medium'),
      low: ofPriority(told, 'low'),
    },
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);

type ByRule = ReadonlyMap<string, readonly Annunciation[]>;

const byCount = (a: { count: number; rule: string }, b: { count: number; rule: string }): number =>
  b.count - a.count || (a.rule < b.rule ? -1 : 1);

const top = (byRule: ByRule, of: number): AlarmLoad['topTen'] =>
  [...byRule]
    .map(([rule, list]) => ({ rule, count: list.length, share: list.length / of }))
    .sort(byCount)
    .slice(0, 10);

function mostWithin(timesMs: readonly EpochMs[], windowMs: number): number {
  let most = 0;
  let first = 0;
  for (const [i, atMs] of timesMs.entries()) {
    while (timesMs[first]! <= atMs - windowMs) first += 1;
    most = Math.max(most, i - first + 1);
  }
  return most;
}

function shareAbove(
  timesMs: readonly EpochMs[],
  fromMs: EpochMs,
  untilMs: EpochMs,
  periodMs: number,
  above: number,
): number {
  const periods = Math.ceil((untilMs - fromMs) / periodMs);
  const counts = new Map<number, number>();
  for (const atMs of timesMs) {
    const period = Math.floor((atMs - fromMs) / periodMs);
    counts.set(period, (counts.get(period) ?? 0) + 1);
  }
  return [...counts.values()].filter((count) => count > above).length / periods;
}

const chattering = (byRule: ByRule): AlarmLoad['chattering'] =>
  [...byRule].flatMap(([rule, list]) => {
    const atMs = chatteredAt(list.map((one) => one.atMs));
    return atMs === null ? [] : [{ rule, atMs }];
  });

/** Gone within a minute, before anybody answered. */
export const isFleeting = (one: Annunciation): boolean =>
  one.returnedMs !== null &&
  one.returnedMs - one.atMs < fleetingMs &&
  (one.acknowledgedMs === null || one.acknowledgedMs > one.returnedMs);

const fleeting = (byRule: ByRule): AlarmLoad['fleeting'] =>
  [...byRule]
    .map(([rule, list]) => ({ rule, count: list.filter(isFleeting).length }))
    .filter(({ count }) => count > 0)
    .sort(byCount);

function standing(all: readonly Annunciation[], untilMs: EpochMs): AlarmLoad['standing'] {
  const sinceMs = new Map<string, EpochMs>();
  for (const one of all) {
    const over = one.returnedMs !== null && one.returnedMs <= untilMs;
    if (!one.fresh || over || untilMs - one.atMs <= standingMs) continue;
    sinceMs.set(one.rule, Math.min(one.atMs, sinceMs.get(one.rule) ?? one.atMs));
  }
  return [...sinceMs]
    .map(([rule, since]) => ({ rule, sinceMs: since }))
    .sort((a, b) => a.sinceMs - b.sinceMs);
}

function ofPriority(told: readonly Annunciation[], priority: Priority) {
  const list = told.filter((one) => one.priority === priority);
  const first = list.filter((one) => one.fresh);
  const waitsMs = first
    .flatMap(({ atMs, acknowledgedMs }) => (acknowledgedMs === null ? [] : [acknowledgedMs - atMs]))
    .sort((a, b) => a - b);
  return {
    count: list.length,
    share: told.length === 0 ? 0 : list.length / told.length,
    answering: {
      answered: waitsMs.length,
      unanswered: first.length - waitsMs.length,
      medianMs: nearestRank(waitsMs, 0.5),
      slowestTenthMs: nearestRank(waitsMs, 0.9),
    },
  };
}

/** Nearest-rank quantile of ascending values; null of none. */
const nearestRank = (sorted: readonly number[], share: number): number | null =>
  sorted.length === 0 ? null : sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)]!;
