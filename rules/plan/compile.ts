/**
 * A site to a plan: signals and rules by integer, bindings for intake, cards and coverage for
 * people. Compiled once at start, on a reload, and when a wildcard takes a new value.
 *
 * Every problem is collected, none thrown. The rest is whole only where there are none.
 */
import type { Sheet } from '../material/read-sheet.ts';
import { rulesMax, signalsMax } from '../site/bounds.ts';
import { didYouMean, nearest } from '../site/nearest.ts';
import { pathText, type SiteProblem } from '../site/problem.ts';
import type { SiteWritten, StationWritten } from '../site/schema.ts';
import { stationKinds } from '../stations/all.ts';
import { custom } from '../stations/custom.ts';
import type { StationKind } from '../stations/station.ts';
import { assembleBindings, assembleDerived, assembleRules, assembleSignals } from './assemble.ts';
import { assembleHeats } from './assemble-heats.ts';
import { assembleRun } from './assemble-run.ts';
import { reportBaskets } from './basket-report.ts';
import { type Binding, isInstance } from './binding.ts';
import type { Coverage, MarkBinding, MarkCard, RuleCard } from './card.ts';
import { compileDerived } from './compile-derived.ts';
import { markBindings, markCards, stationMarks } from './compile-marks.ts';
import { compileShelving } from './compile-shelving.ts';
import { compileSignal } from './compile-signal.ts';
import { coverStation } from './coverage.ts';
import { idOf, type Path, type Report, type SignalDraft, type StationDraft } from './draft.ts';
import { noOwnKinds, type OwnKinds } from './own-kinds.ts';
import { changedSignals, reportReach, type SignalChange } from './people-reach.ts';
import { changedTimes, reportTimes } from './people-times.ts';
import type { Plan } from './plan.ts';
import { reportFields } from './station-fields.ts';
import { type StationRules, stationRules } from './station-rules.ts';
import { wildcardLevels } from './topic.ts';

/** Values the levels of a wildcard topic took, by the signal's `line/station/signal`. */
export type Instances = Readonly<Record<string, readonly string[]>>;

export interface CompiledSite {
  readonly plan: Plan;
  /** By signal id. */
  readonly bindings: readonly Binding[];
  /** By rule id; those not armed too. */
  readonly rules: readonly RuleCard[];
  readonly coverage: Coverage;
  /** By mark id. */
  readonly marks: readonly MarkCard[];
  readonly markBindings: readonly MarkBinding[];
  readonly ownKinds: OwnKinds;
  /** Where people's safety leans on them: how the site file has them read. */
  readonly changedSignals: readonly SignalChange[];
  /** What the site file changes of rules over wildcards of which no place has been heard: `line/station/rule`. */
  readonly changedWaiting: readonly Pick<RuleCard, 'id' | 'changes'>[];
  readonly problems: readonly SiteProblem[];
}

interface CompiledStation {
  readonly station: StationDraft;
  readonly signals: ReadonlyMap<string, SignalDraft>;
  readonly found: StationRules;
}

/**
 * `revision` is the SHA-256 of what is compiled (agent/site/revision.ts). `broken` names signals
 * (`line/station/signal`) that are written but were left out because they cannot be read.
 */
export function compileSite(
  site: SiteWritten,
  materials: Readonly<Record<string, Sheet>>,
  instances: Instances,
  revision: string,
  broken: readonly string[] = [],
  own: OwnKinds = noOwnKinds,
): CompiledSite {
  const problems = new Map<string, SiteProblem>();
  const report: Report = (problem) => {
    problems.set(`${pathText(problem.path)} ${problem.problem}`, problem);
  };
  const stations: CompiledStation[] = [];
  for (const [line, written] of Object.entries(site.lines)) {
    for (const [name, station] of Object.entries(written)) {
      const draft = draftStation(site, materials, line, name, station, broken, own, report);
      const signals = stationSignals(draft, instances, report);
      const found = stationRules(draft, signals, report);
      reportReach(signals.values(), found.rules, report);
      reportTimes(signals.values(), found.rules, report);
      stations.push({ station: draft, signals, found });
    }
  }
  const drafts = stations.flatMap(({ signals }) => [...signals.values()]);
  const { signals, index } = assembleSignals(drafts, report);
  const marks = markCards(stations.map(({ station }) => station));
  const markIds = marks.map(({ id }) => id);
  const assembled = assembleRules(
    stations.flatMap(({ found }) => found.rules),
    index,
    markIds,
    report,
  );
  const derived = assembleDerived(drafts, index, markIds);
  reportTooMany('signals', signals.length, signalsMax, report);
  reportTooMany('rules', assembled.cards.length, rulesMax, report);
  return {
    plan: {
      revision,
      signals,
      rules: assembled.rules,
      ...assembleHeats(stations, derived, index),
      runs: stations.flatMap(({ station, signals: own, found }) =>
        assembleRun(station, own, found.rules, index),
      ),
      ...(site.shelving === undefined ? {} : { shelving: compileShelving(site.shelving, report) }),
      ...(marks.length === 0 ? {} : { marks: marks.map(({ id, what }) => ({ id, what })) }),
    },
    bindings: assembleBindings(drafts, index),
    marks,
    markBindings: markBindings(stations.map(({ station }) => station)),
    rules: assembled.cards,
    coverage: {
      stations: stations
        .map(({ station, signals: own, found }) => {
          const cards = assembled.cards.filter((card) => card.station === station.id);
          return coverStation(station, own, found, cards);
        })
        .sort((a, b) => (a.station < b.station ? -1 : 1)),
    },
    ownKinds: own,
    changedSignals: stations.flatMap(({ signals: own, found }) => [
      ...changedSignals(own.values(), found.rules),
      ...changedTimes(own.values(), found.rules),
    ]),
    changedWaiting: stations.flatMap(({ found }) => changedWaiting(found)),
    problems: [...problems.values()],
  };
}

