/**
 * What waits for the disk, and who waits for it to be there.
 *
 * Always true: an acknowledgement is given only after the commit that holds its message; what is
 * committed is committed in the order it happened; when the disk refuses, nothing that somebody
 * waits for is dropped, and everything is tried again.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import { type AgentError, isDiskRefusal } from '../errors.ts';
import { limits } from '../limits.ts';
import {
  type HoldRow,
  type InputRow,
  inputKind,
  type LedgerBody,
  type OccurrenceRow,
  type OutboxRow,
  type OvenRunRow,
} from '../store/contract.ts';
import type { DeskEntry, TurnStore } from './ports.ts';

interface WaitingRow extends InputRow {
  /** Somebody waits for it. */
  readonly owed: boolean;
}

interface WaitingRecord {
  readonly body: LedgerBody;
  /** What the engine did, and people are told. */
  readonly effect: boolean;
  /** People know it already. */
  told: boolean;
}

export interface JournalState {
  /** Why the disk refuses; null while it does not. */
  readonly refusal: AgentError | null;
  readonly sinceMs: EpochMs | null;
  readonly waitingRows: number;
  readonly waitingBytes: number;
  /** Rows of samples given up because nobody waited for them and memory was short. */
  readonly droppedRows: number;
  readonly commits: number;
}

export class Journal {
  private readonly store: TurnStore;
  private readonly rowed: (row: InputRow) => void;
  private readonly lazyCommitMs: number;
  private readonly mayTell: () => void;
  private seq: number;
  private rows: WaitingRow[] = [];
  private bytes = 0;
  private ledger: WaitingRecord[] = [];
  private readonly occurrences = new Map<string, OccurrenceRow>();
  private readonly holds = new Map<string, HoldRow>();
  private readonly ovenRuns = new Map<string, OvenRunRow>();
  private readonly outbox = new Map<string, OutboxRow>();
  private owed: (() => void)[] = [];
  private committedAt = Number.NEGATIVE_INFINITY;
  private refusal: AgentError | null = null;
  private refusedSince: EpochMs | null = null;
  private triedAt = Number.NEGATIVE_INFINITY;
  private dropped = 0;
  private commits = 0;
  /** The ledger's last id on disk. */
  ledgerId = 0;

  /**
   * `rowed` hears of each row as it is given its number; rows nobody waits for wait `lazyCommitMs`;
   * `mayTell`: what was to be told is on disk, or the disk refuses and people come first.
   */
  constructor(
    store: TurnStore,
    ledgerId: number,
    rowed: (row: InputRow) => void,
    lazyCommitMs: number = limits.lazyCommitMs,
    mayTell: () => void = () => undefined,
  ) {
    this.store = store;
    this.rowed = rowed;
    this.lazyCommitMs = lazyCommitMs;
    this.mayTell = mayTell;
    this.seq = store.lastSeq;
    this.ledgerId = ledgerId;
  }

  get lastSeq(): number {
    return this.seq;
  }

  get state(): JournalState {
    return {
      refusal: this.refusal,
      sinceMs: this.refusedSince,
      waitingRows: this.rows.length,
      waitingBytes: this.bytes,
      droppedRows: this.dropped,
      commits: this.commits,
    };
  }

  /** How many acknowledgements wait. */
  get owing(): number {
    return this.owed.length;
  }

  /** A row of the input log. The body is copied. */
  row(judged: EpochMs, kind: number, body: Uint8Array, owed: boolean): number {
    this.seq += 1;
    const row = { seq: this.seq, judged, kind, body: body.slice(), owed };
    this.rows.push(row);
    this.bytes += body.length;
    this.rowed(row);
    return this.seq;
  }

  entry(entry: DeskEntry): void {
    if (entry.ledger !== null) this.ledger.push({ body: entry.ledger, effect: true, told: false });
    for (const row of entry.occurrences) this.occurrences.set(row.id, row);
    for (const row of entry.holds) this.holds.set(row.id, row);
    for (const row of entry.ovenRuns ?? []) this.ovenRuns.set(row.id, row);
  }

  /** What is to be told, or became of it. */
  outboxRow(row: OutboxRow): void {
    this.outbox.set(`${row.occurrence}/${row.step}/${row.channel}`, row);
  }

  /** A record that no effect made. */
  record(body: LedgerBody): void {
    this.ledger.push({ body, effect: false, told: false });
  }

  /** People were told what still waits here; the ledger will say that they heard it first. */
  toldBeforeKept(): void {
    for (const record of this.ledger) record.told = record.effect;
    this.mayTell();
  }

  owe(done: () => void): void {
    this.owed.push(done);
  }

  /** Is it time? At once where somebody waits or something happened, else once a second. */
  due(now: EpochMs): boolean {
    // A clock set back makes it due as well.
    const since = (at: EpochMs): number => Math.abs(now - at);
    if (this.refusal !== null) return since(this.triedAt) >= limits.commitRetryMs;
    if (this.owed.length > 0 || this.ledger.length > 0 || this.outbox.size > 0) return true;
    const wait = this.rows.length > 0 ? this.lazyCommitMs : limits.idleCommitMs;
    return since(this.committedAt) >= wait;
  }

  /**
   * Commits all that waits; true when it is on disk. `judgedTo`: every effect judged up to here
   * has been entered.
   */
  commit(judgedTo: EpochMs, now: EpochMs): boolean {
    this.triedAt = now;
    try {
      this.ledgerId = this.store.commit({
        inputs: this.rows,
        ledger: this.ledger.map(recordOf),
        occurrences: [...this.occurrences.values()],
        holds: [...this.holds.values()],
        ovenRuns: [...this.ovenRuns.values()],
        outbox: [...this.outbox.values()],
        judgedTo,
        aliveAt: now,
      });
    } catch (error) {
      if (!isDiskRefusal(error)) throw error;
      this.refused(error, now);
      return false;
    }
    this.commits += 1;
    this.committedAt = now;
    this.refusal = null;
    this.refusedSince = null;
    this.rows = [];
    this.bytes = 0;
    this.ledger = [];
    this.occurrences.clear();
    this.holds.clear();
    this.ovenRuns.clear();
    this.outbox.clear();
    const owed = this.owed;
    this.owed = [];
    for (const done of owed) done();
    this.mayTell();
    return true;
  }

  private refused(error: AgentError, now: EpochMs): void {
    this.refusal = error;
    this.refusedSince ??= now;
    if (error.code === 'STORE_DISK_FULL') this.relieve();
    if (this.bytes <= limits.backlogBytesMax) return;
    const kept: WaitingRow[] = [];
    let over = this.bytes - limits.backlogBytesMax;
    for (const row of this.rows) {
      if (over > 0 && !row.owed && row.kind === inputKind.samples) {
        over -= row.body.length;
        this.bytes -= row.body.length;
        this.dropped += 1;
      } else kept.push(row);
    }
    this.rows = kept;
  }

  private relieve(): void {
    try {
      this.store.relieve();
    } catch (error) {
      // That the disk refuses is known already; it is asked again with the next commit.
      if (!isDiskRefusal(error)) throw error;
    }
  }
}

const recordOf = ({ body, told }: WaitingRecord): LedgerBody =>
  told ? { ...body, told_before_kept: true } : body;
