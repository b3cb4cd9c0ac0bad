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
import { nextAtMinute, wallTime } from '#rules/telling/site-clock.ts';
import { parseOccurrence } from '../alarms/desk.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import type { LoadView } from '../web/load-contract.ts';
import type { LoadQuery } from '../web/ports.ts';
import type { Core } from './core.ts';

const hourMs = 3_600_000;
const dayMs = 86_400_000;
/** The standard wants so much of it. */
const enoughMs = 30 * dayMs;

export function loadView(core: Core, { sinceMs, untilMs, line }: LoadQuery): LoadView {
  const found = kept(core, sinceMs, untilMs).filter(
    ({ rule }) => line === null || rule.startsWith(`${line}/`),
  );
  const all = found.flatMap(annunciationsOf);
  // A rate over days of which there is no record would be too low.
  const fromMs = Math.min(Math.max(sinceMs, beganMs(core, untilMs)), untilMs - 1);
  return {
    since: sinceMs,
    counted_from: fromMs,
    until: untilMs,
    line,
    enough: untilMs - fromMs >= enoughMs,
    figures: figuresView(alarmLoad(all, fromMs, untilMs)),
    guidance,
    shifts: byShift(core, all, fromMs, untilMs),
    needed: answers(found),
  };
}

/** Since when there is a record at all: sealed, else open. */
function beganMs({ store }: Core, nowMs: EpochMs): EpochMs {
  const [sealed] = store.read.segments();
  if (sealed !== undefined) return sealed.judgedFrom;
  for (const { judged } of store.read.inputsAfter(store.sealedSeq, () => undefined)) return judged;
  return nowMs;
}

/** On disk and at hand, each once as it is now. */
function kept(core: Core, sinceMs: EpochMs, untilMs: EpochMs): Occurrence[] {
  const rows = core.store.read.occurrencesBetween(sinceMs, untilMs).map(parseOccurrence);
  const byId = new Map([...rows, ...core.desk.atHand()].map((each) => [each.id, each]));
  return [...byId.values()];
}

/**
 * Each time somebody was called. Whoever answers answers the alarm, be it the first call or a repeat:
 * the first answer counts, and being told again takes it back as little as it makes another alarm.
 */
export function annunciationsOf(occurrence: Occurrence): Annunciation[] {
  const { rule, priority, returned, acknowledged, steps } = occurrence;
  const answer = steps.find(({ transition }) => transition === 'acknowledged');
  const acknowledgedMs = answer?.judged ?? acknowledged?.at ?? null;
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
      acknowledgedMs,
    }));
}

/** Told within each shift, and an hour of the hours of it that the span holds. */
function byShift(
  core: Core,
  all: readonly Annunciation[],
  fromMs: EpochMs,
  untilMs: EpochMs,
): LoadView['shifts'] {
  const { site } = core.plans.source;
  const begins = shiftsMin(site.shifts);
  const sums = begins.map(() => ({ told: 0, hours: 0 }));
  let atMs = fromMs;
  let now = shiftAt(begins, wallTime(fromMs, site.timezone).minute);
  while (atMs < untilMs) {
    const next = (now + 1) % begins.length;
    const endMs = Math.min(nextAtMinute(atMs, begins[next]!, site.timezone), untilMs);
    const told = all.filter((one) => one.atMs >= atMs && one.atMs < endMs).length;
    const sum = sums[now]!;
    sums[now] = { told: sum.told + told, hours: sum.hours + (endMs - atMs) / hourMs };
    [atMs, now] = [endMs, next];
  }
  return sums.map(({ told, hours }, i) => ({
    begins_min: begins[i]!,
    told,
    hours,
    per_hour: hours === 0 ? 0 : told / hours,
  }));
}

/** The shift of a minute of the day; before the first begins, the last one of the day before. */
function shiftAt(begins: readonly number[], minute: number): number {
  const at = begins.findLastIndex((from) => from <= minute);
  return at < 0 ? begins.length - 1 : at;
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
