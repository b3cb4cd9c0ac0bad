/** One derived signal: its kind, the signals it is worked out from, its settings. */

import {
  type DerivedInput,
  type DerivedKind,
  isFormula,
  type ResultOf,
} from '../derive/derived-kind.ts';
import { derivedSettingsReader } from '../derive/settings-reader.ts';
import type { SettingsProblem } from '../kinds/settings.ts';
import { canonicalUnit, dimensionWords } from '../quantity/unit.ts';
import { latenessMsDefault } from '../site/bounds.ts';
import { didYouMean } from '../site/nearest.ts';
import { derivedFieldNames } from '../site/signal-schema.ts';
import type { TemplateNumber } from '../stations/station.ts';
import { countedMarks, startingMarks } from './derived-marks.ts';
import type { DerivedDraft, Path, Report, SignalDraft, StationDraft } from './draft.ts';
import { givenBy } from './given.ts';
import { derivedKindNames, derivedKindOf, type OwnKinds } from './own-kinds.ts';
import { checkSettings, draftSettings } from './rule-settings.ts';
import { sentence } from './sentence.ts';

/** A derived signal before it is known whether it can be. */
export interface Wanted {
  readonly name: string;
  readonly kind: string | null;
  readonly inputs: Readonly<Record<string, string>>;
  /** Those of the inputs that the station names, not the site. */
  readonly brought: readonly string[];
  /** Marks that start it anew. */
  readonly startsOn: readonly string[];
  /** Marks it counts. */
  readonly countsOn: readonly string[];
  readonly numbers: readonly TemplateNumber[];
  /** Settings the site wrote. */
  readonly own: Readonly<Record<string, unknown>>;
  readonly path: Path;
  /** The site wrote it, so that what is missing is a problem. */
  readonly byHand: boolean;
}

export function derivedKind(own: OwnKinds, wanted: Wanted, report: Report): DerivedKind | null {
  const kind = wanted.kind === null ? undefined : derivedKindOf(own, wanted.kind);
  if (kind !== undefined) return kind;
  const kinds = derivedKindNames(own);
  report(
    wanted.kind === null
      ? {
          path: [...wanted.path, 'kind'],
          problem: `"${wanted.name}" has no kind, and is none this station works out`,
          fix: `Give it a kind: ${kinds.join(', ')}.`,
        }
      : {
          path: [...wanted.path, 'kind'],
          problem: `there is no derived kind "${wanted.kind}"`,
          fix: didYouMean(wanted.kind, kinds),
        },
  );
  return null;
}

/** null where it cannot be: what it needs is in `station.lacking` or reported. */
export function draftDerived(
  station: StationDraft,
  wanted: Wanted,
  signals: ReadonlyMap<string, SignalDraft>,
  report: Report,
): SignalDraft | null {
  const kind = derivedKind(station.own, wanted, report);
  if (kind === null) return null;
  const inputs = derivedInputs(kind, wanted, signals, report);
  if (inputs === null) return null;
  const shape = commonInstances(inputs.map(({ signal }) => signal));
  if (shape === null) {
    report({
      path: [...wanted.path, 'inputs'],
      problem: 'the inputs have wildcards of different names',
      fix: 'Give their topics the same names, or combine signals of one place only.',
    });
    return null;
  }
  // A rack goes into one oven, not into each value of a wildcard.
  if ('counts' in kind && shape.names.length > 0) {
    report({
      path: [...wanted.path, 'inputs'],
      problem: `${kind.name} follows racks, and a wildcard does not say into which oven they go`,
      fix: 'Bind the metal temperature of this oven to a topic without +.',
    });
    return null;
  }
  const result = resultOf(kind, inputs[0]?.signal ?? null);
  if (result === null) {
    reportUnfit(kind, wanted, inputs[0]!, report);
    return null;
  }
  const marks = startingMarks(station, kind, wanted, report);
  const counted = countedMarks(station, kind, wanted, report);
  const settings = derivedSettings(station, kind, wanted, inputs, report);
  if (settings === null) return null;
  return {
    station,
    name: wanted.name,
    path: wanted.path,
    kind: 'derived',
    ...shape,
    unit: result.unit,
    digits: result.digits,
    holdMs: 0,
    latenessMs: latenessMsDefault,
    expectEveryMs: null,
    reading: null,
    derived: {
      kind,
      ...(result.saidIn === undefined ? {} : { saidIn: result.saidIn }),
      inputs: inputs.map(({ signal }) => signal),
      marks,
      counted,
      ...settings,
    },
  };
}

const resultOf = (kind: DerivedKind, first: SignalDraft | null): ResultOf | null =>
  kind.result === undefined || first === null
    ? {
        unit: kind.unit,
        digits: kind.digits,
        ...(kind.saidIn === undefined ? {} : { saidIn: kind.saidIn }),
      }
    : kind.result({ unit: first.unit, digits: first.digits });

interface GivenInput {
  readonly input: DerivedInput;
  readonly signal: SignalDraft;
}

function reportUnfit(
  kind: DerivedKind,
  wanted: Wanted,
  { input, signal }: GivenInput,
  report: Report,
): void {
  report({
    path: [...wanted.path, 'inputs', input.name],
    problem: `${kind.name} cannot be worked out from ${dimensionWords(canonicalUnit(signal.unit))}`,
    fix: `Name a signal that gives it: ${input.meaning}.`,
  });
}

/** null where a number is missing or cannot be read. */
function derivedSettings(
  station: StationDraft,
  kind: DerivedKind,
  wanted: Wanted,
  inputs: readonly GivenInput[],
  report: Report,
): Pick<DerivedDraft, 'compiled' | 'card' | 'unconfirmed'> | null {
  const behind = inputs.flatMap(({ signal }) => signal.derived?.unconfirmed ?? []);
  const pathOf = (): Path => wanted.path;
  if (isFormula(kind)) {
    for (const key of Object.keys(wanted.own))
      report({
        path: [...wanted.path, key],
        problem: `${kind.name} has no settings, and so no "${key}"`,
        fix: 'Take it out.',
        atKey: true,
      });
    return { compiled: null, card: [], unconfirmed: [...new Set(behind)] };
  }
  const drafted = draftSettings(wanted.numbers, {}, wanted.own, givenBy(station));
  const sound = checkSettings(kind, drafted, pathOf, report, derivedFieldNames);
  if (drafted.missing.length > 0) station.lacking.set(wanted.name, drafted.missing);
  if (!sound || drafted.missing.length > 0) return null;
  const problems: SettingsProblem[] = [];
  const names = inputs.map(({ input }) => input.name);
  const read = derivedSettingsReader(
    drafted.settings,
    inputs[0]?.signal.unit ?? '1',
    names,
    problems,
    wanted.startsOn.length > 0,
  );
  const compiled = kind.compile(read);
  for (const { path, problem, fix } of problems)
    report({ path: [...wanted.path, ...path], problem, fix: sentence(fix) });
  if (problems.length > 0) return null;
  return {
    compiled,
    card: drafted.card,
    unconfirmed: [...new Set([...drafted.unconfirmed, ...behind])],
  };
}

/** The signals that give the kind's inputs, in its order; null where one is missing or unfit. */
function derivedInputs(
  kind: DerivedKind,
  wanted: Wanted,
  signals: ReadonlyMap<string, SignalDraft>,
  report: Report,
): readonly GivenInput[] | null {
  const inputs: GivenInput[] = [];
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
    if (name === undefined && input.optional === true) continue;
    const signal = name === undefined ? undefined : signals.get(name);
    if (signal !== undefined && (input.unit === 'any' || signal.unit === input.unit)) {
      inputs.push({ input, signal });
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
