/**
 * The plan: a site compiled once, signals and rules by integer. The engine knows nothing else.
 *
 * Signals stand in the order of their ids (plain code-unit order), so that the order of
 * judgement can be rebuilt from the record alone. Rules stand in the order of their ids too.
 */
import type { Priority } from '../alarm/priority.ts';
import type { DerivedNow, HeatCount, KeepingKind } from '../derive/derived-kind.ts';
import type { HoldWhat } from '../hold/hold.ts';
import type { Heat } from '../kinds/dry.ts';
import type { RuleKind } from '../kinds/kind.ts';

export type SignalKind = 'measured' | 'derived' | 'manual';

export interface PlanSignal {
  /** `line/station/signal`. */
  readonly id: string;
  readonly kind: SignalKind;
  /** Canonical UCUM unit. */
  readonly unit: string;
  /** The UCUM code in which the site or its station writes it; as `unit` where absent. For people alone. */
  readonly written?: string;
  /** Decimals of the resolution: a value is `k / 10^digits`; null keeps full doubles. */
  readonly digits: number | null;
  /** How long after its own time a sample is judged; 0 where the arrival is its time. */
  readonly holdMs: number;
  /** A sample older than this on arrival is stored and not judged. */
  readonly latenessMs: number;
  readonly expectEveryMs: number | null;
}

/** Judged only while the gate's value lies within [low, high]. */
export interface PlanGate {
  readonly signal: number;
  readonly low: number;
  readonly high: number;
}

/** What the lifecycle needs to know of a rule. */
export interface AlarmClass {
  /** Stays after the condition went, until somebody resets it. */
  readonly latching: boolean;
  /** Needs no acknowledgement once the condition went; for the record only. */
  readonly selfAcknowledging: boolean;
  /** ISA-18.2 highly managed: operators may not shelve it. */
  readonly highlyManaged: boolean;
}

export interface PlanRule {
  /** `line/station/rule`. */
  readonly id: string;
  readonly kind: RuleKind;
  /** What `kind.compile` gave. */
  readonly settings: unknown;
  /** Settings in canonical text, to tell whether a reload changed them. */
  readonly fingerprint: string;
  /** Signal indices; the first is the one the rule is about. Empty only where it judges marks. */
  readonly inputs: readonly number[];
  /** Indices of the marks it judges, in the order of their roles; most rules judge none. */
  readonly marks?: readonly number[];
  /** All must hold. */
  readonly gates: readonly PlanGate[];
  readonly class: AlarmClass;
  /** By severity 1 and 2. */
  readonly priority: readonly [Priority, Priority];
  /** People can be hurt: a gate that cannot be read counts as open. */
  readonly hazardToPeople: boolean;
  /** On raise, this is put on hold. */
  readonly hold: PlanHold | null;
  /** Time there is to act once told; where nothing improves in it, people are told again. */
  readonly respondMs?: number | null;
  /** While the plant is so, the alarm means nothing. */
  readonly suppress?: PlanSuppression;
}

/** Any of these suppresses by design; one whose signal cannot be read suppresses nothing. */
export interface PlanSuppression {
  readonly whiles: readonly PlanWhile[];
  /** It goes on for so long after the last of them ended. */
  readonly offDelayMs: number;
}

export type PlanWhile =
  | (PlanGate & { readonly because: string; readonly from?: undefined })
  /** From one mark to another, both of the place; at most for so long. */
  | {
      /** Mark ids. */
      readonly from: string;
      readonly until: string;
      readonly atMostMs: number;
      readonly because: string;
    };

/** The longest shelf, by priority, ms. */
export type ShelfMost = Readonly<Record<Priority, number>>;

export interface PlanHold {
  readonly what: HoldWhat;
  /** Where nobody named one. */
  readonly item: string;
  /** Marks, by id: the one whose last item is held, and the one by which it leaves. */
  readonly named?: readonly string[];
  /** The signal that counts the heat of racks: of several inside the one that had most is held. */
  readonly hottest?: number;
}

