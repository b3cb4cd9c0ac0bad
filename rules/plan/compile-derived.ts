/** Derived signals: those the station brings where its inputs exist, and those the site writes. */
import { type DerivedKind, derivedKinds } from '../derive/derived.ts';
import { canonicalUnit, dimensionWords } from '../quantity/unit.ts';
import { latenessMsDefault } from '../site/bounds.ts';
import { didYouMean } from '../site/nearest.ts';
import type { Path, Report, SignalDraft, StationDraft } from './draft.ts';

interface Wanted {
  readonly name: string;
  readonly kind: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly path: Path;
  /** The site wrote it, so that what is missing is a problem. */
  readonly byHand: boolean;
}

/** Adds the station's derived signals to `signals` (by name), inputs before outputs. */
export function compileDerived(
  station: StationDraft,
  signals: Map<string, SignalDraft>,
  report: Report,
): void {
  const written = station.written.derived ?? {};
  const wanted = new Map<string, Wanted>();
  for (const derived of station.kind.derived)
    if (!signals.has(derived.name))
      wanted.set(derived.name, { ...derived, path: station.path, byHand: false });
  for (const [name, derived] of Object.entries(written)) {
    const path = [...station.path, 'derived', name];
    if (signals.has(name))
      report({
        path,
        problem: `"${name}" is a measured signal already`,
        fix: 'Give one of the two another name.',
        atKey: true,
      });
    else wanted.set(name, { name, ...derived, path, byHand: true });
  }
  let progress = true;
  while (progress) {
    progress = false;
    for (const derived of wanted.values()) {
      if (!Object.values(derived.inputs).every((input) => signals.has(input))) continue;
      wanted.delete(derived.name);
      progress = true;
      // What the station brings exists where it can; only what the site wrote can be wrong.
      const draft = draftOf(station, derived, signals, derived.byHand ? report : () => undefined);
      if (draft !== null) signals.set(derived.name, draft);
      else if (derived.byHand) station.broken.add(derived.name);
    }
  }
  for (const derived of wanted.values())
    if (derived.byHand) {
      station.broken.add(derived.name);
      derivedKind(derived, report);
      reportUnmet(station, derived, signals, wanted, report);
    }
}

function derivedKind(wanted: Wanted, report: Report): DerivedKind | null {
  const kind = derivedKinds.get(wanted.kind);
  if (kind !== undefined) return kind;
  report({
    path: [...wanted.path, 'kind'],
    problem: `there is no derived kind "${wanted.kind}"`,
    fix: didYouMean(wanted.kind, [...derivedKinds.keys()]),
  });
  return null;
}

function draftOf(
  station: StationDraft,
  wanted: Wanted,
  signals: ReadonlyMap<string, SignalDraft>,
  report: Report,
): SignalDraft | null {
  const kind = derivedKind(wanted, report);
  if (kind === null) return null;
  const inputs = derivedInputs(kind, wanted, signals, report);
  if (inputs === null) return null;
  const shape = commonInstances(inputs);
  if (shape === null) {
    report({
      path: [...wanted.path, 'inputs'],
      problem: 'the inputs have wildcards of different names',
      fix: 'Give their topics the same names, or combine signals of one place only.',
    });
    return null;
  }
  return {
    station,
    name: wanted.name,
    path: wanted.path,
    kind: 'derived',
    ...shape,
    unit: kind.unit,
    digits: kind.digits,
    holdMs: 0,
    latenessMs: latenessMsDefault,
    expectEveryMs: null,
    reading: null,
    derived: { kind, inputs },
  };
}

/** The signals that give the kind's inputs, in its order; null where one is missing or unfit. */
function derivedInputs(
  kind: DerivedKind,
  wanted: Wanted,
  signals: ReadonlyMap<string, SignalDraft>,
  report: Report,
): readonly SignalDraft[] | null {
  const inputs: SignalDraft[] = [];
  let fits = true;
  const names = kind.inputs.map((input) => input.name);
  for (const name of Object.keys(wanted.inputs)) {
    if (names.includes(name)) continue;
    fits = false;
    report({
      path: [...wanted.path, 'inputs', name],
      problem: `${kind.name} has no input "${name}"`,
      fix: didYouMean(name, names),
      atKey: true,
    });
  }
  for (const input of kind.inputs) {
    const name = Object.hasOwn(wanted.inputs, input.name) ? wanted.inputs[input.name] : undefined;
    const signal = name === undefined ? undefined : signals.get(name);
    if (signal?.unit === input.unit) {
      inputs.push(signal);
      continue;
    }
    fits = false;
    if (signal === undefined)
      report({
        path: [...wanted.path, 'inputs'],
        problem: `${kind.name} needs the input "${input.name}"`,
        fix: `Name the signal that gives it: ${input.meaning}.`,
      });
    else
      report({
        path: [...wanted.path, 'inputs', input.name],
        problem: `"${name}" is ${dimensionWords(canonicalUnit(signal.unit))}, and ${input.name} is ${dimensionWords(canonicalUnit(input.unit))}`,
        fix: `Name a signal that gives it: ${input.meaning}.`,
      });
  }
  return fits ? inputs : null;
}

/**
 * Wildcard names and instances of something made of several signals: those every wildcard among
 * them has. null where their names differ.
 */
export function commonInstances(
  signals: readonly SignalDraft[],
): { readonly names: readonly string[]; readonly instances: readonly string[] } | null {
  const wild = signals.filter((signal) => signal.names.length > 0);
  const first = wild[0];
  if (first === undefined) return { names: [], instances: [''] };
  if (wild.some((signal) => signal.names.join() !== first.names.join())) return null;
  const instances = first.instances.filter((instance) =>
    wild.every((signal) => signal.instances.includes(instance)),
  );
  return { names: first.names, instances };
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
