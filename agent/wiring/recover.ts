/**
 * From the disk back to where the agent was: the newest snapshot, the log since then, the same
 * effects again, compared with the ledger. Equal is silent; what differs is entered, and told to
 * nobody twice.
 */

import type { ExtensionWatch } from '#rules/engine/switching.ts';
import { Engine, type EnginePorts } from '#rules/engine.ts';
import type { Effect, ExtensionInput, Input } from '#rules/input.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { type FedItem, feedItem } from '../replay/feed.ts';
import { canonicalJson } from '../store/canonical.ts';
import { type InputRow, inputKind } from '../store/contract.ts';
import { unpackFrame } from '../store/frame.ts';
import type { StoreReader } from '../store/store-types.ts';
import { begunAnewId, type Compared, compareWithLedger } from './compare-ledger.ts';
import { type Ahead, othersAhead } from './rows-ahead.ts';
import { type SavedState, savedState } from './saved-state.ts';

/** The row that named the site, where it could not be read and another source named it. */
export interface SiteAssumed {
  readonly seq: number;
  readonly revision: string;
}

export interface RecoverPorts {
  readonly read: StoreReader;
  readonly sealedSeq: number;
  /** The record after a sequence number, sealed and open; batches by index of the plan laid last. */
  readonly recordAfter: (seq: number) => Iterable<FedItem>;
  readonly planOf: (revision: string) => Plan;
  /** The site revision that was kept for a row; null where none was. */
  readonly revisionFor: (seq: number) => string | null;
  /** Speak of this plan's signals from here on: register them, lay out columns and indices. */
  readonly lay: (plan: Plan) => void;
  /** The plan index of each stored id under the plan laid last. */
  readonly indexById: () => Int32Array;
  /** Recorded samples, by index of the plan laid last: to the open segment, to intake's memory. */
  readonly remember: (batch: SampleBatch) => void;
  /** Derived samples made anew. */
  readonly rederived: (batch: SampleBatch) => void;
  readonly rebased: () => void;
  /** For the engine once it is live. */
  readonly watch?: ExtensionWatch;
  /** Own rules that stopped the last run; its log does not say so yet. */
  readonly stopped?: ExtensionInput | null;
  readonly damaged: (row: { readonly seq: number; readonly judged: EpochMs }) => void;
}

export interface Recovered extends Compared {
  readonly engine: Engine;
  /** Every effect since the snapshot, in order. */
  readonly effects: readonly Effect[];
  /** Unsealed inputs that are no samples: the next seal keeps them. */
  readonly commands: readonly UnsealedInput[];
  /** Moment of the first unsealed row. */
  readonly firstJudged: EpochMs | null;
  readonly assumed: SiteAssumed | null;
}

export interface UnsealedInput {
  readonly seq: number;
  readonly judged: EpochMs;
  readonly body: Uint8Array;
}

/** null where there is nothing on disk to go on from. */
export function recover(
  ports: RecoverPorts,
  judgedTo: EpochMs,
  emitLater: (effect: Effect) => void,
): Recovered | null {
  const recovery = new Recovery(ports, emitLater);
  return recovery.run(judgedTo);
}

class Recovery {
  private readonly ports: RecoverPorts;
  private readonly effects: Effect[] = [];
  private readonly commands: UnsealedInput[] = [];
  private readonly batch = new SampleBatch(4_096);
  private readonly derived = new SampleBatch();
  private readonly emitLater: (effect: Effect) => void;
  private readonly enginePorts: EnginePorts;
  /** Unsealed inputs that are no samples and were not fed yet, last first. */
  private ahead: Ahead[] = [];
  private live = false;
  private engine: Engine | null = null;
  private firstJudged: EpochMs | null = null;
  /** The damaged row that stands where the site should be named. */
  private missed: { readonly seq: number; readonly judged: EpochMs } | null = null;
  private assumed: SiteAssumed | null = null;
  /** Derived samples up to here are sealed. */
  private sealedTo = Number.NEGATIVE_INFINITY;

