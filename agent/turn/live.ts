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
import type { Command, Effect, Input } from '#rules/input.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import { inputKind } from '../store/contract.ts';
import { concerns, refusedUntimed, type Unjudged, type WaitingCommand } from './commands.ts';
import type { Journal } from './journal.ts';
import type { EffectKeeper, SampleKeeper, TurnIntake, TurnNews } from './ports.ts';

export interface LiveParts {
  readonly mode: 'wall' | 'samples';
  readonly journal: Journal;
  readonly desk: EffectKeeper;
  readonly samples: SampleKeeper;
  readonly intake: TurnIntake;
  /** Engine time by the wall; only asked in `wall` mode. */
  readonly now: () => EpochMs;
  /** Body of an input that is not samples: canonical JSON. */
  readonly bodyOf: (input: Input) => Uint8Array;
  readonly tell: (news: TurnNews) => void;
  /** By the samples' clock, just before the first sample of a run: gives the engine, begun at `at`. */
  readonly begin: (at: EpochMs) => Engine;
}

export class Live {
  private readonly parts: LiveParts;
  private engine: Engine | null;
  private readonly batch = new SampleBatch(4_096);
  private batchOwed = false;
  private beat: EpochMs = 0;
  /** Effects not yet told. */
  private untold: Effect[] = [];
  private commands: WaitingCommand[] = [];
  private settling: WaitingCommand[] = [];
  private beatTimer: NodeJS.Timeout | null = null;
  private groupTimer: NodeJS.Immediate | null = null;
  private siteMoment: EpochMs | null = null;
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

  // ── what comes in ───────────────────────────────────────────────────────────────────────────

  /** One message; `done` acknowledges it, at once for QoS 0, else after its commit. */
  take(topic: string, payload: Uint8Array, retained: boolean, qos: number, done: () => void): void {
    const { intake, mode, journal } = this.parts;
    // Too many wait for a disk that refuses: neither kept nor acknowledged, it is sent again.
    if (this.stopped || (qos > 0 && journal.owing >= limits.unacknowledgedMax)) return;
    if (mode === 'samples') {
      this.tookAt = performance.now();
      if (this.engine !== null) intake.passTo(this.engine.now + 1);
      intake.take(topic, payload, retained, 0, 0, this.batch);
    } else {
      const now = this.parts.now();
      this.openBeat(now);
      intake.take(topic, payload, retained, this.beat, now, this.batch);
    }
    if (qos === 0) done();
    else {
      this.batchOwed = true;
      journal.owe(done);
      if (journal.owing >= limits.groupCommitMessages && journal.state.refusal === null)
        this.group();
      else this.groupTimer ??= setImmediate(() => this.group());
    }
    this.wake();
  }

  /** A person's command; settles once it is committed, with what it caused. */
  command(command: Unjudged): Promise<readonly Effect[]> {
    const { promise, resolve } = Promise.withResolvers<readonly Effect[]>();
    if (this.engine === null) return Promise.resolve([refusedUntimed(command)]);
    if (this.parts.mode === 'wall') this.openBeat(this.parts.now());
    this.commands.push({
      command: { ...command, judged: this.beat } as Command,
      settle: resolve,
      effects: [],
    });
    this.wake();
    return promise;
  }

  /**
   * Another plan from here on: what came before is in the log under the old one. Returns the
   * moment of the change. The caller keeps the revision, and lays out bindings anew right after.
   */
  adopt(revision: string): EpochMs {
    this.rowOpen();
    const { engine } = this;
    if (engine === null) throw new Error('there is no engine to adopt a plan');
    // Several changes may share one moment; nothing else may.
    const moment = this.siteMoment === engine.now ? engine.now : this.soonest(engine.now);
    this.siteMoment = moment;
    this.input({ kind: 'site', judged: moment, revision });
    engine.advance(moment);
    // Derived samples speak of the plan that is being left.
    this.collect();
    if (this.parts.mode === 'samples') this.parts.intake.passTo(moment + 1);
    return moment;
  }

  /** The next moment that is free: behind all that was judged, before the open beat. */
  private soonest(engineNow: EpochMs): EpochMs {
    if (this.parts.mode === 'samples') return engineNow + 1;
    const now = this.parts.now();
    // Work of this very turn may have taken the clock beyond the open beat.
    return Math.max(engineNow, this.beat > 0 ? Math.min(now, this.beat - 2) : now) + 1;
  }

  /** Any other input of the shell's: gaps and clocks. */
  input(input: Input): void {
    const { journal, bodyOf } = this.parts;
    journal.row(input.judged, inputKind[input.kind], bodyOf(input), false);
    this.engine?.offer(input);
  }

  // ── time ────────────────────────────────────────────────────────────────────────────────────

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
    const waiting = this.commands;
    this.commands = [];
    let to = mode === 'wall' ? this.beat : intake.engineTimeMs - 1;
    if (mode === 'samples' && waiting.length > 0) {
      to = Math.max(engine.now, intake.engineTimeMs) + 1;
      for (const each of waiting) each.command = { ...each.command, judged: to };
    }
    for (const each of waiting) this.input(each.command);
    this.settling.push(...waiting);
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
    if (batch.count === 0) return;
    const { journal, samples, mode, intake } = this.parts;
    // The moment of the first sample is still open when its engine begins.
    this.engine ??= this.parts.begin(batch.at[0]! - 1);
    const judged = mode === 'wall' ? this.beat : Math.max(this.engine.now, intake.engineTimeMs);
    journal.row(judged, inputKind.samples, samples.pack(batch, judged), this.batchOwed);
    this.batchOwed = false;
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
    for (const each of this.settling)
      each.effects.push(...effects.filter((effect) => concerns(effect, each.command)));
    if (effects.length > 0) this.parts.tell({ effects, kept });
    if (!kept) this.parts.journal.toldBeforeKept();
    else for (const { settle, effects: caused } of this.settling.splice(0)) settle(caused);
  }
}
