/**
 * What the open store offers to the rest of the agent, in types; `openStore` in store.ts gives one.
 *
 * Always true: what a writing method returned from is on disk; what threw an AgentError
 * (STORE_DISK_FULL, STORE_DISK_FAILED) is wholly absent and may be tried again.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import type { AgentError } from '../errors.ts';
import type {
  HoldRow,
  InputRow,
  OccurrenceRow,
  OutboxRow,
  OvenRunRow,
  StoredSignal,
  Turn,
} from './contract.ts';
import type { EncodedSegment, SegmentSpan } from './segment.ts';

/** The end of the ledger's chain; id 0 and 32 zero bytes before the first record. */
export interface LedgerHead {
  readonly id: number;
  readonly hash: Uint8Array;
}

/** One record as chained: `record` is canonical JSON of `{id, ...body}`. */
export interface LedgerRow {
  readonly id: number;
  readonly record: string;
}

/** What opening found wrong or worth saying; the caller enters it in the ledger and tells people. */
export type Finding =
  /** Rows of the input log that were committed and are gone: disk damage. */
  | { readonly kind: 'lost'; readonly fromSeq: number; readonly toSeq: number }
  | { readonly kind: 'ledger-lost'; readonly fromId: number; readonly toId: number }
  /** The log is damaged behind this row, and so many commits at least that it held are gone. */
  | { readonly kind: 'log-cut'; readonly afterSeq: number; readonly commits: number }
  /** The ledger holds another record than was last noted outside the database. */
  | { readonly kind: 'ledger-differs'; readonly id: number }
  /** A row of the input log whose checksum does not hold; it is skipped. */
  | { readonly kind: 'damaged-input'; readonly seq: number; readonly judged: EpochMs }
  | { readonly kind: 'damaged-snapshot'; readonly seq: number }
  /** The database could not be read: it was moved aside and a new one begun. */
  | {
      readonly kind: 'unreadable';
      /** File names inside the data folder; null where there was only a log. */
      readonly movedTo: string | null;
      readonly why: string;
      /** The backup whose settings were taken over; null where there was none. */
      readonly restoredFrom: string | null;
    }
  /** There was a database, and there is none: somebody took the file away. A new one was begun. */
  | {
      readonly kind: 'gone';
      readonly path: string;
      /** The last record of the input log and of the ledger that were in it; 0 where nothing says so. */
      readonly toSeq: number;
      readonly toId: number;
      readonly restoredFrom: string | null;
    }
  /** The write-ahead log did not fit the main file, which is sound without it: it was set aside. */
  | { readonly kind: 'log-unreadable'; readonly movedTo: string; readonly why: string }
  | { readonly kind: 'high-water-unreadable' }
  | {
      readonly kind: 'migrated';
      readonly from: number;
      readonly to: number;
      readonly backup: string;
    }
  /** The reserve for a full disk could not be made. */
  | { readonly kind: 'no-ballast'; readonly why: string };

/** Kinds of findings by which something that was kept is lost; the others are a nuisance. */
export const lossKinds: readonly Finding['kind'][] = [
  'lost',
  'ledger-lost',
  'log-cut',
  'ledger-differs',
  'damaged-input',
  'unreadable',
  'gone',
  'log-unreadable',
];

/** Those by which records of the ledger itself are lost, or may be. */
export const ledgerLossKinds: readonly Finding['kind'][] = [
  'ledger-lost',
  'log-cut',
  'ledger-differs',
  'unreadable',
  'gone',
];

/** The engine's state at `seq`; `state` is opaque to the store. */
export interface SnapshotRow {
  readonly seq: number;
  readonly judged: EpochMs;
  readonly format: number;
  readonly revision: string;
  readonly state: Uint8Array;
}

/** A whole seal, written in one transaction; the snapshot is the state at `segment.lastSeq`. */
export interface Seal {
  readonly segment: EncodedSegment;
  readonly snapshot: Omit<SnapshotRow, 'seq'>;
  /** The segment's inputs that are not samples, kept for ever; `body` is their canonical JSON. */
  readonly commands: readonly CommandRow[];
}

/** A sealed input that is not a sample. */
export interface CommandRow {
  readonly seq: number;
  readonly judged: EpochMs;
  readonly body: string;
}

export interface SegmentRow extends SegmentSpan {
  readonly id: number;
}

export interface RunRow {
  readonly id: number;
  readonly started: EpochMs;
  readonly lastAlive: EpochMs;
  readonly judgedTo: EpochMs;
  /** Null where it did not stop cleanly. */
  readonly stopped: EpochMs | null;
}

export interface SiteRevisionRow {
  readonly hash: string;
  readonly firstSeq: number;
  readonly text: string;
}

export interface StoreSizes {
  /** The main file. */
  readonly fileBytes: number;
  readonly walBytes: number;
  /** The main file minus its free pages: what the space budget counts. */
  readonly usedBytes: number;
  readonly ballastBytes: number;
  /** Free to this process on the disk that holds the folder. */
  readonly diskFreeBytes: number;
  readonly diskBytes: number;
}

