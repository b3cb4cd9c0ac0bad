/** Derived signals: those the station brings where its inputs exist, and those the site writes. */
import { didYouMean } from '../site/nearest.ts';
import { type DerivedWritten, derivedFieldNames } from '../site/signal-schema.ts';
import type { StationDerived } from '../stations/station.ts';
import type { Report, SignalDraft, StationDraft } from './draft.ts';
import { derivedKind, draftDerived, type Wanted } from './draft-derived.ts';
import { givenBy } from './given.ts';
import { derivedKindOf } from './own-kinds.ts';

/** Adds the station's derived signals to `signals` (by name), inputs before outputs. */
export function compileDerived(
  station: StationDraft,
  signals: Map<string, SignalDraft>,
  report: Report,
): void {
  const wanted = wantedOf(station, signals, report);
  while (workOut(station, signals, wanted, report) || dropAbsent(station, signals, wanted)) {
    // Each turn leaves less to be worked out, or less that it waits for.
  }
  for (const derived of wanted.values()) {
    const needs = lackedBy(station, wanted, derived);
    if (needs.length > 0) station.lacking.set(derived.name, needs);
    else if (derived.byHand) {
      station.broken.add(derived.name);
      derivedKind(station.own, derived, report);
      reportUnmet(station, derived, signals, wanted, report);
    }
  }
}

function wantedOf(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  report: Report,
): Map<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  for (const derived of station.kind.derived)
    if (
      derived.onlyWritten !== true &&
      !signals.has(derived.name) &&
      (derived.moot?.(givenBy(station)) ?? null) === null
    )
      wanted.set(derived.name, {
        name: derived.name,
        kind: derived.kind,
        inputs: derived.inputs,
        brought: Object.keys(derived.inputs),
        startsOn: derived.startsOn ?? [],
        countsOn: derived.countsOn ?? [],
        numbers: derived.numbers ?? [],
        own: {},
        path: station.path,
        byHand: false,
      });
  for (const [name, written] of Object.entries(station.written.derived ?? {})) {
    const path = [...station.path, 'derived', name];
    if (signals.has(name))
      report({
        path,
        problem: `"${name}" is a measured signal already`,
        fix: 'Give one of the two another name.',
        atKey: true,
      });
    else {
      const brought = station.kind.derived.find((derived) => derived.name === name);
      const why = brought?.moot?.(givenBy(station)) ?? null;
      if (why !== null && (written.kind ?? brought?.kind) === brought?.kind) {
        report({ path, problem: why, fix: `Take ${name} out.`, atKey: true });
        continue;
      }
      wanted.set(name, { name, path, byHand: true, ...wordsOver(brought, written) });
    }
  }
  return wanted;
}

/** The site's words over what the station brings by that name, unless they make it another kind. */
function wordsOver(
  brought: StationDerived | undefined,
  written: DerivedWritten,
): Pick<Wanted, 'kind' | 'inputs' | 'brought' | 'startsOn' | 'countsOn' | 'numbers' | 'own'> {
  const own = Object.fromEntries(
    Object.entries(written).filter(([key]) => !derivedFieldNames.includes(key)),
  );
  const { kind = brought?.kind ?? null, inputs = {} } = written;
  const startsOn = written.starts_on ?? brought?.startsOn ?? [];
  const countsOn = written.counts_on ?? brought?.countsOn ?? [];
  if (brought === undefined || kind !== brought.kind)
    return { kind, inputs, brought: [], startsOn, countsOn, numbers: [], own };
  return {
    kind,
    inputs: { ...brought.inputs, ...inputs },
    brought: Object.keys(brought.inputs).filter((input) => !Object.hasOwn(inputs, input)),
    startsOn,
    countsOn,
    numbers: brought.numbers ?? [],
    own,
  };
}

/** Those whose inputs are all there; true where there was one. */
function workOut(
  station: StationDraft,
  signals: Map<string, SignalDraft>,
  wanted: Map<string, Wanted>,
  report: Report,
): boolean {
  let progress = false;
  for (const derived of wanted.values()) {
    if (!Object.values(derived.inputs).every((input) => signals.has(input))) continue;
    wanted.delete(derived.name);
    progress = true;
    // What the station brings exists where it can; only what the site wrote can be wrong.
    const draft = draftDerived(
      station,
      derived,
      signals,
      derived.byHand ? report : () => undefined,
    );
    if (draft !== null) signals.set(derived.name, draft);
    else if (derived.byHand && !station.lacking.has(derived.name)) station.broken.add(derived.name);
  }
  return progress;
}

/** Lets one do without optional inputs that the station brings and that are not there; true where it does. */
function dropAbsent(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  wanted: Map<string, Wanted>,
): boolean {
  for (const derived of wanted.values()) {
    const optional = (derivedKindOf(station.own, derived.kind ?? '')?.inputs ?? [])
      .filter((input) => input.optional === true)
      .map((input) => input.name);
    const entries = Object.entries(derived.inputs);
    const free = optional.filter((input) => derived.brought.includes(input));
    const kept = entries.filter(([input, name]) => signals.has(name) || !free.includes(input));
    const ready = kept.every(([, name]) => signals.has(name));
    if (kept.length === entries.length || !ready) continue;
    wanted.set(derived.name, { ...derived, inputs: Object.fromEntries(kept) });
    return true;
  }
  return false;
}

/** Numbers that what it waits for lacks. */
function lackedBy(
  station: StationDraft,
  wanted: ReadonlyMap<string, Wanted>,
  derived: Wanted,
  seen: readonly string[] = [],
): readonly string[] {
  if (seen.includes(derived.name)) return [];
  const needs = Object.values(derived.inputs).flatMap((name) => {
    const waits = wanted.get(name);
    const own = station.lacking.get(name) ?? [];
    return waits === undefined
      ? own
      : [...own, ...lackedBy(station, wanted, waits, [...seen, derived.name])];
  });
  return [...new Set(needs)];
}

function reportUnmet(
  station: StationDraft,
  derived: Wanted,
  signals: ReadonlyMap<string, SignalDraft>,
  wanted: ReadonlyMap<string, Wanted>,
  report: Report,
): void {
  const known = [...signals.keys(), ...wanted.keys()];
  for (const [input, name] of Object.entries(derived.inputs)) {
    if (signals.has(name) || (station.broken.has(name) && !wanted.has(name))) continue;
    if (wanted.has(name))
      report({
        path: [...derived.path, 'inputs', input],
        problem: `"${name}" cannot be computed first: it waits for a missing signal or for this one`,
        fix: 'See that derived signals do not form a ring, and that their inputs exist.',
      });
    else
      report({
        path: [...derived.path, 'inputs', input],
        problem: `this station has no signal "${name}"`,
        fix: didYouMean(name, known),
      });
  }
}
