/** What is watched and what is not, in the shape of the wire. */
import type { Coverage, RuleCard } from '#rules/plan/card.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { CoverageView } from '../web/contract.ts';
import { split } from './views.ts';

const leansOn = (marks: readonly string[]): string | null =>
  marks.length === 0
    ? null
    : `Only as far as people write it down: ${marks.map((id) => split(id).name).join(', ')}.`;

const isOver = (fromMs: EpochMs | null, at: EpochMs): boolean => fromMs !== null && at >= fromMs;

/** Signals whose calibration is over at `at`. */
export const overdueCalibrations = (coverage: Coverage, at: EpochMs): string[] =>
  coverage.stations
    .flatMap(({ calibrations }) => calibrations)
    .filter(({ overdueFromMs }) => isOver(overdueFromMs, at))
    .map(({ signal }) => signal);

/** `unjudged`: whether a rule cannot be judged just now. */
export function coverageView(
  coverage: Coverage,
  cards: readonly RuleCard[],
  unjudged: (rule: string) => boolean,
  at: EpochMs,
): CoverageView {
  const stations = coverage.stations.map((each) => {
    const { line, station } = split(each.station);
    const watched = each.watched.map((hazard) => ({
      hazard: hazard.words,
      to_people: hazard.people,
      state: hazard.rules.every(unjudged) ? ('unjudged' as const) : ('watched' as const),
      rules: [...hazard.rules],
      missing: [],
      why: leansOn(hazard.marks),
    }));
    const unwatched = each.unwatched.map((hazard) => ({
      hazard: hazard.words,
      to_people: hazard.people,
      state: 'not-watched' as const,
      rules: [],
      missing: hazard.missing.map(({ signal }) => signal),
      why: hazard.why,
    }));
    return {
      line,
      station,
      kind: each.kind,
      hazards: [...watched, ...unwatched],
      rules: cards
        .filter((card) => card.station === each.station)
        .map(({ id, readiness, needs }) => ({ rule: id, readiness, needs: [...needs] })),
      moot: each.moot.map((rule) => ({ ...rule })),
      calibrations: each.calibrations.map(({ signal, calibrated, lastDay, overdueFromMs }) => ({
        signal,
        calibrated,
        last_day: lastDay,
        overdue: isOver(overdueFromMs, at),
      })),
    };
  });
  const counted = (state: string): number =>
    stations.flatMap(({ hazards }) => hazards).filter((hazard) => hazard.state === state).length;
  return {
    at,
    watched: counted('watched'),
    not_watched: counted('not-watched'),
    unjudged: counted('unjudged'),
    stations,
  };
}
