/** Drafts to integers: signals in the order of their ids, and what refers to them by index. */
import { type DerivedNow, isFormula, isKeeping } from '../derive/derived-kind.ts';
import type { SiteProblem } from '../site/problem.ts';
import { heldBy } from './assemble-heats.ts';
import { assembleSuppression, cardWhiles } from './assemble-suppression.ts';
import { type Binding, boundsOf } from './binding.ts';
import type { CalibrationDates } from './calibration-dates.ts';
import { canonicalText } from './canonical-text.ts';
import type { RuleCard } from './card.ts';
import { hasOwnTime } from './compile-signal.ts';
import {
  byId,
  type DerivedDraft,
  idOf,
  type Report,
  type RuleDraft,
  type SignalDraft,
} from './draft.ts';
import type { PlanDerived, PlanRule, PlanSignal } from './plan.ts';
import { sharingSettings } from './shared-settings.ts';
import { wildcardLevels } from './topic.ts';

/** Signal ids to their integers. */
export type SignalIndex = ReadonlyMap<string, number>;

const signalId = (draft: SignalDraft, instance: string): string =>
  idOf(draft.station, draft.name, draft.names.length === 0 ? '' : instance);

export function assembleSignals(
  drafts: readonly SignalDraft[],
  report: Report,
): { readonly signals: readonly PlanSignal[]; readonly index: SignalIndex } {
  const found = new Map<string, PlanSignal>();
  for (const draft of drafts) {
    for (const instance of draft.instances) {
      const id = signalId(draft, instance);
      if (found.has(id)) {
        report(twice(id, 'signal', draft.path));
        continue;
      }
      found.set(id, {
        id,
        kind: draft.kind,
        unit: draft.unit,
        ...writtenOf(draft),
        digits: draft.digits,
        holdMs: draft.holdMs,
        latenessMs: draft.latenessMs,
        expectEveryMs: draft.expectEveryMs,
      });
    }
  }
  const signals = [...found.values()].sort(byId);
  return { signals, index: new Map(signals.map((signal, i) => [signal.id, i])) };
}

/**
 * A derived signal is told as its kind says, else as the input it is of one quantity with. A speed is
 * told as the trade tells it where the station's kind knows the signal, whatever its sensor sends.
 */
function writtenOf(draft: SignalDraft): Pick<PlanSignal, 'written'> {
  const { station, name, reading, derived, unit } = draft;
  if (reading !== null && unit === 'm/s') {
    const known = station.kind.signals.find((signal) => signal.name === name);
    if (known !== undefined) return { written: known.unit };
  }
  const said = (reading?.sensor?.unit ?? reading?.sent)?.code ?? derived?.saidIn;
  if (said !== undefined) return { written: said };
  const [first] = derived?.inputs ?? [];
  return first === undefined || first.unit !== unit ? {} : writtenOf(first);
}

const twice = (id: string, what: string, path: SiteProblem['path']): SiteProblem => ({
  path,
  problem: `a value of a wildcard makes a second ${what} ${id}`,
  fix: `Give one of the two another name.`,
  atKey: true,
});

/** Inputs before outputs, as the drafts come. */
export function assembleDerived(
  drafts: readonly SignalDraft[],
  index: SignalIndex,
  marks: readonly string[],
): readonly PlanDerived[] {
  return drafts.flatMap((draft) => {
    const derived = draft.derived;
    if (derived === null) return [];
    const work = workOf(derived, marks);
    return draft.instances.map((instance) => ({
      signal: at(index, signalId(draft, instance)),
      inputs: derived.inputs.map((input) => at(index, signalId(input, instance))),
      ...(derived.unconfirmed.length > 0 ? { unproven: true } : {}),
      ...(derived.kind.extension === undefined ? {} : { extension: derived.kind.extension }),
      ...work,
    }));
  });
}

function workOf(
  { kind, compiled, inputs, marks: own, counted }: DerivedDraft,
  marks: readonly string[],
) {
  if (isFormula(kind)) return { compute: (readings: ArrayLike<number>) => kind.compute(readings) };
  if (!isKeeping(kind)) return { settled: (now: DerivedNow) => kind.settled(compiled, now) };
  const fingerprint = canonicalText({
    kind: kind.name,
    settings: compiled,
    inputs: inputs.map(({ name, unit }) => ({ name, unit })),
  });
  return {
    keeps: { kind, settings: compiled, fingerprint },
    ...(own.length === 0 ? {} : { marks: own.map((id) => marks.indexOf(id)) }),
    ...(counted.length === 0 ? {} : { counted: counted.map((id) => marks.indexOf(id)) }),
    ...(kind.everyMs === undefined ? {} : { everyMs: kind.everyMs }),
  };
}

