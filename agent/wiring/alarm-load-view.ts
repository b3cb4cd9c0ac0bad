/**
 * Alarm performance from the occurrences that are kept: of the site or of one line, and by shift;
 * never by person.
 */
import {
  type AlarmLoad,
  type Annunciation,
  alarmLoad,
  loadGuidance,
} from '#rules/alarm/alarm-load.ts';
import { isAnnunciated } from '#rules/alarm/lifecycle.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { shiftsMin } from '#rules/site/shifts.ts';
import { parseOccurrence } from '../alarms/desk.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import type { LoadView } from '../web/load-contract.ts';
import type { LoadQuery } from '../web/ports.ts';
import type { Core } from './core.ts';

const dayMs = 86_400_000;
/** The standard wants so much of it. */
const enoughMs = 30 * dayMs;

export function loadView(core: Core, { sinceMs, untilMs, line }: LoadQuery): LoadView {
  const found = kept(core, sinceMs, untilMs).filter(
    ({ rule }) => line === null || rule.startsWith(`${line}/`),
  );
  const all = found.flatMap(annunciationsOf);
  return {
    since: sinceMs,
    until: untilMs,
    line,
    enough: untilMs - Math.max(sinceMs, beganMs(core, untilMs)) >= enoughMs,
    figures: figuresView(alarmLoad(all, sinceMs, untilMs)),
    guidance,
    shifts: byShift(core, all, sinceMs, untilMs),
    needed: answers(found),
  };
}

/** Since when there is a record at all. */
const beganMs = (core: Core, nowMs: EpochMs): EpochMs =>
  core.store.read.segments()[0]?.judgedFrom ?? nowMs;

/** On disk and at hand, each once as it is now. */
function kept(core: Core, sinceMs: EpochMs, untilMs: EpochMs): Occurrence[] {
  const rows = core.store.read.occurrencesBetween(sinceMs, untilMs).map(parseOccurrence);
  const byId = new Map([...rows, ...core.desk.atHand()].map((each) => [each.id, each]));
  return [...byId.values()];
}

/** Each time somebody was called; an acknowledgement counts for the first. */
function annunciationsOf(occurrence: Occurrence): Annunciation[] {
  const { rule, priority, returned, acknowledged, steps } = occurrence;
  return steps
    .filter(
      ({ transition, to }) =>
        isAnnunciated(to) && ['raised', 'realarmed', 'unshelved', 'released'].includes(transition),
    )
    .map(({ judged }, i) => ({
      rule,
      priority,
      atMs: judged,
      fresh: i === 0,
      returnedMs: returned,
      acknowledgedMs: acknowledged?.at ?? null,
    }));
}

function byShift(
  core: Core,
  all: readonly Annunciation[],
  sinceMs: EpochMs,
  untilMs: EpochMs,
): LoadView['shifts'] {
  const { site } = core.plans.source;
  const begins = shiftsMin(site.shifts);
  const minuteOf = minuteOfDay(site.timezone);
  const days = (untilMs - sinceMs) / dayMs;
  return begins.map((from, i) => {
    const until = begins[i + 1] ?? begins[0]! + 1440;
    const within = (minute: number): boolean =>
      (minute >= from && minute < until) || minute + 1440 < until;
    const told = all.filter(
      ({ atMs }) => atMs >= sinceMs && atMs < untilMs && within(minuteOf(atMs)),
    );
    const hours = (Math.min(until - from, 1440) / 60) * days;
    return { begins_min: from, told: told.length, per_hour: told.length / hours };
  });
}

function minuteOfDay(timezone: string): (atMs: EpochMs) => number {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: timezone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  return (atMs) => {
    const [hour, minute] = format.format(atMs).split(':');
    return Number(hour) * 60 + Number(minute);
  };
}

/** What people said, once it was over, of whether they needed it. */
function answers(found: readonly Occurrence[]): LoadView['needed'] {
  const byRule = Map.groupBy(
    found.filter(({ needed }) => needed !== undefined),
    ({ rule }) => rule,
  );
  return [...byRule].map(([rule, list]) => {
    const yes = list.filter(({ needed }) => needed!.answer).length;
    return { rule, yes, no: list.length - yes };
  });
}

export const figuresView = (load: AlarmLoad): LoadView['figures'] => ({
  told: load.told,
  fresh: load.fresh,
  per_day: load.perDay,
  per_hour: load.perHour,
  per_ten_minutes: load.perTenMinutes,
  most_in_ten_minutes: load.mostInTenMinutes,
  share_of_hours_above_30: load.shareOfHoursAbove30,
  share_of_ten_minutes_above_10: load.shareOfTenMinutesAbove10,
  floods: load.floods.map(({ fromMs, toMs, count }) => ({ from: fromMs, to: toMs, count })),
  share_in_flood: load.shareInFlood,
  top_ten: load.topTen.map((each) => ({ ...each })),
  share_of_top_ten: load.shareOfTopTen,
  chattering: load.chattering.map(({ rule, atMs }) => ({ rule, at: atMs })),
  fleeting: load.fleeting.map((each) => ({ ...each })),
  standing: load.standing.map(({ rule, sinceMs }) => ({ rule, since: sinceMs })),
  by_priority: Object.fromEntries(
    Object.entries(load.byPriority).map(([priority, { count, share, answering }]) => [
      priority,
      {
        count,
        share,
        answered: answering.answered,
        unanswered: answering.unanswered,
        median_ms: answering.medianMs,
        slowest_tenth_ms: answering.slowestTenthMs,
      },
    ]),
  ) as LoadView['figures']['by_priority'],
});

const { perDay, perHour, perTenMinutes, byPriority } = loadGuidance;
export const guidance: LoadView['guidance'] = {
  per_day: perDay,
  per_hour: perHour,
  per_ten_minutes: perTenMinutes,
  most_in_ten_minutes: loadGuidance.mostInTenMinutes,
  share_of_hours_above_30: loadGuidance.shareOfHoursAbove30,
  share_of_ten_minutes_above_10: loadGuidance.shareOfTenMinutesAbove10,
  share_in_flood: loadGuidance.shareInFlood,
  share_of_top_ten: loadGuidance.shareOfTopTen,
  chattering: loadGuidance.chattering,
  standing: loadGuidance.standing,
  by_priority: byPriority,
};