interface PlanDerivedInputs {
  /** Index of the signal it makes. */
  readonly signal: number;
  readonly inputs: readonly number[];
  /** It rests on a number nobody has confirmed: what it gives is uncertain. */
  readonly unproven?: boolean;
  /** As `RuleKind.extension`. */
  readonly extension?: string;
  /** As `KeepingKind.everyMs`. */
  readonly everyMs?: number;
  /** Of `PlanHeats.counts`: what it is told of the racks inside. */
  readonly carries?: number;
}

export interface PlanFormula extends PlanDerivedInputs {
  /**
   * Inputs in canonical units, in the order of `inputs`; the result in the derived signal's.
   * null where the inputs lie outside the formula's range. Never NaN.
   */
  readonly compute: (inputs: ArrayLike<number>) => number | null;
  readonly settled?: undefined;
  readonly keeps?: undefined;
}

/** A formula with settings. */
export interface PlanSettled extends PlanDerivedInputs {
  readonly settled: (now: DerivedNow) => number | null;
  readonly compute?: undefined;
  readonly keeps?: undefined;
}

/** One that remembers. */
export interface PlanKeeping extends PlanDerivedInputs {
  /** Indices of the marks that start it anew. */
  readonly marks?: readonly number[];
  /** Indices of the marks it counts. */
  readonly counted?: readonly number[];
  readonly keeps: {
    readonly kind: KeepingKind;
    /** What `kind.compile` gave. */
    readonly settings: unknown;
    /** Settings in canonical text, to tell whether a reload changed them. */
    readonly fingerprint: string;
  };
  readonly compute?: undefined;
  readonly settled?: undefined;
}

export type PlanDerived = PlanFormula | PlanSettled | PlanKeeping;

/** Something people say happened: a rack was blasted, a bin was emptied. */
export interface PlanMark {
  /** `line/station/mark`. */
  readonly id: string;
  /** What it happens to; null where it happens to the place itself. */
  readonly what: HoldWhat | null;
}

/** A station whose loads are followed from entry to exit. */
export interface PlanRun {
  /** `line/station`. */
  readonly station: string;
  /** 1 while loaded, else 0. */
  readonly loaded: number;
  /** Temperature of the metal; null where nobody measures it. */
  readonly metal: number | null;
  /** What belongs to its profile besides: the air of the zones. */
  readonly beside: readonly number[];
  /** At or above this for at least so long; null where nobody said. */
  readonly least: Heat | null;
  /** Never above this; at or above that for at most so long. */
  readonly peak: number | null;
  readonly most: Heat | null;
}

/** Ovens that heat racks, and who counts it how: a rack's heat is summed over all of them. */
export interface PlanHeats {
  readonly ovens: readonly PlanOven[];
  readonly counts: readonly PlanHeatCount[];
  /** Ids of the marks by which other parts hang on a rack. */
  readonly fresh: readonly string[];
}

export interface PlanOven {
  /** `line/station`. */
  readonly station: string;
  /** Temperature of the metal. */
  readonly metal: number;
  /** 1 while loaded; null where nothing says it, and marks alone do. */
  readonly loaded: number | null;
  /** Ids of the marks by which a rack goes in and comes out. */
  readonly arrived: string;
  readonly left: string;
}

export interface PlanHeatCount extends HeatCount {
  /** Of `ovens`: whose racks are asked for. */
  readonly oven: number;
  /** The signal that tells it. */
  readonly signal: number;
}

export interface Plan {
  /** SHA-256 of what the plan was compiled from, hexadecimal. */
  readonly revision: string;
  readonly signals: readonly PlanSignal[];
  readonly rules: readonly PlanRule[];
  /** Inputs before outputs. */
  readonly derived: readonly PlanDerived[];
  readonly runs: readonly PlanRun[];
  /** Absent where nobody counts the heat of racks. */
  readonly heats?: PlanHeats;
  /** In the order of their ids; a site without marks may leave it out. */
  readonly marks?: readonly PlanMark[];
  /** `shelfMost` of rules/alarm/shelf.ts where the site says nothing. */
  readonly shelving?: ShelfMost;
}
