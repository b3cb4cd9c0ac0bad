/**
 * The engine: inputs in, effects out, the same for the same inputs, live or replayed.
 *
 * There are no ticks. Whatever waits for time has one deadline, and what a deadline causes is
 * stamped with the deadline, not with when somebody looked; so how often `advance` is called
 * changes only how soon people hear. Deadlines at or before t go before the inputs of t. The
 * engine knows no rule kind by name and touches neither clock nor disk nor chance.
 */
import type { JudgementHost } from './engine/host.ts';
import { Judgement } from './engine/judgement.ts';
import { Pending } from './engine/pending.ts';
import { savedJudgement } from './engine/saved.ts';
import { shifted } from './engine/shift.ts';
import { type EngineState, stateFormat } from './engine/state.ts';
import { Cuts, type ExtensionWatch, switchOff, switchOn } from './engine/switching.ts';
import { type Effect, type ExtensionInput, type Input, inputOrder } from './input.ts';
import type { Plan } from './plan/plan.ts';
import { type EpochMs, SampleBatch, unjudgedFlags } from './signal/sample.ts';

export interface EnginePorts {
  /** Called for each effect, in order. */
  emit(effect: Effect): void;
  /** The plan of a revision that a `site` input names. */
  planOf(revision: string): Plan;
  /** Only live: who finds a file of the site's own rules unfit. */
  readonly watch?: ExtensionWatch;
}

export class Engine implements JudgementHost {
  now: EpochMs;
  /** Derived samples since the caller last cleared it; across a `site` input, of the plan before it. */
  readonly derivedOut = new SampleBatch();
  private readonly ports: EnginePorts;
  private judgement: Judgement;
  private readonly pending = new Pending();
  private queue: Input[];
  /** How many things were judged at this moment; a thing is a sample, a deadline or another input. */
  private turn = 0;
  /** The moment before this one. */
  private before: EpochMs;
  private readonly cuts = new Cuts();
  private readonly taken = { signal: 0, at: 0, judged: 0, value: 0, quality: 0, flags: 0 };

  private constructor(plan: Plan, now: EpochMs, saved: EngineState | null, ports: EnginePorts) {
    this.now = now;
    this.before = now;
    this.ports = ports;
    this.queue = [...(saved?.queue ?? [])];
    this.judgement = new Judgement(plan, saved, this);
    this.wait(saved?.pending ?? []);
  }

  /** A new engine that begins to observe at `now`. */
  static begin(plan: Plan, now: EpochMs, ports: EnginePorts): Engine {
    return new Engine(plan, now, null, ports);
  }

  /** An engine that goes on where `save` left off. Throws on a state of another format. */
  static restore(plan: Plan, saved: EngineState, ports: EnginePorts): Engine {
    if (saved.format !== stateFormat)
      throw new RangeError(`the engine's state has format ${saved.format}, not ${stateFormat}`);
    return new Engine(plan, saved.now, saved, ports);
  }

  get plan(): Plan {
    return this.judgement.plan;
  }

  /** What stands now, to be looked at and not touched. */
  get present(): Pick<Judgement, 'rules' | 'alarms' | 'book' | 'signals' | 'marks' | 'off'> {
    return this.judgement;
  }

  /** Samples of a beat, in order of arrival; `advance` judges them. */
  offerBatch(batch: SampleBatch): void {
    for (let i = 0; i < batch.count; i += 1)
      if ((batch.flags[i]! & unjudgedFlags) === 0) this.pending.push(batch, i);
  }

  /** Any other input; `advance` takes it in its turn. */
  offer(input: Input): void {
    let i = this.queue.length;
    while (i > 0 && follows(this.queue[i - 1]!, input)) i -= 1;
    this.queue.splice(i, 0, input);
  }

  /** Samples already in order, as the record keeps them: judged as they pass. */
  feed(batch: SampleBatch): void {
    if (this.pending.size > 0 || this.queue.length > 0) {
      this.offerBatch(batch);
      if (batch.count > 0) this.advance(batch.judged[batch.count - 1]!);
      return;
    }
    const { signal, at, judged, value, quality, flags, count } = batch;
    for (let i = 0; i < count; i += 1) {
      if ((flags[i]! & unjudgedFlags) !== 0) continue;
      const moment = judged[i]!;
      this.fireTo(moment);
      if (moment > this.now) this.arrive(moment);
      this.judgement.apply(signal[i]!, at[i]!, value[i]!, quality[i]!, flags[i]!);
      this.judged();
    }
  }

  /** Takes everything up to and at `to`, in order; a `rebase` ends it, and `now` is the new clock's. */
  advance(to: EpochMs): void {
    for (;;) {
      const input = this.queue[0];
      const inputAt = input?.judged ?? Number.POSITIVE_INFINITY;
      const sampleAt = this.pending.nextJudged;
      const next = Math.min(inputAt, sampleAt);
      this.fireTo(Math.min(next, to));
      if (next > to) break;
      if (next > this.now) this.arrive(next);
      if (
        input !== undefined &&
        (inputAt < sampleAt || (inputAt === sampleAt && inputOrder[input.kind] < inputOrder.sample))
      ) {
        this.queue.shift();
        this.take(input);
        // `to` was a time of the old clock.
        if (input.kind === 'rebase') return;
      } else this.takePending();
    }
    if (to > this.now) this.arrive(to);
  }

