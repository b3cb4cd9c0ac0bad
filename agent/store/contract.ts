/**
 * What the store promises to the rest of the agent, in types.
 *
 * Always true: what `commit` returned from is on disk (synchronous=FULL); one turn is there whole
 * or not at all; the ledger's chain is unbroken; a reader never sees a sample twice or a hole
 * between sealed and open.
 */
import type { EpochMs, SampleBatch } from '#rules/signal/sample.ts';

/** A signal as the store knows it; `id` is given once and never reused. */
export interface StoredSignal {
  readonly id: number;
  readonly name: string;
  readonly unit: string;
  readonly digits: number | null;
  readonly kind: 'measured' | 'derived' | 'manual';
}

/** Kinds of a row of the input log, as stored. */
export const inputKind = {
  gap: 0,
  rebase: 1,
  site: 2,
  samples: 3,
  command: 4,
  extension: 5,
} as const;

/** One row of the input log. `body` of samples: agent/store/frame.ts; of the rest: canonical JSON in UTF-8. */
export interface InputRow {
  readonly seq: number;
  readonly judged: EpochMs;
  readonly kind: number;
  readonly body: Uint8Array;
}

export interface OccurrenceRow {
  readonly id: string;
  readonly rule: string;
  readonly state: string;
  readonly raised: EpochMs;
  readonly closed: EpochMs | null;
  /** JSON the desk owns. */
  readonly detail: string;
}

export interface HoldRow {
  readonly id: string;
  readonly what: string;
  readonly item: string;
  readonly since: EpochMs;
  readonly lifted: EpochMs | null;
  readonly detail: string;
}

export interface OvenRunRow {
  readonly id: string;
  readonly station: string;
  readonly opened: EpochMs;
  readonly closed: EpochMs | null;
  readonly detail: string;
}

/**
 * What waits to be told, or was. `occurrence`, `step` and `channel` name it: a row of the same name
 * takes its place.
 */
export interface OutboxRow {
  readonly occurrence: string;
  readonly step: number;
  /** `<channel>/<person or name>`; `chase` for the row that says when the next step is due. */
  readonly channel: string;
  /** Not before this. */
  readonly due: EpochMs;
  readonly tries: number;
  /** When it was done with; null while it waits. */
  readonly done: EpochMs | null;
  /** How it ended; null while it waits. */
  readonly outcome: string | null;
  /** Why it waits still, or ended as it did. */
  readonly cause: string | null;
  /** JSON telling owns. */
  readonly detail: string;
}

/** A ledger record before it is chained: any JSON object; `type` names it. */
export type LedgerBody = { readonly type: string } & Readonly<Record<string, unknown>>;

/** All that one turn wants on disk, in one transaction. */
export interface Turn {
  readonly inputs: readonly InputRow[];
  readonly ledger: readonly LedgerBody[];
  readonly occurrences: readonly OccurrenceRow[];
  readonly holds: readonly HoldRow[];
  readonly ovenRuns?: readonly OvenRunRow[];
  readonly outbox?: readonly OutboxRow[];
  /** Effects judged up to here are in the ledger. */
  readonly judgedTo: EpochMs;
  /** Engine time now; the next start counts its gap from here. */
  readonly aliveAt: EpochMs;
}

/** Why the disk refused; the turn is not there, and may be tried again. */
export type RefusalCode = 'STORE_DISK_FULL' | 'STORE_DISK_FAILED';

/** One point of a series: [at, min, max, mean, count, bad_count]; min, max and mean are null where nothing was usable. */
export type SeriesPoint = readonly [
  at: EpochMs,
  min: number | null,
  max: number | null,
  mean: number | null,
  count: number,
  badCount: number,
];

/** A column of one signal's open samples, copied out for a reader. */
export type OpenColumn = Pick<
  SampleBatch,
  'count' | 'at' | 'judged' | 'value' | 'quality' | 'flags'
>;
