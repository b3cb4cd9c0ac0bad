/**
 * The turn of the live agent: arrivals are taken in beats, judged, committed, acknowledged, told.
 *
 * On the wall clock a beat is a point of a 20 ms grid; what arrived since the last one is judged
 * at the next. Between beats waiting publishers are served by committing input rows alone, which
 * carry the beat they will be judged at. On the samples' own clock time is what the samples say.
 *
 * Always true: nothing is judged at a moment the engine has passed, for in the record it would
 * stand before what was judged there. By the samples' clock a moment is open until a later sample
 * comes, or none does for a while.
 */
import type { Engine } from '#rules/engine.ts';
import type { Effect, Input, PersonId } from '#rules/input.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import { inputKind, type LedgerBody } from '../store/contract.ts';
import { Changes, freeMoment } from './changes.ts';
import { CommandQueue, refusedUntimed, type Unjudged } from './commands.ts';
import type { LiveParts } from './live-parts.ts';
import { passMarks } from './said-marks.ts';

type Done = () => void;
type Taking = (beatMs: EpochMs, nowMs: EpochMs, out: SampleBatch) => void;

export class Live {
  private readonly parts: LiveParts;
  private engine: Engine | null;
  private readonly batch = new SampleBatch(4_096);
  /** Who waits for what is in the open batch; they wait for the disk once it is a row. */
  private batchOwed: (() => void)[] = [];
  private beat: EpochMs = 0;
  /** Effects not yet told. */
  private untold: Effect[] = [];
  private readonly commands = new CommandQueue();
  private beatTimer: NodeJS.Timeout | null = null;
  private groupTimer: NodeJS.Immediate | null = null;
  readonly changes = new Changes((shared, input) => this.change(shared, input));
  private tookAt = 0;
  private stopped = false;

  constructor(parts: LiveParts, engine: Engine | null) {
    this.parts = parts;
    this.engine = engine;
  }

  /** The engine's port for effects. */
  readonly emit = (effect: Effect): void => {
    this.untold.push(effect);
    this.parts.journal.entry(this.parts.desk.take(effect));
  };

  get engineNow(): EpochMs | null {
    return this.engine?.now ?? null;
  }

  /** The engine of a first start on the wall clock. */
  start(engine: Engine): void {
    this.engine = engine;
  }

  get running(): Engine | null {
    return this.engine;
  }

  /** One message, `from` a device; `done` acknowledges it, at once for QoS 0, else after its commit. */
  take(topic: string, data: Uint8Array, retain: boolean, qos: number, done: Done, from = ''): void {
    const { intake, journal } = this.parts;
    // Too many wait for a disk that refuses: neither kept nor acknowledged, it is sent again.
    if (this.stopped || (qos > 0 && this.owing + this.commands.length >= limits.unacknowledgedMax))
      return;
    this.taking((beatMs, nowMs, out) => {
      intake.take(topic, data, retain, beatMs, nowMs, out, from);
    });
    const at = this.engine === null ? null : this.beat;
    const waits = passMarks({ topic, data, retain, qos, from }, intake, this.commands, at, done);
    if (qos === 0) done();
    else if (!waits) {
      this.batchOwed.push(done);
      if (this.owing >= limits.groupCommitMessages && journal.state.refusal === null) this.group();
      else this.groupTimer ??= setImmediate(() => this.group());
    }
    this.wake();
  }

  /**
   * A reading that somebody enters: `take` puts it into the open batch, `record` says for the ledger
   * who did. Settles once both are on disk; false where nothing was taken.
   */
  enter(take: Taking, record: (batch: SampleBatch, i: number) => LedgerBody): Promise<boolean> {
    const { journal } = this.parts;
    const i = this.batch.count;
    this.taking(take);
    if (this.batch.count === i) return Promise.resolve(false);
    const { promise, resolve } = Promise.withResolvers<boolean>();
    journal.record(record(this.batch, i));
    this.batchOwed.push(() => resolve(true));
    this.rowOpen();
    this.wake();
    return promise;
  }

  private get owing(): number {
    return this.parts.journal.owing + this.batchOwed.length;
  }

  /** Lets samples into the open batch, with the beat they will be judged at. */
  private taking(take: Taking): void {
    const { mode, intake, now } = this.parts;
    if (mode === 'wall') {
      const nowMs = now();
      this.openBeat(nowMs);
      take(this.beat, nowMs, this.batch);
      return;
    }
    this.tookAt = performance.now();
    if (this.engine !== null) intake.passTo(this.engine.now + 1);
    take(0, 0, this.batch);
  }

  /** A person's command; settles once it is committed, with what it caused. */
  command(command: Unjudged): Promise<readonly Effect[]> {
    if (this.engine === null) return Promise.resolve([refusedUntimed(command)]);
    if (this.parts.mode === 'wall') this.openBeat(this.parts.now());
    this.wake();
    return this.commands.add(command, this.beat);
  }

  /**
   * Another plan from here on: what came before is in the log under the old one. Returns the
   * moment of the change. The caller keeps the revision, and lays out bindings anew right after.
   */
  adopt(revision: string, by?: PersonId): EpochMs {
    return this.changes.adopt(revision, by);
  }

  /** Enters a change at the next moment that is free, or at `shared`. */
  private change(shared: EpochMs | null, input: (judged: EpochMs) => Input): EpochMs {
    this.rowOpen();
    const { engine, beat } = this;
    const { mode, intake, now } = this.parts;
    if (engine === null) throw new Error('there is no engine to change anything of');
    const wallMs = mode === 'wall' ? now() : null;
    const moment = shared === engine.now ? engine.now : freeMoment(engine.now, wallMs, beat);
    this.input(input(moment));
    engine.advance(moment);
    // Derived samples speak of the plan that is being left.
    this.collect();
    if (mode === 'samples') intake.passTo(moment + 1);
    return moment;
  }