export function assembleBindings(
  drafts: readonly SignalDraft[],
  index: SignalIndex,
): readonly Binding[] {
  return drafts
    .flatMap((draft): Binding[] => {
      const reading = draft.reading;
      if (reading === null) return [];
      const { topic = '', payload = { kind: 'plain' } } = reading.written;
      const wild = draft.names.length > 0;
      return [
        {
          signal: wild ? null : at(index, signalId(draft, '')),
          id: idOf(draft.station, draft.name, ''),
          filter: topic,
          levels: wild ? wildcardLevels(topic) : [],
          names: draft.names,
          instances: new Map(
            wild
              ? draft.instances.map((instance) => [instance, at(index, signalId(draft, instance))])
              : [],
          ),
          payload,
          unit: reading.sent,
          ...(reading.sensor === null ? {} : { sensor: reading.sensor }),
          ...calibrationEnd(reading.calibrationDates),
          slope: reading.slope,
          intercept: reading.intercept,
          ...boundsOf(reading, draft.name),
          maxRatePerS: reading.maxRatePerS,
          digits: draft.digits,
          holdMs: draft.holdMs,
          latenessMs: draft.latenessMs,
          // Who enters a reading says when it was read.
          hasOwnTime: draft.kind === 'manual' || hasOwnTime(reading.written),
        },
      ];
    })
    .sort(byId);
}

const calibrationEnd = (dates: CalibrationDates | null): Pick<Binding, 'calibrationEndMs'> =>
  dates === null || dates.overdueFromMs === null ? {} : { calibrationEndMs: dates.overdueFromMs };

/** One plan rule and one card for each instance; a rule that must not run has a card alone. */
export function assembleRules(
  drafts: readonly RuleDraft[],
  index: SignalIndex,
  /** Mark ids in the order of the plan. */
  marks: readonly string[],
  report: Report,
): { readonly rules: readonly PlanRule[]; readonly cards: readonly RuleCard[] } {
  const rules: PlanRule[] = [];
  const cards = new Map<string, RuleCard>();
  for (const draft of drafts) {
    for (const instance of draft.instances) {
      const id = idOf(draft.station, draft.name, instance);
      if (cards.has(id)) {
        report(twice(id, 'rule', draft.path));
        continue;
      }
      const signals = draft.signals.map((signal) => signalId(signal, instance));
      const gates = draft.gates.map((gate) => signalId(gate.signal, instance));
      const unheard = new Set(gates.filter((gate) => !index.has(gate)));
      const missing = [...draft.missing, ...[...unheard].map((gate) => `a reading of ${gate}`)];
      const suppress = cardWhiles(draft.suppress, (signal) => signalId(signal, instance));
      cards.set(id, { ...cardOf(draft, id, signals, gates, missing), suppress });
      if (missing.length > 0 || draft.compiled === null) continue;
      rules.push({
        ...ruleOf(draft, id, signals, gates, index, marks),
        ...assembleSuppression(draft.suppress, (signal) => index.get(signalId(signal, instance))),
      });
    }
  }
  return { rules: sharingSettings(rules.sort(byId)), cards: [...cards.values()].sort(byId) };
}

function ruleOf(
  draft: RuleDraft,
  id: string,
  signals: readonly string[],
  gates: readonly string[],
  index: SignalIndex,
  marks: readonly string[],
): PlanRule {
  return {
    id,
    kind: draft.kind,
    settings: draft.compiled,
    fingerprint: canonicalText({
      kind: draft.kind.name,
      settings: draft.compiled,
      inputs: signals.map((signal, i) => ({
        id: signal,
        unit: draft.signals[i]!.unit,
      })),
      ...(draft.marks.length === 0 ? {} : { marks: draft.marks.map(({ id: mark }) => mark) }),
    }),
    inputs: signals.map((signal) => at(index, signal)),
    ...(draft.marks.length === 0
      ? {}
      : { marks: draft.marks.map(({ id: mark }) => marks.indexOf(mark)) }),
    gates: draft.gates.map(({ low, high }, i) => ({ signal: at(index, gates[i]!), low, high })),
    class: draft.class,
    priority: draft.priority,
    hazardToPeople: draft.people,
    hold: heldBy(draft, index.get(signals[0] ?? '')),
    respondMs: draft.respondMs,
  };
}

function cardOf(
  draft: RuleDraft,
  id: string,
  signals: readonly string[],
  gates: readonly string[],
  missing: readonly string[],
): Omit<RuleCard, 'suppress'> {
  return {
    id,
    station: draft.station.id,
    kind: draft.kind.name,
    summary: draft.kind.summary,
    signal: signals[0] ?? draft.marks[0]?.id ?? draft.station.id,
    signals,
    marks: draft.marks.map((mark) => mark.id),
    settings: draft.card,
    readiness:
      missing.length > 0 || draft.compiled === null
        ? 'not-armed'
        : draft.unconfirmed.length > 0
          ? 'armed-limit-unconfirmed'
          : 'armed',
    needs: [...(missing.length > 0 ? missing : draft.unconfirmed), ...draft.wants],
    label: draft.label,
    facts: draft.facts,
    changes: draft.changes,
    priority: draft.priority,
    class: draft.class,
    respondMs: draft.respondMs,
    hazard: draft.hazard,
    hazardToPeople: draft.people,
    gates: draft.gates.map(({ low, high }, i) => ({
      signal: gates[i]!,
      low: finiteOrNull(low),
      high: finiteOrNull(high),
    })),
    hold: draft.hold === null ? null : { what: draft.hold.what, item: draft.hold.item },
  };
}

const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);

function at(index: SignalIndex, id: string): number {
  const i = index.get(id);
  if (i === undefined) throw new RangeError(`the plan has no signal ${id}`);
  return i;
}