  constructor(ports: RecoverPorts, emitLater: (effect: Effect) => void) {
    this.ports = ports;
    this.emitLater = emitLater;
    this.enginePorts = {
      emit: (effect) => {
        if (this.live) this.emitLater(effect);
        else this.effects.push(effect);
      },
      planOf: (revision) => ports.planOf(revision),
      ...(ports.watch === undefined ? {} : { watch: ports.watch }),
    };
  }

  run(judgedTo: EpochMs): Recovered | null {
    const { ports } = this;
    const snapshot = ports.read.snapshots()[0] ?? null;
    const saved = snapshot === null ? null : savedState(snapshot);
    if (saved !== null) this.resume(saved);
    const fromSeq = snapshot?.seq ?? 0;
    if (fromSeq < ports.sealedSeq) this.fromSealed(fromSeq, saved, judgedTo);
    else {
      this.ahead = othersAhead(ports.read.inputsAfter(ports.sealedSeq, () => undefined));
      for (const row of this.openRows()) this.feed(row);
    }
    const { engine } = this;
    if (engine === null) return null;
    engine.advance(Math.max(judgedTo, engine.now));
    this.collect();
    this.live = true;
    return {
      engine,
      effects: this.effects,
      ...compareWithLedger(ports.read, saved?.ledgerId ?? begunAnewId(ports.read), this.effects),
      commands: this.commands,
      firstJudged: this.firstJudged,
      assumed: this.assumed,
    };
  }

  private openRows(): Iterable<InputRow> {
    const { read, sealedSeq, damaged } = this.ports;
    return read.inputsAfter(sealedSeq, (row) => {
      if (this.engine === null) this.missed ??= row;
      damaged(row);
    });
  }

  /**
   * The newest snapshot is not to be had: the one before it, or the beginning, and the sealed
   * record lead up to the log. What is open is remembered first, under the plans of its rows.
   */
  private fromSealed(fromSeq: number, saved: SavedState | null, judgedTo: EpochMs): void {
    const { ports } = this;
    let revision = saved?.engine.revision ?? null;
    let rebases = 0;
    for (const { body } of ports.read.commandsAfter(fromSeq)) {
      const input = JSON.parse(body) as Input;
      if (input.kind === 'site') revision = input.revision;
      if (input.kind === 'rebase') rebases += 1;
    }
    if (revision === null) return;
    ports.lay(ports.planOf(revision));
    for (const row of this.openRows()) {
      this.firstJudged ??= row.judged;
      if (row.kind === inputKind.samples) this.remember(row);
      else if (this.keepOpen(row).kind === 'rebase') rebases += 1;
    }
    if (saved !== null) ports.lay(ports.planOf(saved.engine.revision));
    this.sealedTo = Math.max(...ports.read.segments().map((segment) => segment.judgedTo));
    for (const item of ports.recordAfter(fromSeq)) {
      if (item.kind === 'input' && item.input.kind === 'rebase') rebases -= 1;
      this.feedRecorded(item, rebases > 0 ? Number.POSITIVE_INFINITY : judgedTo);
    }
  }

  private resume(saved: SavedState): void {
    const plan = this.ports.planOf(saved.engine.revision);
    this.ports.lay(plan);
    this.engine = Engine.restore(plan, saved.engine, this.enginePorts);
    this.heedStopped();
  }

  /** Beyond `judgedTo` it was taken and not yet judged: it waits, as it did. */
  private feedRecorded(item: FedItem, judgedTo: EpochMs): void {
    const { engine } = this;
    if (engine === null) {
      if (item.kind === 'input') this.begin(item.input);
      return;
    }
    if (item.kind === 'samples') {
      const { batch } = item;
      if (batch.count > 0 && batch.judged[batch.count - 1]! > judgedTo) engine.offerBatch(batch);
      else feedItem(engine, item);
    } else if (item.input.judged > judgedTo && item.input.kind === 'command')
      engine.offer(item.input);
    else feedItem(engine, item);
    this.collect();
    if (item.kind === 'input' && item.input.kind === 'site')
      this.ports.lay(this.ports.planOf(item.input.revision));
  }

