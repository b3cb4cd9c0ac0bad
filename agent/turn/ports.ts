/**
 * What the turn leans on, as it sees it; agent/compose.ts hands it in.
 */
import type { Effect, MarkCommand } from '#rules/input.ts';
import type { Binding } from '#rules/plan/binding.ts';
import type { Plan } from '#rules/plan/plan.ts';
import type { EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import type {
  HoldRow,
  InputRow,
  LedgerBody,
  OccurrenceRow,
  OvenRunRow,
  Turn,
} from '../store/contract.ts';
import type { Unjudged } from './commands.ts';
import type { MarksMessage } from './said-marks.ts';

export interface DeskEntry {
  /** null where the ledger has it already. */
  readonly ledger: LedgerBody | null;
  readonly occurrences: readonly OccurrenceRow[];
  readonly holds: readonly HoldRow[];
  readonly ovenRuns?: readonly OvenRunRow[];
}

/** Keeps what effects say; gives what of it goes on disk. */
export interface EffectKeeper {
  take(effect: Effect): DeskEntry;
}

/** The disk. Both throw an AgentError when it refuses. */
export interface TurnStore {
  /** Highest sequence number given so far. */
  readonly lastSeq: number;
  /** All or nothing; returns the ledger's last id. */
  commit(turn: Turn): number;
  /** The disk is full: give something up. */
  relieve(): void;
}

/** Samples on their way into the log and the open segment, by index of the present plan. */
export interface SampleKeeper {
  /** The body of an input row; good until the next call. */
  pack(batch: SampleBatch, judged: EpochMs): Uint8Array;
  /** Adds to the open segment and to what is known as latest. */
  append(batch: SampleBatch): void;
}

export interface TurnIntake {
  take(
    topic: string,
    payload: Uint8Array,
    retained: boolean,
    beatMs: EpochMs,
    nowMs: EpochMs,
    out: SampleBatch,
    /** Who sent it; empty where that is not known. */
    from: string,
  ): void;
  /** What else the message says: marks. */
  marks(topic: string, payload: Uint8Array, retained: boolean): readonly Unjudged<MarkCommand>[];
  /** One of them was refused: why, and how to mend it behind a semicolon. */
  markRefused(mark: Unjudged<MarkCommand>, message: MarksMessage, why: string): void;
  /** By the samples' clock: what comes from here on is judged at or after `ms`. */
  passTo(ms: EpochMs): void;
  /** By the samples' clock: the greatest `at` seen, or what it was passed to; -Infinity before. */
  readonly engineTimeMs: EpochMs;
}

/** A site compiled: what changes together when a site or a wildcard's instances change. */
export interface CompiledPlan {
  readonly plan: Plan;
  readonly bindings: readonly Binding[];
}

/** What a turn did, told after it is on disk, or before where the disk refuses. */
export interface TurnNews {
  readonly effects: readonly Effect[];
  /** False where the disk refused: people first. */
  readonly kept: boolean;
  /** Occurrences of which somebody was told, or could not be. */
  readonly told?: readonly string[];
}

export type { InputRow, LedgerBody, Turn };