  /** Any other input of the shell's: gaps and clocks. */
  input(input: Input): void {
    const { journal, bodyOf } = this.parts;
    journal.row(input.judged, inputKind[input.kind], bodyOf(input), false);
    this.engine?.offer(input);
  }

  /** Ten times a second: what is due is judged, committed and told, whether or not anything arrives. */
  tick(): void {
    if (this.stopped) return;
    if (this.parts.mode === 'samples') {
      this.flush();
      return;
    }
    const now = this.parts.now();
    if (this.beat > 0 && this.beat <= now) this.flush();
    this.engine?.advance(now);
    this.finish(now);
  }

  /** All that is open is judged and committed now; nothing is taken afterwards. */
  stop(): void {
    this.flush();
    this.idle();
    this.stopped = true;
    if (this.beatTimer !== null) clearTimeout(this.beatTimer);
    if (this.groupTimer !== null) clearImmediate(this.groupTimer);
    const { engine } = this;
    if (engine !== null) {
      this.collect();
      this.tellAll(this.parts.journal.commit(engine.now, engine.now));
    }
  }

  /** On the samples' clock: nothing came for so long, in real time, that nothing more is waited for. */
  idleFor(ms: number): void {
    if (performance.now() - this.tookAt >= ms) this.idle();
  }

  /** What waits for its moment is judged. */
  private idle(): void {
    if (this.parts.mode !== 'samples' || this.engine === null) return;
    const until = this.engine.waitsUntil;
    if (until !== null) this.engine.advance(until);
    this.finish(this.engine.now);
  }

  /** Rows and judges whatever is open, so that the record and the engine stand at one point. */
  settle(): boolean {
    this.flush();
    const { engine } = this;
    if (engine === null) return false;
    this.collect();
    const kept = this.parts.journal.commit(engine.now, engine.now);
    this.tellAll(kept);
    return kept;
  }

  /** A beat lies at least 2 ms ahead of what it takes, so that a change of plan fits in before it. */
  private openBeat(now: EpochMs): void {
    if (this.beat > 0 && this.beat <= now + 1) this.flush();
    if (this.beat > 0) return;
    const from = Math.max(now, this.engine?.now ?? 0) + 1;
    this.beat = Math.floor(from / limits.beatMs) * limits.beatMs + limits.beatMs;
  }

  private wake(): void {
    if (this.beatTimer !== null) return;
    const wait = this.parts.mode === 'wall' ? this.beat - this.parts.now() : limits.beatMs;
    this.beatTimer = setTimeout(() => this.flush(), Math.max(0, wait));
  }

  /** Judges the open beat. */
  private flush(): void {
    if (this.beatTimer !== null) clearTimeout(this.beatTimer);
    this.beatTimer = null;
    this.rowOpen();
    const { mode, intake } = this.parts;
    const { engine } = this;
    if (engine === null) return;
    const late = mode === 'samples' && this.commands.waits;
    const soon = Math.max(engine.now, intake.engineTimeMs) + 1;
    const to = mode === 'wall' ? this.beat : late ? soon : intake.engineTimeMs - 1;
    for (const command of this.commands.open(late ? to : null)) this.input(command);
    this.beat = 0;
    if (to > engine.now) engine.advance(to);
    this.finish(mode === 'wall' ? this.parts.now() : engine.now);
  }

  /** Between beats: rows alone, for publishers who wait. */
  private group(): void {
    if (this.groupTimer !== null) clearImmediate(this.groupTimer);
    this.groupTimer = null;
    this.rowOpen();
    const { engine } = this;
    const { journal } = this.parts;
    if (engine === null || journal.owing === 0) return;
    if (journal.state.refusal !== null && !journal.due(engine.now)) return;
    this.collect();
    this.tellAll(journal.commit(engine.now, engine.now));
  }

  /** What is open becomes a row of the log and waits in the engine. */
  rowOpen(): void {
    const { batch } = this;
    const { journal, samples, mode, intake } = this.parts;
    const owed = this.batchOwed.splice(0);
    // Before this they must not stand with those whom the next commit, of whatever, acknowledges.
    for (const done of owed) journal.owe(done);
    if (batch.count === 0) return;
    // The moment of the first sample is still open when its engine begins.
    this.engine ??= this.parts.begin(batch.at[0]! - 1);
    const judged = mode === 'wall' ? this.beat : Math.max(this.engine.now, intake.engineTimeMs);
    journal.row(judged, inputKind.samples, samples.pack(batch, judged), owed.length > 0);
    samples.append(batch);
    this.engine.offerBatch(batch);
    batch.clear();
  }

  /** Derived samples made since the last look go to the open segment. */
  private collect(): void {
    const { engine } = this;
    if (engine === null || engine.derivedOut.count === 0) return;
    this.parts.samples.append(engine.derivedOut);
    engine.derivedOut.clear();
  }

  private finish(now: EpochMs): void {
    const { engine } = this;
    const { journal } = this.parts;
    if (engine === null) return;
    this.collect();
    if (!journal.due(now)) {
      // The disk refuses and it is not time to ask again: people come first.
      if (journal.state.refusal !== null) this.tellAll(false);
      return;
    }
    this.tellAll(journal.commit(engine.now, now));
  }

  private tellAll(kept: boolean): void {
    const effects = this.untold;
    this.untold = [];
    this.commands.caused(effects);
    if (effects.length > 0) this.parts.tell({ effects, kept });
    if (!kept) this.parts.journal.toldBeforeKept();
    else this.commands.settle();
  }
}
