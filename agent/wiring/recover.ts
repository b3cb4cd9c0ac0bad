/**
 * From the disk back to where the agent was: the newest snapshot, the log since then, the same
 * effects again, compared with the ledger. Equal is silent; what differs is entered, and told to
 * nobody twice.
 */

import type { EngineState } from '#rules/engine/state.ts';
import { Engine, type EnginePorts } from '#rules/engine.ts';
import type { Effect, Input } from '#rules/input.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { ledgerBody } from '../alarms/desk.ts';
import { type FedItem, feedItem } from '../replay/feed.ts';
import { canonicalJson } from '../store/canonical.ts';
import { type InputRow, inputKind } from '../store/contract.ts';
import { unpackFrame } from '../store/frame.ts';
import type { SnapshotRow, StoreReader } from '../store/store-types.ts';

/** The state of a snapshot: the engine's, and how far the ledger was. */
export interface SavedState {
  readonly engine: EngineState;
  readonly ledgerId: number;
}

export const savedStateFormat = 1;

export interface RecoverPorts {
  readonly read: StoreReader;
  readonly sealedSeq: number;
  /** The record after a sequence number, sealed and open; batches by index of the plan laid last. */
  readonly recordAfter: (seq: number) => Iterable<FedItem>;
  readonly planOf: (revision: string) => Plan;
  /** Speak of this plan's signals from here on: register them, lay out columns and indices. */
  readonly lay: (plan: Plan) => void;
  /** The plan index of each stored id under the plan laid last. */
  readonly indexById: () => Int32Array;
  /** Recorded samples, by index of the plan laid last: to the open segment, to intake's memory. */
  readonly remember: (batch: SampleBatch) => void;
  /** Derived samples made anew. */
  readonly rederived: (batch: SampleBatch) => void;
  readonly rebased: () => void;
  readonly damaged: (row: { readonly seq: number; readonly judged: EpochMs }) => void;
}

export interface Recovered {
  readonly engine: Engine;
  /** Every effect since the snapshot, in order. */
  readonly effects: readonly Effect[];
  /** How many of them stand in the ledger already. */
  readonly known: number;
  /** The first record that differs from what was recomputed; null where all agree. */
  readonly differs: { readonly ledgerId: number; readonly recomputed: unknown } | null;
  /** Unsealed inputs that are no samples: the next seal keeps them. */
  readonly commands: readonly UnsealedInput[];
  /** Moment of the first unsealed row. */
  readonly firstJudged: EpochMs | null;
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
  private readonly emitLater: (effect: Effect) => void;
  /** Unsealed inputs that are no samples and were not fed yet, last first. */
  private ahead: Ahead[] = [];
  private live = false;
  private engine: Engine | null = null;
  private firstJudged: EpochMs | null = null;

  constructor(ports: RecoverPorts, emitLater: (effect: Effect) => void) {
    this.ports = ports;
    this.emitLater = emitLater;
  }

  run(judgedTo: EpochMs): Recovered | null {
    const { ports } = this;
    const snapshot = ports.read.snapshots()[0] ?? null;
    const saved = snapshot === null ? null : savedState(snapshot);
    if (saved !== null) this.resume(saved);
    // The newest snapshot was damaged: the one before it and the sealed record lead up to the log.
    const behind = snapshot !== null && snapshot.seq < ports.sealedSeq;
    if (behind) for (const item of ports.recordAfter(snapshot.seq)) this.feedRecorded(item);
    this.ahead = othersAhead(ports.read.inputsAfter(ports.sealedSeq, () => {}));
    for (const row of ports.read.inputsAfter(ports.sealedSeq, ports.damaged))
      this.feed(row, !behind);
    const { engine } = this;
    if (engine === null) return null;
    engine.advance(Math.max(judgedTo, engine.now));
    this.collect();
    this.live = true;
    return {
      engine,
      effects: this.effects,
      ...this.compare(saved?.ledgerId ?? 0),
      commands: this.commands,
      firstJudged: this.firstJudged,
    };
  }

  private readonly enginePorts: EnginePorts = {
    emit: (effect) => {
      if (this.live) this.emitLater(effect);
      else this.effects.push(effect);
    },
    planOf: (revision) => this.ports.planOf(revision),
    leave: () => this.collect(),
  };

