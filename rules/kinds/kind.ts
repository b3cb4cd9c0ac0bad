/**
 * What a rule kind is: one typed judgement, as `band` or `lost`.
 *
 * A kind owns its rule's memory and touches nothing else: no clock, no randomness, no I/O.
 * It answers a small number a sample and makes no object for it; evidence and sentences are
 * made only when the answer changed. Memory is plain data that JSON holds whole, so that
 * snapshot, restore and the same inputs give the same answers.
 */
import type { z } from 'zod/mini';
import type { Hold, HoldWhat } from '../hold/hold.ts';
import type { QualityCode } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { SettingsReader } from './settings.ts';

/** 0 normal, 1 abnormal, 2 past the second limit (`low_low`, `high_high`). */
export type Severity = 0 | 1 | 2;

/** The sample under judgement. One object is reused for every call: copy what you keep. */
export interface Reading {
  /** When the value held. */
  at: EpochMs;
  /** When it is judged; the engine's now. */
  judged: EpochMs;
  /** In the signal's canonical unit; finite. */
  value: number;
  quality: QualityCode;
  /** Which of the rule's inputs it is, counted from 0. */
  input: number;
}

/** Somebody said that something happened to an item. One object is reused: copy what you keep. */
export interface Marking {
  /** When it happened; at or before `judged`, perhaps long before. */
  at: EpochMs;
  /** When it was said; the engine's now. */
  judged: EpochMs;
  /** Which rack, container, lot or shot; null for a mark of the place itself. */
  item: string | null;
  /** Which of the rule's marks it is, counted from 0. */
  input: number;
}

/** One clock that runs, for whoever asks what falls due. */
export interface OpenClock {
  /** null for the one clock of a place. */
  readonly item: string | null;
  readonly sinceMs: EpochMs;
  /** False where nobody has said it yet: it runs from the beginning of observation. */
  readonly said: boolean;
  readonly earlyMs: EpochMs;
  readonly dueMs: EpochMs;
  readonly severity: Severity;
}

/** A rule's single deadline. The engine reads it after each call. */
export interface Timer {
  at: EpochMs | null;
}

/** Why a rule answers as it does: what a person needs to judge the judgement. Canonical units. */
export interface Evidence {
  /** The value that decided, or the last one before silence. */
  readonly value?: number;
  /** When that value held. */
  readonly at?: EpochMs;
  readonly limit?: number;
  readonly side?: 'low' | 'high';
  /** Since when the condition has held. */
  readonly sinceMs?: EpochMs;
  /** Robust slope, units per hour. */
  readonly slopePerH?: number;
  /** The limit is reached no earlier and no later than this. */
  readonly earliestMs?: EpochMs;
  readonly latestMs?: EpochMs;
  /** How long without change or without a reading. */
  readonly durationMs?: number;
  /** Quality code of the last unusable reading. */
  readonly cause?: QualityCode;
  /** Which of the rule's inputs it is about, counted from 0, where it has several. */
  readonly input?: number;
  /** What the value is compared with: the median of the others, the target. */
  readonly reference?: number;
  /** How far from it, never negative, and how far it may be; of a temperature in K. */
  readonly difference?: number;
  readonly allowed?: number;
  /** The time in which that difference came about, where it is one of a value from itself. */
  readonly perMs?: number;
  /** The other of two inputs it is about. */
  readonly other?: number;
  /** The run rule that found it, as "2 of 3 beyond 2 sigma" (rules/kinds/run-words.ts). */
  readonly pattern?: string;
  /** How long it was where it should be, how long it had to be, and what time is left. */
  readonly reachedMs?: number;
  readonly requiredMs?: number;
  readonly leftMs?: number;
  /** The item it is about, and how many are as far. */
  readonly item?: string;
  readonly items?: number;
  /** Who put it on hold, as `Hold.by`, and why. */
  readonly heldBy?: string;
  readonly heldFor?: string;
}

/** What a kind of several inputs takes. */
export interface Takes {
  readonly least: number;
  readonly most: number;
  /** Canonical units in order, each input with a role of its own; or all of one unit; or any. */
  readonly units: readonly string[] | 'same' | 'any';
  /** What each is, in order, where they have roles. */
  readonly roles?: readonly string[];
}

/** What a kind that judges marks takes of them. */
export interface TakesMarks {
  readonly least: number;
  readonly most: number;
  /** What each is, in order. */
  readonly roles: readonly string[];
}

/** What a rule that judges marks knows of one: what it is of. */
export type MarkOf = HoldWhat | null;

