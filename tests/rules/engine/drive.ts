/** Drives an engine as a test wants it and keeps what came out. */
import type { ExtensionWatch } from '#rules/engine/switching.ts';
import { Engine } from '#rules/engine.ts';
import type { Effect, Input } from '#rules/input.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { SampleBatch } from '#rules/signal/sample.ts';

export interface Sample {
  readonly signal: string;
  readonly at: number;
  /** `at` where left out. */
  readonly judged?: number;
  readonly value?: number;
  readonly quality?: number;
  readonly flags?: number;
}

export class Drive {
  readonly effects: Effect[] = [];
  readonly derived: string[] = [];
  engine: Engine;
  private readonly plans: Map<string, Plan>;
  private readonly watch: ExtensionWatch | undefined;

  constructor(plan: Plan, now = 0, others: readonly Plan[] = [], watch?: ExtensionWatch) {
    this.watch = watch;
    this.plans = new Map([plan, ...others].map((p) => [p.revision, p]));
    this.engine = Engine.begin(plan, now, this.ports());
  }

  /** A second engine from the first one's snapshot, through JSON as on disk. */
  static resume(other: Drive): Drive {
    const drive: Drive = Object.create(Drive.prototype);
    Object.assign(drive, { effects: [], derived: [], plans: other.plans, watch: other.watch });
    const saved = JSON.parse(JSON.stringify(other.engine.save()));
    drive.engine = Engine.restore(other.planOf(saved.revision), saved, drive.ports());
    return drive;
  }

  /** This plan's engine from a snapshot that another plan's left. */
  restored(saved: Parameters<typeof Engine.restore>[1]): this {
    this.engine = Engine.restore(this.engine.plan, saved, this.ports());
    return this;
  }

  planOf(revision: string): Plan {
    return this.plans.get(revision)!;
  }

  batch(samples: readonly Sample[]): SampleBatch {
    const batch = new SampleBatch(Math.max(1, samples.length));
    for (const s of samples) {
      const index = this.engine.plan.signals.findIndex(({ id }) => id === s.signal);
      batch.push(index, s.at, s.judged ?? s.at, s.value ?? 0, s.quality ?? 0, s.flags ?? 0);
    }
    return batch;
  }

  offer(...samples: Sample[]): this {
    this.engine.offerBatch(this.batch(samples));
    return this;
  }

  input(input: Input): this {
    this.engine.offer(input);
    return this;
  }

  advance(to: number): this {
    this.engine.advance(to);
    this.drain();
    return this;
  }

  feed(...samples: Sample[]): this {
    this.engine.feed(this.batch(samples));
    this.drain();
    return this;
  }

  /** Samples of one signal, each advanced to its own time. */
  values(signal: string, ...pairs: readonly (readonly [at: number, value: number])[]): this {
    for (const [at, value] of pairs) this.offer({ signal, at, value }).advance(at);
    return this;
  }

  /** Transitions as `<at> <rule> <transition> <state>`. */
  get told(): string[] {
    return this.effects.flatMap((e) =>
      e.kind === 'transition' ? [`${e.judged} ${e.rule} ${e.transition} ${e.to}`] : [],
    );
  }

  private drain(): void {
    const { derivedOut, plan } = this.engine;
    for (let i = 0; i < derivedOut.count; i += 1)
      this.derived.push(
        [
          plan.signals[derivedOut.signal[i]!]!.id,
          derivedOut.at[i],
          derivedOut.judged[i],
          derivedOut.value[i],
          derivedOut.quality[i],
        ].join(' '),
      );
    derivedOut.clear();
  }

  private ports() {
    return {
      ...(this.watch === undefined ? {} : { watch: this.watch }),
      emit: (effect: Effect): void => {
        this.effects.push(effect);
      },
      planOf: (revision: string): Plan => {
        // What was derived so far speaks of the plan that is being left.
        this.drain();
        return this.planOf(revision);
      },
    };
  }
}
