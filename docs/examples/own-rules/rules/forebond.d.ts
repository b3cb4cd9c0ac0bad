/**
 * What a file of your own rules is handed, and what it gives. Copy this file beside yours and write
 * `import type { Forebond } from './forebond.d.ts'`: only types may be imported.
 *
 * Times are epoch milliseconds, values are in the canonical unit of their signal (docs/kinds.md).
 */

/** One setting of a kind, as a person writes it in the site file. */
export interface Setting {
  readonly _zod: unknown;
}

/** All settings of a kind. */
export interface Settings {
  readonly _zod: unknown;
}

export interface Forebond {
  settings(fields: Readonly<Record<string, Setting>>): Settings;
  /** A value with its unit, as "7 Cel". */
  quantity(description: string): Setting;
  /** As "10 min". */
  duration(description: string): Setting;
  number(description: string): Setting;
  /** true or false. */
  flag(description: string): Setting;
  /** One of some words. */
  word(description: string, words: readonly [string, ...string[]]): Setting;
  optional(setting: Setting): Setting;
  /** Codes of quality by name: 0 good, below 100 uncertain, from 100 on bad. */
  readonly quality: Readonly<Record<string, number>>;
}

/** What the file exports by default is a function that gives this. */
export interface Own {
  readonly kinds?: readonly RuleKind<unknown, object>[];
  readonly derived?: readonly DerivedKind[];
}

export interface Problem {
  readonly path: readonly (string | number)[];
  readonly problem: string;
  readonly fix: string;
}

/** Reads what a person wrote; a problem is told at the file's line, and the rest goes on. */
interface Reader {
  /** In the unit of the signal, or of the first input; null where it is absent. */
  limit(key: string): number | null;
  /** Milliseconds; the fallback where it is absent. */
  duration(key: string, fallbackMs: number): number;
  flag(key: string, fallback: boolean): boolean;
  has(key: string): boolean;
  report(problem: Problem): void;
  /** The canonical unit of the signal, or of the first input. */
  readonly unit: string;
}

export interface RuleSettingsReader extends Reader {
  /** A difference: 3 [degF] of a temperature is 1.67. */
  difference(key: string, fallback: number): number;
  number(key: string, fallback: number): number;
  text(key: string): string | null;
  /** 0 where the signal has none. */
  readonly resolution: number;
  readonly expectEveryMs: number | null;
  readonly signalCount: number;
}

export interface DerivedSettingsReader extends Reader {
  /** In the canonical unit that is named; null where it is absent. */
  quantity(key: string, unit: string): number | null;
  /** null where it is absent. */
  number(key: string): number | null;
}

/** 0 normal, 1 abnormal, 2 past a second limit. */
export type Severity = 0 | 1 | 2;

export interface Reading {
  /** When the value held, and when it is judged. */
  readonly at: number;
  readonly judged: number;
  readonly value: number;
  readonly quality: number;
  /** Which of the rule's signals it is, counted from 0. */
  readonly input: number;
}

/** The one deadline of a rule: when it wants to be asked without a reading; null for never. */
export interface Timer {
  at: number | null;
}

/** Why a rule answers as it does. */
export interface Evidence {
  readonly value?: number;
  readonly at?: number;
  readonly limit?: number;
  readonly side?: 'low' | 'high';
  readonly sinceMs?: number;
  readonly durationMs?: number;
  readonly reference?: number;
  readonly difference?: number;
  readonly allowed?: number;
  readonly perMs?: number;
  readonly items?: number;
  readonly pattern?: string;
}

/** S: what compile makes of the settings. M: what it remembers, an object of plain JSON. */
export interface RuleKind<S, M extends object> {
  readonly name: string;
  /** Raise it when the memory's shape changes. */
  readonly version: number;
  /** What it judges, in one sentence. */
  readonly summary: string;
  readonly written: Settings;
  /** Where it judges several signals at once. */
  readonly takes?: {
    readonly least: number;
    readonly most: number;
    readonly units: readonly string[] | 'same' | 'any';
  };
  compile(read: RuleSettingsReader): S;
  begin(settings: S, at: number, timer: Timer): M;
  sample(settings: S, memory: M, reading: Reading, timer: Timer): Severity;
  deadline?(settings: S, memory: M, at: number, timer: Timer): Severity;
  /** Its gate is open again; absent, it begins anew. */
  reopen?(settings: S, memory: M, at: number, timer: Timer): void;
  /** One of its signals can no longer be used. */
  without?(memory: M, input: number, timer: Timer): void;
  /** Nothing was observed in between; its deadline has moved already. */
  gap(settings: S, memory: M, fromMs: number, toMs: number, timer: Timer): void;
  /** The clock was set anew: every time in memory moves by so much. */
  shift(memory: M, deltaMs: number): void;
  evidence(settings: S, memory: M): Evidence;
  limits?(settings: S): {
    readonly lowLow: number | null;
    readonly low: number | null;
    readonly high: number | null;
    readonly highHigh: number | null;
  };
  /** With {$value}, {$limit} and the like for what the evidence holds. */
  sentence(evidence: Evidence): string;
  migrate?(old: unknown, version: number): M | null;
}

interface DerivedShape {
  readonly name: string;
  readonly summary: string;
  readonly inputs: readonly {
    readonly name: string;
    /** Canonical; K is a difference of temperatures. */
    readonly unit: string;
    readonly meaning: string;
    readonly optional?: true;
  }[];
  readonly unit: string;
  /** Decimals. */
  readonly digits: number;
  /** Where the formula is published, or whose judgement it is. */
  readonly source: string;
  readonly range?: string;
}

export interface Formula extends DerivedShape {
  /** null where it cannot tell. */
  compute(inputs: ArrayLike<number>): number | null;
}

export interface DerivedNow {
  readonly at: number;
  readonly inputs: ArrayLike<number>;
  readonly uncertain: boolean;
  /** Where it says why its answer is uncertain, or why there is none. */
  doubt: number;
}

export interface Settled<S> extends DerivedShape {
  readonly written: Settings;
  compile(read: DerivedSettingsReader): S;
  settled(settings: S, now: DerivedNow): number | null;
}

export interface Keeping<S, M extends object> extends DerivedShape {
  readonly version: number;
  readonly written: Settings;
  compile(read: DerivedSettingsReader): S;
  begin(settings: S, at: number): M;
  step(settings: S, memory: M, now: DerivedNow, timer: Timer): number | null;
  start?(settings: S, memory: M, at: number, now: number): void;
  gap(settings: S, memory: M, fromMs: number, toMs: number): void;
  shift(memory: M, deltaMs: number): void;
  migrate?(old: unknown, version: number): M | null;
}

export type DerivedKind = Formula | Settled<unknown> | Keeping<unknown, object>;