  private resume(saved: SavedState): void {
    const plan = this.ports.planOf(saved.engine.revision);
    this.ports.lay(plan);
    this.engine = Engine.restore(plan, saved.engine, this.enginePorts);
  }

  private feedRecorded(item: FedItem): void {
    feedItem(this.engine!, item);
    this.engine!.derivedOut.clear();
    if (item.kind === 'input' && item.input.kind === 'site')
      this.ports.lay(this.ports.planOf(item.input.revision));
  }

  private feed(row: InputRow, judge: boolean): void {
    this.firstJudged ??= row.judged;
    if (row.kind === inputKind.samples) this.feedSamples(row, judge);
    else this.feedInput(row, judge);
  }

  private feedSamples(row: InputRow, judge: boolean): void {
    const { batch, engine, ports } = this;
    if (engine === null) return;
    batch.clear();
    unpackFrame(row.body, row.judged, batch, ports.indexById());
    ports.remember(batch);
    if (!judge) return;
    // No samples that come later are judged before this row's first moment, but a change of plan
    // may be; up to there all is known, and so the queue stays short.
    let first = Math.min(row.judged, this.ahead.at(-1)?.soonest ?? row.judged);
    for (let i = 0; i < batch.count; i += 1) first = Math.min(first, batch.judged[i]!);
    if (first - 1 > engine.now) engine.advance(first - 1);
    this.collect();
    engine.offerBatch(batch);
  }

  private feedInput(row: InputRow, judge: boolean): void {
    const input = JSON.parse(new TextDecoder().decode(row.body)) as Input;
    this.commands.push({ seq: row.seq, judged: row.judged, body: row.body });
    this.ahead.pop();
    if (this.engine === null) {
      if (input.kind !== 'site') return;
      const plan = this.ports.planOf(input.revision);
      this.ports.lay(plan);
      this.engine = Engine.begin(plan, input.judged, this.enginePorts);
      return;
    }
    if (judge) this.engine.offer(input);
    if (input.kind !== 'site' && input.kind !== 'rebase') return;
    if (judge) this.engine.advance(input.judged);
    this.collect();
    if (input.kind === 'site') this.ports.lay(this.ports.planOf(input.revision));
    else this.ports.rebased();
  }

  private collect(): void {
    const { derivedOut } = this.engine!;
    this.ports.rederived(derivedOut);
    derivedOut.clear();
  }

  /** What was recomputed against what stands in the ledger since the snapshot. */
  private compare(ledgerId: number): Pick<Recovered, 'known' | 'differs'> {
    let known = 0;
    for (const { id, record } of this.ports.read.ledgerAfter(ledgerId)) {
      const {
        id: _,
        told_before_kept: __,
        ...body
      } = JSON.parse(record) as { type: string } & Record<string, unknown>;
      if (!effectTypes.has(body.type)) continue;
      const effect = this.effects[known];
      known += 1;
      const recomputed = effect === undefined ? null : ledgerBody(effect);
      if (recomputed === null || canonicalJson(recomputed) !== canonicalJson(body))
        return { known: this.effects.length, differs: { ledgerId: id, recomputed } };
    }
    return { known, differs: null };
  }
}

interface Ahead {
  /** The first moment of this and the inputs behind it, as far as the clock's next step back. */
  readonly soonest: EpochMs;
}

function othersAhead(rows: Iterable<InputRow>): Ahead[] {
  const others: Pick<InputRow, 'kind' | 'judged'>[] = [];
  for (const { kind, judged } of rows)
    if (kind !== inputKind.samples) others.push({ kind, judged });
  others.reverse();
  let soonest = Number.POSITIVE_INFINITY;
  return others.map(({ kind, judged }) => {
    soonest = kind === inputKind.rebase ? judged : Math.min(soonest, judged);
    return { soonest };
  });
}

const effectTypes: ReadonlySet<string> = new Set(['transition', 'judgeable', 'hold', 'refused']);

function savedState(snapshot: SnapshotRow): SavedState {
  if (snapshot.format !== savedStateFormat)
    throw new RangeError(`the snapshot has format ${snapshot.format}`);
  return JSON.parse(new TextDecoder().decode(snapshot.state)) as SavedState;
}

export const stateBytes = (engine: Engine, ledgerId: number): Uint8Array => {
  const saved: SavedState = { engine: engine.save(), ledgerId };
  return new TextEncoder().encode(JSON.stringify(saved));
};