  /** What is being judged, for whoever must know after which thing it stood still. */
  get place(): { readonly at: EpochMs; readonly turn: number } {
    return { at: this.now, turn: this.turn };
  }

  /** When the last sample that still waits will be judged; null when none waits. */
  get waitsUntil(): EpochMs | null {
    return this.pending.list().at(-1)?.judged ?? null;
  }

  save(): EngineState {
    const { plan } = this;
    return {
      format: stateFormat,
      revision: plan.revision,
      now: this.now,
      pending: this.pending.list().map((p) => ({ ...p, signal: plan.signals[p.signal]!.id })),
      queue: [...this.cuts.list, ...this.queue],
      ...savedJudgement(this.judgement),
    };
  }

  emit(effect: Effect): void {
    this.ports.emit(effect);
  }

  private fireTo(to: EpochMs): void {
    for (;;) {
      const { deadlines } = this.judgement;
      const owner = deadlines.take(to);
      if (owner < 0) return;
      const at = deadlines.takenAt;
      if (at > this.now) this.arrive(at);
      this.judgement.fire(owner, at);
      this.judged();
    }
  }

  private takePending(): void {
    const { taken } = this;
    this.pending.take(taken);
    this.judgement.apply(taken.signal, taken.at, taken.value, taken.quality, taken.flags);
    this.judged();
  }

  /** Another moment. */
  private arrive(at: EpochMs): void {
    this.before = this.now;
    this.now = at;
    this.turn = 0;
    if (at >= this.cuts.at) this.cut();
  }

  /** One thing is judged. */
  private judged(): void {
    this.turn += 1;
    if (this.now >= this.cuts.at) this.cut();
    const wanted = this.ports.watch?.wanted;
    if (wanted == null) return;
    const { extension, why } = wanted;
    const { now, turn } = this;
    this.ports.watch!.done({
      kind: 'extension',
      // Known before anything of this moment: a gap or a deadline too.
      judged: this.before,
      extension,
      off: why,
      at: now,
      turn,
    });
    this.switchOff(extension, why);
  }

  private cut(): void {
    for (const { extension, off } of this.cuts.take(this.now, this.turn))
      this.switchOff(extension, off ?? '');
  }

  private switchOff(extension: string, why: string): void {
    if (this.judgement.off.has(extension)) return;
    switchOff(this.judgement, extension, why);
    this.emit({ kind: 'extension', judged: this.now, extension, off: why });
  }

  /** On again at once; off in its place, or now where that has passed. */
  private takeSwitch(input: ExtensionInput): void {
    const { extension, off, by } = input;
    if (off !== null) {
      this.cuts.add(input);
      this.cut();
    } else if (this.judgement.off.has(extension)) {
      switchOn(this.judgement, extension);
      const who = by === undefined ? {} : { by };
      this.emit({ kind: 'extension', judged: this.now, extension, off, ...who });
    }
  }

  private take(input: Input): void {
    switch (input.kind) {
      case 'extension':
        this.takeSwitch(input);
        return;
      case 'command':
        this.judgement.command(input);
        break;
      case 'gap':
        if (input.toMs > this.now) this.arrive(input.toMs);
        this.judgement.gap(input.fromMs, input.toMs);
        break;
      case 'rebase':
        this.rebase(input.deltaMs);
        break;
      case 'site':
        this.adopt(this.ports.planOf(input.revision), input.by);
        break;
    }
    this.judged();
  }

  /** Another plan: rules that did not change keep their memory, alarms whose rule is gone close. */
  private adopt(plan: Plan, by?: string): void {
    const stays = new Set(plan.rules.map(({ id }) => id));
    for (const [i, { id }] of this.plan.rules.entries())
      if (!stays.has(id)) this.judgement.alarms.removed(i, by);
    const goOn = new Set(plan.runs.map(({ station }) => station));
    for (const run of this.plan.runs) if (!goOn.has(run.station)) this.judgement.runs.removed(run);
    const saved = this.save();
    this.pending.clear();
    this.judgement = new Judgement(plan, saved, this);
    this.wait(saved.pending);
  }

  /** What waits is judged now, then every time moves along with the clock. */
  private rebase(deltaMs: number): void {
    while (this.pending.size > 0) this.takePending();
    for (const { extension, off } of this.cuts.take(Number.POSITIVE_INFINITY, 0))
      this.switchOff(extension, off ?? '');
    const saved = shifted(this.save(), deltaMs);
    this.now = saved.now;
    this.before = this.now;
    this.turn = 0;
    this.judgement = new Judgement(this.plan, saved, this);
    for (const rule of this.judgement.rules) if (!rule.off) rule.kind.shift(rule.memory, deltaMs);
    this.judgement.derivation.shift(deltaMs);
  }

  private wait(pending: EngineState['pending']): void {
    const { signalIndex } = this.judgement.wiring;
    for (const p of pending) {
      const signal = signalIndex.get(p.signal);
      if (signal !== undefined)
        this.pending.insert(signal, p.at, p.judged, p.value, p.quality, p.flags);
    }
  }
}

/** Does `a` stand behind `b`? Of two that are equal in order, the earlier arrival goes first. */
const follows = (a: Input, b: Input): boolean =>
  a.judged > b.judged || (a.judged === b.judged && inputOrder[a.kind] > inputOrder[b.kind]);
