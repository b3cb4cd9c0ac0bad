/**
 * What a derived signal is: worked out from readings, stored and charted like a sensor.
 *
 * A formula knows its readings and nothing else. A settled formula has numbers besides, from the
 * site file or the material sheet. A keeping kind remembers what it was told before: a sum, a span,
 * a body that warms. Its memory is plain data that JSON holds whole, so that snapshot, restore and
 * the same readings give the same answers.
 */
import type { z } from 'zod/mini';
import type { Timer } from '../kinds/kind.ts';
import type { Kinetics } from '../process/heat-equivalent.ts';
import type { QualityCode } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { DerivedSettingsReader } from './settings-reader.ts';

export interface DerivedInput {
  readonly name: string;
  /** Canonical UCUM code; `K` is a temperature difference. `any` takes every quantity. */
  readonly unit: string;
  /** What must be measured, and how: gauge or absolute, at which place. */
  readonly meaning: string;
  /** It can be left out. */
  readonly optional?: true;
}

interface DerivedShape {
  readonly name: string;
  /** One sentence: what it gives, by which convention. */
  readonly summary: string;
  readonly inputs: readonly DerivedInput[];
  /** Canonical UCUM code of the result; `any` where it follows from the first input. */
  readonly unit: string;
  /** UCUM code in which people are told it, where that is not `unit`: films in `um`. */
  readonly saidIn?: string;
  /** Decimals the result is quantised to. */
  readonly digits: number;
  /** Unit and decimals of the result, where they follow from the first input; null where it cannot serve. */
  result?(input: ResultOf): ResultOf | null;
  /** Where the formula is published. */
  readonly source: string;
  /** Of a kind the site brings in a file of its own: which file, and which text of it. */
  readonly extension?: string;
  /** Between what it holds; beyond, the reading is bad. Absent where every reading will do. */
  readonly range?: string;
}

export interface ResultOf {
  readonly unit: string;
  readonly saidIn?: string;
  /** null keeps full doubles. */
  readonly digits: number | null;
}

/** What is asked of a kind that is more than a formula. One object is reused: copy what you keep. */
export interface DerivedNow {
  /** The engine's now. */
  at: EpochMs;
  /** Finite, in canonical units, in the order of `inputs`; as many as are given. */
  inputs: Float64Array;
  /** One of them is uncertain. */
  uncertain: boolean;
  /** `quality.good` when asked. The kind says here why its answer is uncertain, or why there is none. */
  doubt: QualityCode;
  /** What the racks inside have had; only for a kind that `counts`. */
  carried?: Carried | null;
}

/** What the racks in an oven have had over every oven, by one way of counting. */
export interface Carried {
  readonly ms: number;
  /** Part of it nobody saw: it is at least so much. */
  readonly partial: boolean;
  /** The rack of which that is; null where nobody named one. */
  readonly item: string | null;
}

/** A way of counting heat. */
export interface HeatCount {
  readonly referenceC: number;
  readonly kinetics: Kinetics;
}

export interface FormulaKind extends DerivedShape {
  /**
   * Finite inputs in canonical units, in the order of `inputs`; the result in `unit`, not yet
   * quantised. null where the inputs lie outside the formula's range; never NaN.
   */
  compute(inputs: ArrayLike<number>): number | null;
}

interface WithSettings<Settings> extends DerivedShape {
  /** The settings as a person writes them in the site file. */
  readonly written: z.ZodMiniType;
  /** Written settings to canonical numbers; problems go to the reader, all of them. */
  compile(read: DerivedSettingsReader): Settings;
}

export interface SettledKind<Settings = unknown> extends WithSettings<Settings> {
  /** As `FormulaKind.compute`, with its settings. */
  settled(settings: Settings, now: DerivedNow): number | null;
  /** The engine sums the heat of racks so, over every oven, and hands it in `now.carried`. */
  counts?(settings: Settings): HeatCount;
}

export interface KeepingKind<Settings = unknown, Memory = unknown> extends WithSettings<Settings> {
  /** Raise it when the memory's shape changes, and teach `migrate` the old one. */
  readonly version: number;
  /**
   * Asked no more often than this while its inputs can be used, for what changes over hours; a second
   * where absent.
   */
  readonly everyMs?: number;
  /** Observation begins at `at`; no reading is known yet. */
  begin(settings: Settings, at: EpochMs): Memory;
  /**
   * All inputs can be used, and stand as given from `now.at` on; what they were since the last step
   * is what that step was given. Asked when one changed, at most once a second, and when
   * `timer.at` comes, if nothing came before. null where it cannot tell yet or lies out of range.
   */
  step(settings: Settings, memory: Memory, now: DerivedNow, timer: Timer): number | null;
  /**
   * Somebody said that it starts anew: when that was, at or before `now`, and now. Such a kind can be
   * started by a mark.
   */
  start?(settings: Settings, memory: Memory, at: EpochMs, now: EpochMs): void;
  /** Somebody said that one more happened, at `at`. Such a kind counts marks, and may do without a signal. */
  count?(settings: Settings, memory: Memory, at: EpochMs): void;
  /** Nothing was observed from `fromMs` to `toMs`: downtime, or an input could not be used. */
  gap(settings: Settings, memory: Memory, fromMs: EpochMs, toMs: EpochMs): void;
  /** Every time in memory moves by `deltaMs`: the clock was set anew. */
  shift(memory: Memory, deltaMs: number): void;
  /** An older version's memory in today's shape; null where it cannot be carried over. */
  migrate?(old: unknown, version: number): Memory | null;
  /** What a snapshot keeps of it; the memory itself where absent. */
  save?(memory: Memory): unknown;
}

export type DerivedKind = FormulaKind | SettledKind | KeepingKind;

export const isFormula = (kind: DerivedKind): kind is FormulaKind => 'compute' in kind;
export const isKeeping = (kind: DerivedKind): kind is KeepingKind => 'step' in kind;

/** Its settings' schema; null for a formula, which has none. */
export const settingsSchema = (kind: DerivedKind): z.ZodMiniType | null =>
  isFormula(kind) ? null : kind.written;