/** Reading on the writing thread: small things only; charts and exports have readers of their own. */
export interface StoreReader {
  signals(): StoredSignal[];
  siteRevisions(): SiteRevisionRow[];
  siteRevision(hash: string): SiteRevisionRow | null;
  /** Inputs after `seq`, ascending; rows whose checksum fails go to `damaged` and are skipped. */
  inputsAfter(
    seq: number,
    damaged: (row: { readonly seq: number; readonly judged: EpochMs }) => void,
  ): IterableIterator<InputRow>;
  /** Sealed inputs that are not samples, after `seq`, ascending. */
  commandsAfter(seq: number): IterableIterator<CommandRow>;
  ledgerAfter(id: number): IterableIterator<LedgerRow>;
  occurrence(id: string): OccurrenceRow | null;
  openOccurrences(): OccurrenceRow[];
  /** Occurrences that stood at any moment of [from, to), oldest raise first. */
  occurrencesBetween(from: EpochMs, to: EpochMs): OccurrenceRow[];
  /** Holds not lifted. */
  openHolds(): HoldRow[];
  /** What waits to be told, in the order it was written. */
  waitingOutbox(): OutboxRow[];
  /** All rows of one occurrence that are kept still, in the order they were written. */
  outboxOf(occurrence: string): OutboxRow[];
  holds(): HoldRow[];
  ovenRun(id: string): OvenRunRow | null;
  /** Runs that lasted into [from, to), newest first, at most so many; of one station or of all. */
  ovenRuns(from: EpochMs, to: EpochMs, limit: number, station: string | null): OvenRunRow[];
  segments(): SegmentRow[];
  /** Snapshots whose checksum holds, newest first; at most two. */
  snapshots(): SnapshotRow[];
  /** Newest first. */
  runs(limit: number): RunRow[];
}

export interface Store {
  readonly folder: string;
  /** The database file, for readers on connections of their own. */
  readonly path: string;
  readonly findings: readonly Finding[];
  readonly read: StoreReader;
  /** Highest sequence number ever given; the next input takes a higher one. */
  readonly lastSeq: number;
  /** Inputs at or below it are sealed; 0 before the first seal. */
  readonly sealedSeq: number;
  readonly ledgerHead: LedgerHead;
  /** The run before this one; null on the first start. */
  readonly previousRun: RunRow | null;

  /** Names of unreadable databases that stand in the folder, moved aside at some start. */
  readonly setAside: readonly string[];
  /** Why nothing written would be kept: a file of the store is gone from the folder. Null else. */
  readonly lost: AgentError | null;

  /**
   * Looks whether the files being written are still the folder's; once a second. True where the
   * lock was gone and was made again. Throws STORE_TAKEN_AWAY or STORE_TWO_AGENTS; until that is
   * over, whatever writes throws it too.
   */
  attend(): boolean;
  /** Something read was malformed: the next start checks all of the database. */
  noteDamage(): void;
  /** Writes the day's backup of settings where it is not there or no longer so; true where it did. */
  backUpSettings(atMs: EpochMs): boolean;

  /** Begins the run row that `commit` keeps alive; call once, before the first commit. */
  startRun(now: EpochMs): RunRow;
  stopRun(now: EpochMs): void;
  /** One turn, one transaction; returns the ledger's last id (this turn's records end there). */
  commit(turn: Turn): number;
  writeSegment(seal: Seal): void;
  /** Deletes at most `maxRows` sealed inputs; returns how many went. */
  deleteDead(maxRows?: number): number;
  /** Gives each signal its id, old or new, in the order asked. */
  registerSignals(signals: readonly Omit<StoredSignal, 'id'>[]): StoredSignal[];
  /** Keeps the text of a site revision; a known hash is left as it is. */
  keepSiteRevision(hash: string, text: string): void;

  /** Rewrites the high-water file: once a second and on stop. */
  note(): void;
  sizes(): StoreSizes;
  /**
   * Drops the raw samples of the oldest chunks, one slice, while the file uses more than
   * `untilBytes` or the disk has less than its reserve free; returns how many chunks lost them.
   */
  dropOldestBodies(untilBytes: number, maxBodies?: number): number;
  /** After STORE_DISK_FULL: gives up the ballast and one slice of the oldest raw samples. */
  relieve(): { readonly ballastReleased: boolean; readonly bodiesDropped: number };
  /** Re-makes the ballast, a slice a call, when there is room for it twice; true once it stands. */
  tendBallast(): boolean;
  /** A consistent copy of the database in `file`, made while the agent runs. */
  backup(file: string): Promise<void>;
  /** Notes the high water, closes the database, gives up the lock. */
  close(): void;
  /** As close; and what this opening made is taken away again, if there was no store before. */
  abandon(): void;
}

export interface StoreOptions {
  /** Default limits.ballastBytes; 0 for none. */
  readonly ballastBytes?: number;
  /** Wall clock, for names of files moved aside. */
  readonly now: () => EpochMs;
}