const changedWaiting = ({ rules }: StationRules): Pick<RuleCard, 'id' | 'changes'>[] =>
  rules
    .filter(({ instances, changes }) => instances.length === 0 && changes.length > 0)
    .map(({ station, name, changes }) => ({ id: idOf(station, name, ''), changes }));

function reportTooMany(what: string, count: number, most: number, report: Report): void {
  if (count <= most) return;
  report({
    path: ['lines'],
    problem: `the site has ${count} ${what}, and one agent takes ${most}`,
    fix: 'Split it, one agent a line, each with its own site file.',
    atKey: true,
  });
}

function draftStation(
  site: SiteWritten,
  materials: Readonly<Record<string, Sheet>>,
  line: string,
  name: string,
  asWritten: StationWritten,
  broken: readonly string[],
  own: OwnKinds,
  report: Report,
): StationDraft {
  const path = ['lines', line, name];
  const { kind, written } = kindOf(asWritten, path, report);
  const material = written.material;
  const known = Object.keys(site.materials ?? {});
  if (material !== undefined && !known.includes(material))
    report({
      path: [...path, 'material'],
      problem: `there is no material "${material}"`,
      fix:
        known.length === 0
          ? 'Name its sheet under materials, at the top of the file.'
          : didYouMean(material, known),
    });
  reportFields(written, path, report);
  reportBaskets(written, path, report);
  const sheet =
    material !== undefined && Object.hasOwn(materials, material) ? materials[material]! : null;
  const id = `${line}/${name}`;
  const left = broken.filter((signal) => signal.startsWith(`${id}/`));
  return {
    id,
    path,
    kind,
    own,
    written,
    sheet,
    timezone: site.timezone,
    firePlan: site.fire_plan ?? null,
    broken: new Set(left.map((signal) => signal.slice(id.length + 1))),
    lacking: new Map(),
    marks: stationMarks(id, kind, written, path, report),
  };
}

/**
 * The station's kind. A name that is none is told, and the rest is read as of the kind that was
 * probably meant; where none is near, as a place of its own without the rules that only a kind knows.
 */
function kindOf(
  written: StationWritten,
  path: Path,
  report: Report,
): { readonly kind: StationKind; readonly written: StationWritten } {
  const known = stationKinds.get(written.kind);
  if (known !== undefined) return { kind: known, written };
  const names = [...stationKinds.keys()];
  report({
    path: [...path, 'kind'],
    problem: `there is no station kind "${written.kind}"`,
    fix: didYouMean(written.kind, names),
  });
  const meant = stationKinds.get(nearest(written.kind, names) ?? '');
  if (meant !== undefined) return { kind: meant, written };
  const rules = Object.entries(written.rules ?? {}).filter(([, rule]) => rule.kind !== undefined);
  return { kind: custom, written: { ...written, rules: Object.fromEntries(rules) } };
}

function stationSignals(
  station: StationDraft,
  instances: Instances,
  report: Report,
): ReadonlyMap<string, SignalDraft> {
  const signals = new Map<string, SignalDraft>();
  for (const [name, written] of Object.entries(station.written.signals ?? {})) {
    const id = `${station.id}/${name}`;
    const heard = Object.hasOwn(instances, id) ? instances[id]! : [];
    const levels = wildcardLevels(written.topic ?? '').length;
    const draft = compileSignal(
      station,
      name,
      written,
      [...station.path, 'signals', name],
      station.kind.signals.find((known) => known.name === name),
      [...new Set(heard)].filter((instance) => isInstance(instance, levels)).sort(),
      report,
    );
    if (draft === null) station.broken.add(name);
    else signals.set(name, draft);
  }
  compileDerived(station, signals, report);
  reportAmbiguous(signals, report);
  return signals;
}

/** `t-1` beside a wildcard `t` could be its value 1 one day; better said now than then. */
function reportAmbiguous(signals: ReadonlyMap<string, SignalDraft>, report: Report): void {
  for (const wild of signals.values()) {
    if (wild.names.length === 0 || wild.kind !== 'measured') continue;
    for (const other of signals.values())
      if (other !== wild && other.name.startsWith(`${wild.name}-`))
        report({
          path: other.path,
          problem: `"${other.name}" could be a value of the wildcard "${wild.name}"`,
          fix: `Give one of the two a name that does not begin with "${wild.name}-".`,
          atKey: true,
        });
  }
}
