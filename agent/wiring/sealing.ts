/**
 * Sealing the open segment once an hour, on a thread, while the turn goes on.
 *
 * Always true: what is frozen stands whole in the input log and readable in memory until the
 * segment that holds it is committed; a sealing that failed is tried again; the snapshot is the
 * engine's state at the last sealed row.
 */
import type { Engine } from '#rules/engine.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import type { FrozenColumns, OpenColumns } from '../store/columns.ts';
import { type InputRow, inputKind, type StoredSignal } from '../store/contract.ts';
import type { EncodedSegment } from '../store/segment.ts';
import type { Seal } from '../store/store-types.ts';
import type { UnsealedInput } from './recover.ts';
import { savedStateFormat, stateBytes } from './saved-state.ts';

export interface SealingParts {
  readonly everyMs: number;
  readonly columns: OpenColumns;
  readonly signals: () => readonly StoredSignal[];
  readonly encode: (
    frozen: FrozenColumns,
    signals: readonly StoredSignal[],
  ) => Promise<EncodedSegment>;
  readonly write: (seal: Seal) => void;
  /** How many samples ever came; to tell how many are open. */
  readonly samples: () => number;
  readonly failed: (error: unknown) => void;
}

interface Job {
  readonly frozen: FrozenColumns;
  readonly snapshot: Seal['snapshot'];
  readonly commands: readonly UnsealedInput[];
}

export class Sealing {
  private readonly parts: SealingParts;
  private commands: UnsealedInput[];
  /** Judged time of the first row since the last seal; null while there is none. */
  private from: EpochMs | null;
  private afterSeq: number;
  private samplesSealed = 0;
  private job: Job | null = null;
  private running: Promise<void> | null = null;
  private retryAt = 0;

  constructor(
    parts: SealingParts,
    at: {
      readonly afterSeq: number;
      readonly from: EpochMs | null;
      readonly commands: readonly UnsealedInput[];
    },
  ) {
    this.parts = parts;
    this.afterSeq = at.afterSeq;
    this.from = at.from;
    this.commands = [...at.commands];
  }

  /** A row was given to the log. */
  row(row: InputRow): void {
    this.from ??= row.judged;
    if (row.kind !== inputKind.samples) this.commands.push(row);
  }

  due(now: EpochMs): boolean {
    if (this.running !== null) return false;
    if (this.job !== null) return now >= this.retryAt;
    if (this.from === null) return false;
    return (
      // A clock set back by more makes it due as well.
      Math.abs(now - this.from) >= this.parts.everyMs ||
      this.parts.samples() - this.samplesSealed >= limits.openSamplesMax
    );
  }

  /** The sealing under way, to its end; nothing where there is none. */
  async ended(): Promise<void> {
    await this.running;
  }

  /** Everything up to `lastSeq` is committed and the engine stands there. */
  begin(engine: Engine, lastSeq: number, ledgerId: number): Promise<void> {
    this.job ??= this.freeze(engine, lastSeq, ledgerId);
    if (this.job === null) return Promise.resolve();
    this.running ??= this.run(this.job).finally(() => {
      this.running = null;
    });
    return this.running;
  }

  private freeze(engine: Engine, lastSeq: number, ledgerId: number): Job | null {
    if (this.from === null || lastSeq <= this.afterSeq) return null;
    const frozen = this.parts.columns.freeze({
      firstSeq: this.afterSeq + 1,
      lastSeq,
      judgedFrom: this.from,
      judgedTo: engine.now,
    });
    const job: Job = {
      frozen,
      commands: this.commands,
      snapshot: {
        judged: engine.now,
        format: savedStateFormat,
        revision: engine.plan.revision,
        state: stateBytes(engine, ledgerId),
      },
    };
    this.commands = [];
    this.from = null;
    this.samplesSealed = this.parts.samples();
    this.afterSeq = lastSeq;
    return job;
  }

  private async run(job: Job): Promise<void> {
    try {
      const segment = await this.parts.encode(job.frozen, this.parts.signals());
      this.parts.write({
        segment,
        snapshot: job.snapshot,
        commands: job.commands.map(({ seq, judged, body }) => ({
          seq,
          judged,
          body: new TextDecoder().decode(body),
        })),
      });
      this.parts.columns.release(job.frozen);
      this.job = null;
    } catch (error) {
      this.retryAt = job.frozen.span.judgedTo + limits.sealRetryMs;
      this.parts.failed(error);
    }
  }
}
