/** Which hazards of a station are watched, which are not and why. */
import type { Hazard, RuleTemplate, StationSignal } from '../stations/station.ts';
import type {
  RuleCard,
  StationCoverage,
  UnwatchedHazard,
  WaitingRule,
  WatchedHazard,
} from './card.ts';
import { idOf, type SignalDraft, type StationDraft } from './draft.ts';
import type { StationRules } from './station-rules.ts';

/** Why a hazard goes unwatched whose rules wait for their first reading alone. */
export const notHeardYet = 'Its sensors have not been heard yet.';

export function coverStation(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  found: StationRules,
  cards: readonly RuleCard[],
): StationCoverage {
  const watched: WatchedHazard[] = [];
  const unwatched: UnwatchedHazard[] = [];
  const hazards = [...station.kind.hazards, ...ownHazards(station, found)];
  for (const hazard of hazards) {
    const { id, words, people } = hazard;
    const armed = cards.filter((card) => card.hazard === id && card.readiness !== 'not-armed');
    const rules = armed.map((card) => card.id);
    const leans = armed.every((card) => card.marks.length > 0);
    const marks = leans ? [...new Set(armed.flatMap((card) => card.marks))] : [];
    const short = people && offOf(station, found, hazard).some((each) => each.people);
    if (rules.length > 0 && !short) watched.push({ hazard: id, words, people, rules, marks });
    else unwatched.push(unwatchedHazard(station, signals, found, cards, hazard));
  }
  return {
    station: station.id,
    kind: station.kind.name,
    watched,
    unwatched,
    waiting: waiting(found),
    notArmed: [
      ...cards
        .filter((card) => card.readiness === 'not-armed')
        .map((card) => ({ rule: card.id, needs: card.needs })),
      ...found.unbound.flatMap(({ name, signals: judged }) => {
        const needs = lackedBy(station, judged);
        return needs.length === 0 ? [] : [{ rule: `${station.id}/${name}`, needs }];
      }),
    ],
    workedOut: workedOut(station, signals),
    notWorkedOut: [...station.lacking].map(([name, needs]) => ({
      signal: `${station.id}/${name}`,
      needs,
    })),
    unconfirmed: cards
      .filter((card) => card.readiness !== 'not-armed' && card.needs.length > 0)
      .map((card) => ({
        rule: card.id,
        numbers: card.settings.filter((setting) => !setting.confirmed),
        needs: card.needs,
      })),
    moot: found.moot.map(({ template, why }) => ({ rule: `${station.id}/${template.name}`, why })),
    calibrations: calibrations(signals),
    silenceUnnoticed: silenceUnnoticed(station, signals, found),
    off: found.off.map(({ name, ...off }) => ({ rule: `${station.id}/${name}`, ...off })),
  };
}

const calibrations = (signals: ReadonlyMap<string, SignalDraft>): StationCoverage['calibrations'] =>
  [...signals.values()].flatMap(({ station, name, reading }) => {
    const dates = reading?.calibrationDates ?? null;
    return dates === null ? [] : [{ signal: idOf(station, name, ''), ...dates }];
  });

function waiting({ rules }: StationRules): WaitingRule[] {
  return rules
    .filter(({ kind, instances }) => instances.length === 0 && kind.watchesHealth !== true)
    .filter(({ missing, compiled }) => missing.length === 0 && compiled !== null)
    .map(({ station, name, hazard, people, signals }) => ({
      rule: idOf(station, name, ''),
      hazard,
      people,
      signals: [...new Set(signals.flatMap(withoutPlace))],
    }))
    .filter(({ signals }) => signals.length > 0);
}

/** The measured wildcards beneath a signal of which no place has been heard. */
const withoutPlace = ({ station, name, names, instances, derived }: SignalDraft): string[] =>
  derived !== null
    ? derived.inputs.flatMap(withoutPlace)
    : names.length > 0 && instances.length === 0
      ? [idOf(station, name, '')]
      : [];

/** Numbers for want of which a signal that a rule would judge does not exist. */
const lackedBy = (station: StationDraft, judged: readonly string[]): readonly string[] => [
  ...new Set(judged.flatMap((name) => station.lacking.get(name) ?? [])),
];

/** Derived signals with the numbers they rest on; one of a wildcard for each place, by itself before any. */
const workedOut = (
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
): StationCoverage['workedOut'] =>
  [...signals.values()].flatMap(({ name, instances, derived }) =>
    derived === null
      ? []
      : (instances.length === 0 ? [''] : instances).map((instance) => ({
          signal: idOf(station, name, instance),
          kind: derived.kind.name,
          from: derived.inputs.map((input) =>
            idOf(station, input.name, input.names.length === 0 ? '' : instance),
          ),
          settings: derived.card,
          needs: derived.unconfirmed,
        })),
  );

