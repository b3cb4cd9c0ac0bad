/** What is watched and what is not, in the shape of the wire. */
import type { Coverage, RuleCard } from '#rules/plan/card.ts';
import { notHeardYet } from '#rules/plan/coverage.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { AsideView } from '../web/aside-contract.ts';
import type { CoverageView } from '../web/contract.ts';
import { split } from './views.ts';

const leansOn = (marks: readonly string[]): string[] | null =>
  marks.length === 0
    ? null
    : [`Only as far as people write it down: ${marks.map((id) => split(id).name).join(', ')}.`];

/** What is true of a rule just now. */
export interface RuleNow {
  /** Why its kind is not asked, where the file of its kind is off. */
  readonly off: string | null;
  /** Nobody is told of it: shelved, suppressed by design, out of service. */
  readonly aside: AsideView | null;
  /** Signals it needs that have never been heard. */
  readonly unheard: readonly { readonly signal: string; readonly says: string }[];
  /** It judges all the same. */
  readonly judges: boolean;
  /** A reading it needs is lost or not usable. */
  readonly unjudged: boolean;
  /** Those of its signals that have no usable reading now. */
  readonly unread: readonly string[];
  /** Topics of places it would judge, had no other topic their name. */
  readonly nameTaken: readonly { readonly topic: string; readonly says: string }[];
}

/** A rule that judges and is told of. */
const watches = ({ off, aside, judges }: RuleNow): boolean =>
  off === null && aside === null && judges;

function stateOf(rules: readonly RuleNow[]): 'not-watched' | 'unjudged' | 'watched' {
  const at = rules.filter(watches);
  if (at.length === 0) return 'not-watched';
  // One place that is judged does not stand for the others.
  return at.some(({ unjudged }) => unjudged) ? 'unjudged' : 'watched';
}

type Unread = NonNullable<HazardView['unread']>;

/** Rules that would watch and have no usable reading now. */
const unreadOf = (ids: readonly string[], rules: readonly RuleNow[]): Unread =>
  rules.flatMap((rule, i) =>
    watches(rule) && rule.unjudged ? [{ rule: ids[i]!, signals: [...rule.unread] }] : [],
  );

const unreadWords = ({ rule, signals }: Unread[number]): string =>
  `${rule} is not judged now${signals.length === 0 ? '' : `: no usable reading of ${signals.join(', ')}`}.`;

const takenOf = (rules: readonly RuleNow[]): string[] => [
  ...new Set(rules.flatMap(({ nameTaken }) => nameTaken.map(({ topic }) => topic))),
];

const text = (at: EpochMs): string => new Date(at).toISOString();

/** Who put it aside, since when, until when and why. */
function asideWords({ rule, state, by, since, until, reason }: AsideView): string {
  const who = by === null ? [] : [`put there by ${by}`];
  const from = since === null ? [] : [`since ${text(since)}`];
  const to =
    until !== null
      ? [`until ${text(until)}`]
      : state === 'out-of-service'
        ? ['until somebody brings it back']
        : [];
  const facts = [...who, ...from, ...to].join(', ');
  return `${rule} is ${state.replaceAll('-', ' ')}: ${facts}${reason === '' ? '' : `: ${reason}`}.`;
}

/** Everything that keeps one of these rules from watching, each thing once. */
function whyNot(ids: readonly string[], rules: readonly RuleNow[]): string[] {
  const words = rules.flatMap(({ off, aside, unheard, nameTaken }, i) => [
    ...(off === null ? [] : [`${ids[i]} is not judged: ${off}`]),
    ...(aside === null ? [] : [asideWords(aside)]),
    ...[...unheard, ...nameTaken].map(({ says }) => says),
  ]);
  return [...new Set([...words, ...unreadOf(ids, rules).map(unreadWords)])];
}

const shortAside = ({ rule, state, by, reason, since, until }: AsideView) => ({
  rule,
  state,
  by,
  reason,
  since,
  until,
});

type Station = Coverage['stations'][number];
type HazardView = CoverageView['stations'][number]['hazards'][number];

const signalsOf = (rules: readonly RuleNow[]): string[] => [
  ...new Set(rules.flatMap(({ unheard }) => unheard.map(({ signal }) => signal))),
];

/** Rules of a hazard that wait for the first place of a wildcard. */
const waitingFor = ({ waiting }: Station, hazard: string): string[] =>
  waiting.filter((each) => each.hazard === hazard).map(({ rule }) => rule);

function unwatchedView(
  hazard: Station['unwatched'][number],
  waiting: readonly string[],
  ruleNow: (rule: string) => RuleNow,
): HazardView {
  const rules = waiting.map(ruleNow);
  const silent = whyNot(waiting, rules);
  const known = silent.length > 0 && hazard.why === notHeardYet ? [] : [hazard.why];
  return {
    hazard: hazard.words,
    to_people: hazard.people,
    state: 'not-watched',
    rules: [],
    missing: hazard.missing.map(({ signal }) => signal),
    unheard: signalsOf(rules),
    why: [...known, ...silent].join(' '),
  };
}

function watchedView(
  hazard: Station['watched'][number],
  waiting: readonly string[],
  ruleNow: (rule: string) => RuleNow,
): HazardView {
  const ids = [...hazard.rules, ...waiting];
  const rules = ids.map(ruleNow);
  const why = [...whyNot(ids, rules), ...(leansOn(hazard.marks) ?? [])];
  return {
    hazard: hazard.words,
    to_people: hazard.people,
    state: stateOf(rules),
    rules: [...hazard.rules],
    missing: [],
    unheard: signalsOf(rules),
    unread: unreadOf(ids, rules),
    name_taken: takenOf(rules),
    aside: rules.flatMap(({ aside }) => (aside === null ? [] : [shortAside(aside)])),
    why: why.length === 0 ? null : why.join(' '),
  };
}

const isOver = (fromMs: EpochMs | null, at: EpochMs): boolean => fromMs !== null && at >= fromMs;

/** Signals whose calibration is over at `at`. */
export const overdueCalibrations = (coverage: Coverage, at: EpochMs): string[] =>
  coverage.stations
    .flatMap(({ calibrations }) => calibrations)
    .filter(({ overdueFromMs }) => isOver(overdueFromMs, at))
    .map(({ signal }) => signal);

/** `ruleNow`: of an armed rule. `noValue`: why a derived signal has no usable value; null where it has. */
export function coverageView(
  coverage: Coverage,
  cards: readonly RuleCard[],
  ruleNow: (rule: string) => RuleNow,
  at: EpochMs,
  noValue: (signal: string) => string | null,
): CoverageView {
  const stations = coverage.stations.map((each) => {
    const { line, station } = split(each.station);
    const watched = each.watched.map((hazard) =>
      watchedView(hazard, waitingFor(each, hazard.hazard), ruleNow),
    );
    const unwatched = each.unwatched.map((hazard) =>
      unwatchedView(hazard, waitingFor(each, hazard.hazard), ruleNow),
    );
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
      worked_out: each.workedOut.map(({ signal, kind, from, needs }) => {
        const why = noValue(signal);
        return { signal, kind, from: [...from], needs: [...needs], now: why === null, why };
      }),
      not_worked_out: each.notWorkedOut.map(({ signal, needs }) => ({
        signal,
        needs: [...needs],
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
