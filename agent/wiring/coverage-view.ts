/** What is watched and what is not, in the shape of the wire. */
import type { Coverage, RuleCard } from '#rules/plan/card.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { CoverageView } from '../web/contract.ts';
import { split } from './views.ts';

const leansOn = (marks: readonly string[]): string | null =>
  marks.length === 0
    ? null
    : `Only as far as people write it down: ${marks.map((id) => split(id).name).join(', ')}.`;

function stateOf(
  rules: readonly string[],
  unjudged: (rule: string) => boolean,
  off: (rule: string) => string | null,
): 'not-watched' | 'unjudged' | 'watched' {
  if (offWords(rules, off) !== null) return 'not-watched';
  return rules.every(unjudged) ? 'unjudged' : 'watched';
}

/** Where every rule that watches it is off: the first, and why. */
function offWords(rules: readonly string[], off: (rule: string) => string | null): string | null {
  const [first] = rules;
  if (first === undefined || rules.some((rule) => off(rule) === null)) return null;
  return `${first} is not judged: ${off(first)}`;
}

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
  /** Why a rule is not judged, where the file of its kind is off. */
  off: (rule: string) => string | null = () => null,
): CoverageView {
  const stations = coverage.stations.map((each) => {
    const { line, station } = split(each.station);
    const watched = each.watched.map((hazard) => ({
      hazard: hazard.words,
      to_people: hazard.people,
      state: stateOf(hazard.rules, unjudged, off),
      rules: [...hazard.rules],
      missing: [],
      why: offWords(hazard.rules, off) ?? leansOn(hazard.marks),
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