/** A rule of the site's own watches what the site says it does. */
const ownHazards = ({ kind }: StationDraft, found: StationRules): Hazard[] =>
  found.rules
    .filter((rule) => rule.hazard === rule.name && !kind.hazards.some(({ id }) => id === rule.name))
    .map((rule) => ({
      id: rule.name,
      words: rule.label.consequence,
      people: rule.people,
      byHand: null,
    }));

const silenceUnnoticed = (
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  found: StationRules,
): string[] =>
  [...signals.values()]
    .filter((signal) => signal.kind === 'measured')
    .filter((signal) => !found.rules.some((r) => r.kind.watchesHealth && r.signals[0] === signal))
    .map((signal) => `${station.id}/${signal.name}`);

function unwatchedHazard(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  found: StationRules,
  cards: readonly RuleCard[],
  hazard: Hazard,
): UnwatchedHazard {
  const { id, words, people } = hazard;
  const missing = missingSignals(station, signals, found.unbound, id);
  return {
    hazard: id,
    words,
    people,
    missing: missing.map(({ name, meaning, where }) => ({
      signal: `${station.id}/${name}`,
      meaning,
      where,
    })),
    why: whyUnwatched(station, found, cards, hazard, missing),
  };
}

function missingSignals(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  unbound: readonly RuleTemplate[],
  hazard: string,
): StationSignal[] {
  const names = new Set(
    unbound
      .filter((template) => template.hazard === hazard)
      .flatMap((template) => template.signals)
      .flatMap((name) => {
        const derived = station.kind.derived.find((known) => known.name === name);
        return derived === undefined ? [name] : Object.values(derived.inputs);
      })
      .filter((name) => !signals.has(name)),
  );
  return station.kind.signals.filter((signal) => names.has(signal.name));
}

/** Its rules that the site file switches off. */
const offOf = ({ kind }: StationDraft, { off }: StationRules, { id }: Hazard) =>
  off.filter(({ name }) =>
    kind.rules.some((template) => template.name === name && template.hazard === id),
  );

function offWords(off: StationRules['off'], { rules }: StationRules, { id }: Hazard): string {
  const said = off.map(({ name, reason, signedBy }) => {
    const who = signedBy === null ? '' : ` by ${signedBy}`;
    return `${name} is switched off${who}: ${reason.replace(/[.\s]+$/, '')}.`;
  });
  const left = rules.filter((rule) => rule.hazard === id && rule.compiled !== null);
  const names = [...new Set(left.map(({ name }) => name))];
  return [...said, ...(names.length === 0 ? [] : [`Still judged: ${names.join(', ')}.`])].join(' ');
}

function whyUnwatched(
  station: StationDraft,
  found: StationRules,
  cards: readonly RuleCard[],
  hazard: Hazard,
  missing: readonly StationSignal[],
): string {
  if (hazard.byHand !== null) return `No signal here tells it: ${hazard.byHand}.`;
  const standing = found.rules.some(({ hazard: of }) => of === hazard.id);
  const moot = standing
    ? undefined
    : found.moot.find(({ template }) => template.hazard === hazard.id);
  if (moot !== undefined) return moot.why;
  const off = offOf(station, found, hazard);
  const lack = lackWords(station, found, cards, hazard, missing);
  if (off.length > 0) return [offWords(off, found, hazard), lack ?? ''].join(' ').trim();
  return lack ?? notHeardYet;
}

/** What its rules need: a number, a sensor, an entry; null for nothing. */
function lackWords(
  station: StationDraft,
  found: StationRules,
  cards: readonly RuleCard[],
  hazard: Hazard,
  missing: readonly StationSignal[],
): string | null {
  const needs = [
    ...cards.filter((card) => card.hazard === hazard.id).flatMap((card) => card.needs),
    ...found.unbound
      .filter((template) => template.hazard === hazard.id)
      .flatMap((template) => lackedBy(station, template.signals)),
  ];
  if (needs.length > 0) return `Not armed: needs ${needs.join('; ')}.`;
  const byHand = missing.filter((signal) => signal.byHand === true);
  const others = missing.filter((signal) => signal.byHand !== true);
  const names = (each: readonly StationSignal[]): string =>
    each.map((signal) => signal.name).join(' or ');
  if (others.length > 0) {
    const orHand = byHand.length > 0 ? `, or enter ${names(byHand)} by hand` : '';
    return `No sensor: bind ${names(others)}${orHand}.`;
  }
  if (byHand.length > 0)
    return `Nobody enters it: list ${names(byHand)} under signals with by_hand: true.`;
  return null;
}