export interface RulerLimits {
  readonly lowLow: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly highHigh: number | null;
  /** At the limit itself it counts as past. */
  readonly inclusive?: boolean;
}

export interface RuleKind<Settings = unknown, Memory = unknown> {
  readonly name: string;
  /** Raise it when the memory's shape changes, and teach `migrate` the old one. */
  readonly version: number;
  /** One sentence: what it judges. */
  readonly summary: string;
  /** The settings as a person writes them in the site file. */
  readonly written: z.ZodMiniType;
  /** Several inputs; absent for a kind that judges one signal. */
  readonly takes?: Takes;
  /** Marks it judges; absent for a kind that judges none. Such a kind takes no gate. */
  readonly marks?: TakesMarks;
  /** Of a rule kind the site brings in a file of its own: which file, and which text of it. */
  readonly extension?: string;
  /** True for the kind that tells whether the signal is usable at all (silence, nonsense). */
  readonly watchesHealth?: boolean;
  /** Written settings to canonical numbers; problems go to the reader, all of them. */
  compile(read: SettingsReader): Settings;
  /** Observation begins at `at`. */
  begin(settings: Settings, at: EpochMs, timer: Timer): Memory;
  /**
   * Its gates are open again. Absent, the rule begins anew; a kind that knows its signal from before
   * has this, to keep what it knows. Its answer is normal.
   */
  reopen?(settings: Settings, memory: Memory, at: EpochMs, timer: Timer): void;
  /**
   * Memory that just began answers `severity` until readings say otherwise: the alarm stands, since
   * `sinceMs`, and the site file gave its rule other terms. Absent, the first judgement may end it.
   */
  stand?(
    settings: Settings,
    memory: Memory,
    severity: Severity,
    sinceMs: EpochMs,
    timer: Timer,
  ): void;
  /**
   * Its memory fits any settings, as long as inputs and marks are the same: after a change of
   * settings it goes on, and `deadline` is asked at once. What people said is not forgotten so.
   */
  readonly outlives?: true;
  sample(settings: Settings, memory: Memory, reading: Reading, timer: Timer): Severity;
  /**
   * Somebody said that something happened. Asked even while the rule is unjudged: what was said
   * is known; the answer then waits.
   */
  mark?(settings: Settings, memory: Memory, marking: Marking, timer: Timer): Severity;
  /**
   * All holds that stand, told before it first judges and whenever one is set or lifted. A kind that has
   * this knows from it what is on hold, and judges no signal.
   */
  holds?(settings: Settings, memory: Memory, standing: readonly Hold[], at: EpochMs): Severity;
  /** Why it cannot take this mark, in a clause; null where it can. Asked of every rule before any takes it. */
  refuses?(settings: Settings, memory: Memory, marking: Marking): string | null;
  /**
   * Items that passed the second limit since it was last asked, '' for the place itself. With it
   * a rule's hold is set on each of these, not on a raise.
   */
  passed?(memory: Memory): readonly string[];
  /** The clocks that run, the oldest first. */
  clocks?(settings: Settings, memory: Memory): readonly OpenClock[];
  /** The deadline came; `at` is the deadline itself, never later. */
  deadline?(settings: Settings, memory: Memory, at: EpochMs, timer: Timer): Severity;
  /** A reading without usable value; only asked of a kind that `watchesHealth`. */
  unusable?(settings: Settings, memory: Memory, reading: Reading, timer: Timer): Severity;
  /**
   * One of its inputs can no longer be used. A kind that has this goes on with `takes.least` of
   * them; any other is unjudged while one is missing. It forgets the input and decides nothing.
   */
  without?(memory: Memory, input: number, timer: Timer): void;
  /**
   * Nothing was observed from `fromMs` to `toMs`: downtime, or the signal could not be used.
   * The engine has moved the deadline by as much already.
   */
  gap(settings: Settings, memory: Memory, fromMs: EpochMs, toMs: EpochMs, timer: Timer): void;
  /** Every time in memory moves by `deltaMs`: the clock was set anew. */
  shift(memory: Memory, deltaMs: number): void;
  evidence(settings: Settings, memory: Memory): Evidence;
  /** Limits that a value's ruler is drawn with, where the kind has any. Canonical units. */
  limits?(settings: Settings): RulerLimits;
  /** The sentence of a rule that brings none of its own, with `{$name}` for what the evidence holds. */
  sentence(evidence: Evidence): string;
  /** An older version's memory in today's shape; null where it cannot be carried over. */
  migrate?(old: unknown, version: number): Memory | null;
  /** What a snapshot keeps of it; the memory itself where absent. */
  save?(memory: Memory): unknown;
}
