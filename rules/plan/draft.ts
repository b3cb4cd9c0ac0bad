/** What compiling carries from step to step: stations, signals and rules before they have integers. */
import type { Priority } from '../alarm/priority.ts';
import type { DerivedKind } from '../derive/derived.ts';
import type { HoldWhat } from '../hold/hold.ts';
import type { RuleKind } from '../kinds/kind.ts';
import type { Sheet } from '../material/read-sheet.ts';
import type { Unit } from '../quantity/unit.ts';
import type { MarkPayloadWritten } from '../site/mark-schema.ts';
import { didYouMean } from '../site/nearest.ts';
import type { SiteProblem } from '../site/problem.ts';
import type { SiteWritten, StationWritten } from '../site/schema.ts';
import type { SignalWritten } from '../site/signal-schema.ts';
import type { StationKind } from '../stations/station.ts';
import type { CalibrationDates } from './calibration-dates.ts';
import type { CardLabel, CardSetting, Fact } from './card.ts';
import type { SuppressionDraft } from './compile-suppression.ts';
import type { OwnKinds } from './own-kinds.ts';
import type { AlarmClass, PlanHold, SignalKind } from './plan.ts';
import type { Sensor } from './sensor.ts';
import type { RuleChange } from './weaker.ts';

export type Path = readonly (string | number)[];
export type Report = (problem: SiteProblem) => void;

export interface StationDraft {
  /** `line/station`. */
  readonly id: string;
  readonly path: Path;
  readonly kind: StationKind;
  /** Kinds the site brings itself. */
  readonly own: OwnKinds;
  readonly written: StationWritten;
  readonly sheet: Sheet | null;
  /** IANA. */
  readonly timezone: string;
  readonly firePlan: SiteWritten['fire_plan'] | null;
  /** Names of signals that are written, but not so that they can be used; said once, not at each rule. */
  readonly broken: Set<string>;
  readonly marks: ReadonlyMap<string, MarkDraft>;
  /** Derived signals that do not exist for want of a number, and what each needs. */
  readonly lacking: Map<string, readonly string[]>;
}

export interface MarkDraft {
  readonly id: string;
  readonly name: string;
  readonly what: HoldWhat | null;
  readonly meaning: string;
  readonly byWhom: string;
  /** The topic by which a device says it. */
  readonly said: { readonly topic: string; readonly payload: MarkPayloadWritten } | null;
}

/** How a measured signal is read; see Binding. */
export interface ReadingDraft {
  readonly written: SignalWritten;
  /** Of what it measures. */
  readonly unit: Unit;
  /** What the message holds: the same, but for a raw sensor. */
  readonly sent: Unit;
  /** null where the message holds what the signal measures. */
  readonly sensor: Sensor | null;
  readonly calibrationDates: CalibrationDates | null;
  readonly slope: number;
  readonly intercept: number;
  readonly low: number;
  readonly high: number;
  readonly maxRatePerS: number | null;
}

export interface SignalDraft {
  readonly station: StationDraft;
  readonly name: string;
  readonly path: Path;
  readonly kind: SignalKind;
  /** Names of its wildcard levels; empty for an exact topic. */
  readonly names: readonly string[];
  /** Values the wildcard took; the single '' for an exact topic. */
  readonly instances: readonly string[];
  /** Canonical code. */
  readonly unit: string;
  readonly digits: number | null;
  readonly holdMs: number;
  readonly latenessMs: number;
  readonly expectEveryMs: number | null;
  /** Not for derived ones. */
  readonly reading: ReadingDraft | null;
  /** Only for derived ones. */
  readonly derived: DerivedDraft | null;
}

export interface DerivedDraft {
  readonly kind: DerivedKind;
  /** The UCUM code in which people are told it, where its kind says one. */
  readonly saidIn?: string;
  /** Those that are given, in the kind's order. */
  readonly inputs: readonly SignalDraft[];
  /** Ids of the marks that start it anew. */
  readonly marks: readonly string[];
  /** Ids of the marks it counts. */
  readonly counted: readonly string[];
  /** What the kind made of its settings; null for a formula. */
  readonly compiled: unknown;
  readonly card: readonly CardSetting[];
  /** What would confirm its numbers, and those of what it is worked out from. */
  readonly unconfirmed: readonly string[];
}

export interface GateDraft {
  readonly signal: SignalDraft;
  /** Canonical; infinite where that side is free. */
  readonly low: number;
  readonly high: number;
}

export interface RuleDraft {
  readonly station: StationDraft;
  readonly name: string;
  readonly path: Path;
  readonly kind: RuleKind;
  /** What it judges, the one it is about first; empty where it judges marks alone. */
  readonly signals: readonly SignalDraft[];
  /** In the order of their roles. */
  readonly marks: readonly MarkDraft[];
  /** Values of wildcards that all its inputs have; the single '' where none is a wildcard. */
  readonly instances: readonly string[];
  /** As written, defaults filled in. */
  readonly settings: Readonly<Record<string, unknown>>;
  /** What the kind made of them; null where it must not run. */
  readonly compiled: unknown;
  readonly card: readonly CardSetting[];
  /** What it needs before it arms. */
  readonly missing: readonly string[];
  /** What it lacks although it is armed: a fire plan to name. */
  readonly wants: readonly string[];
  /** What would confirm its limits. */
  readonly unconfirmed: readonly string[];
  /** All must hold. */
  readonly gates: readonly GateDraft[];
  readonly class: AlarmClass;
  readonly priority: readonly [Priority, Priority];
  readonly respondMs: number | null;
  readonly suppress: SuppressionDraft | null;
  readonly changes: readonly RuleChange[];
  readonly hazard: string | null;
  readonly people: boolean;
  readonly hold: PlanHold | null;
  readonly label: CardLabel;
  readonly facts: Readonly<Record<string, Fact>>;
}

/** `line/station/name`, with `-<instance>` for a value of a wildcard. */
export const idOf = (station: StationDraft, name: string, instance: string): string =>
  `${station.id}/${name}${instance === '' ? '' : `-${instance}`}`;

/** "There is no signal x", unless x is written and its own problem is told already. */
export function reportNoSignal(
  station: StationDraft,
  signals: ReadonlyMap<string, unknown>,
  name: string,
  path: Path,
  report: Report,
): void {
  if (station.broken.has(name)) return;
  report({
    path,
    problem: `this station has no signal "${name}"`,
    fix: didYouMean(name, [...signals.keys()]),
  });
}

/** Code-unit order, the order of the plan. */
export const byId = <T extends { readonly id: string }>(a: T, b: T): number =>
  a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