  private feed(row: InputRow): void {
    this.firstJudged ??= row.judged;
    if (this.engine === null && row.kind !== inputKind.site) this.assumeSite(row);
    if (row.kind === inputKind.samples) this.feedSamples(row);
    else this.feedInput(row);
  }

  /** The row that names the site cannot be read; which site it was is known all the same. */
  private assumeSite({ seq, judged: next }: InputRow): void {
    const { missed } = this;
    const revision = this.ports.revisionFor(seq);
    if (revision === null) return;
    const judged = missed !== null && missed.judged < next ? missed.judged : next - 1;
    const body = new TextEncoder().encode(canonicalJson({ kind: 'site', judged, revision }));
    this.assumed = { seq: missed?.seq ?? seq - 1, revision };
    this.firstJudged = judged;
    this.begin(this.keepOpen({ seq: this.assumed.seq, judged, kind: inputKind.site, body }));
  }

  private feedSamples(row: InputRow): void {
    const { batch, engine } = this;
    if (engine === null) return;
    this.remember(row);
    // No samples that come later are judged before this row's first moment, but a change of plan
    // may be; up to there all is known, and so the queue stays short.
    let first = Math.min(row.judged, this.ahead.at(-1)?.soonest ?? row.judged);
    for (let i = 0; i < batch.count; i += 1) first = Math.min(first, batch.judged[i]!);
    if (first - 1 > engine.now) engine.advance(first - 1);
    this.collect();
    engine.offerBatch(batch);
  }

  private remember(row: InputRow): void {
    const { batch, ports } = this;
    batch.clear();
    unpackFrame(row.body, row.judged, batch, ports.indexById());
    ports.remember(batch);
  }

  private feedInput(row: InputRow): void {
    const { engine } = this;
    this.ahead.pop();
    if (engine === null) {
      this.begin(this.keepOpen(row));
      return;
    }
    const input = inputOf(row);
    engine.offer(input);
    if (input.kind === 'site' || input.kind === 'rebase') {
      engine.advance(input.judged);
      this.collect();
    }
    this.keepOpen(row);
  }

  /** The next seal keeps it; from here on the rows of the log speak of its plan and its clock. */
  private keepOpen(row: InputRow): Input {
    const input = inputOf(row);
    this.commands.push({ seq: row.seq, judged: row.judged, body: row.body });
    if (input.kind === 'site') this.ports.lay(this.ports.planOf(input.revision));
    if (input.kind === 'rebase') this.ports.rebased();
    return input;
  }

  private begin(input: Input): void {
    if (input.kind !== 'site') return;
    const plan = this.ports.planOf(input.revision);
    this.ports.lay(plan);
    this.engine = Engine.begin(plan, input.judged, this.enginePorts);
    this.heedStopped();
  }

  /** Known before anything is judged, or the same would stand still again. */
  private heedStopped(): void {
    const { stopped = null } = this.ports;
    if (stopped !== null) this.engine?.offer(stopped);
  }

  /** Derived samples made anew; those of the sealed record are in their segment already. */
  private collect(): void {
    const { derivedOut } = this.engine!;
    const { sealedTo, derived } = this;
    const { signal, at, judged, value, quality, flags, count } = derivedOut;
    for (let i = 0; i < count; i += 1)
      if (judged[i]! > sealedTo)
        derived.push(signal[i]!, at[i]!, judged[i]!, value[i]!, quality[i]!, flags[i]!);
    if (derived.count > 0) this.ports.rederived(derived);
    derived.clear();
    derivedOut.clear();
  }
}

const inputOf = (row: InputRow): Input => JSON.parse(new TextDecoder().decode(row.body)) as Input;
