/**
 * The agent without its doors: store, engine, intake and turn, brought to where they were.
 *
 * Order of the start: the store is opened and checked, the log is judged again up to where the
 * last run stood, what the ledger lacks is entered, the time in between is entered as a gap, the
 * site as it is now is adopted. Only then does anything arrive.
 */
import { Engine } from '#rules/engine.ts';
import type { Effect, Input } from '#rules/input.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { Desk } from '../alarms/desk.ts';
import { type ClockSource, EngineClock } from '../clock/engine-clock.ts';
import { createIntake, type Intake } from '../intake/intake.ts';
import { limits } from '../limits.ts';
import type { FedItem } from '../replay/feed.ts';
import type { SiteSource } from '../site/revision.ts';
import { canonicalJson } from '../store/canonical.ts';
import { OpenColumns } from '../store/columns.ts';
import type { InputRow, LedgerBody } from '../store/contract.ts';
import { readRecord } from '../store/reader.ts';
import { seal } from '../store/seal.ts';
import type { Store } from '../store/store.ts';
import { Journal } from '../turn/journal.ts';
import { Live } from '../turn/live.ts';
import type { TurnNews } from '../turn/ports.ts';
import { begunAnewWords, findingWords } from './finding-words.ts';
import { lastInstances, PlanBook } from './plan-book.ts';
import { type Recovered, recover } from './recover.ts';
import { inPlan, SampleBook } from './sample-book.ts';
import { rememberSealed } from './sealed-memory.ts';
import { Sealing } from './sealing.ts';
import { SiteChanging } from './site-changing.ts';

export interface CoreOptions {
  readonly store: Store;
  readonly source: SiteSource;
  readonly mode: 'wall' | 'samples';
  readonly clock: ClockSource;
  readonly version: string;
  /** All signals are sealed together this often; rows nobody waits for are committed this often. */
  readonly sealEveryMs: number;
  readonly lazyCommitMs?: number;
  readonly tell: (news: TurnNews) => void;
  readonly warn: (facts: object, message: string) => void;
}

const bodyOf = (input: Input): Uint8Array => new TextEncoder().encode(canonicalJson(input));

export class Core {
  readonly store: Store;
  readonly plans: PlanBook;
  readonly samples: SampleBook;
  readonly columns: OpenColumns;
  readonly desk = new Desk();
  readonly intake: Intake;
  readonly journal: Journal;
  readonly live: Live;
  readonly clock: EngineClock;
  readonly sealing: Sealing;
  readonly site: SiteChanging;
  sealingFailed: string | null = null;
  /** The record has rows, and nothing could be rebuilt from them: judging began anew. */
  begunAnew = false;
  /** What comes is marked: engine time is ahead of the wall clock, or that cannot be right. */
  clockInDoubt = false;
  private readonly options: CoreOptions;

  constructor(options: CoreOptions) {
    const { store } = options;
    this.options = options;
    this.store = store;
    this.plans = new PlanBook(
      options.source,
      lastInstances(store.read.siteRevisions()),
      store.read,
    );
    this.columns = new OpenColumns(store.sealedSeq);
    this.samples = new SampleBook(this.columns, (signals) => store.registerSignals(signals));
    this.site = new SiteChanging({
      store,
      plans: this.plans,
      samples: this.samples,
      intake: () => this.intake,
      live: () => this.live,
      now: () => this.live.engineNow ?? this.clock.now(),
      record: (body) => this.record(body),
    });
    this.intake = createIntake({
      bindings: this.plans.now.bindings,
      markBindings: () => this.plans.now.markBindings,
      discover: (id, instance) => this.site.discover(id, instance),
      limits,
      clock: options.mode,
    });
    const recovered = this.recover();
    rememberSealed(store, this.plans.now, (batch) => this.intake.remember(batch));
    const start = recovered?.engine.now ?? 0;
    this.clock = new EngineClock(options.clock, Math.max(start, options.clock.wallMs()));
    this.sealing = this.newSealing(recovered);
    const rowed = (row: InputRow): void => this.sealing.row(row);
    this.journal = new Journal(store, store.ledgerHead.id, rowed, options.lazyCommitMs);
    this.live = new Live(
      {
        mode: options.mode,
        journal: this.journal,
        desk: this.desk,
        samples: this.samples,
        intake: this.intake,
        now: () => this.clock.now(),
        bodyOf,
        tell: options.tell,
        begin: (at) => this.begin(at),
      },
      recovered?.engine ?? null,
    );
    this.takeUp(recovered);
    if (options.mode === 'wall') this.lookAtClock();
  }

  /** The plan index of a signal of the site as it is now; -1 where it has none. */
  signalIndex(id: string): number {
    return this.site.signalIndex(id);
  }

  /** Engine time is the wall clock's, not the samples' own. */
  get byWall(): boolean {
    return this.options.mode === 'wall';
  }

  /** Seals what is open, if it is time or `now` is asked for. */
  async sealIfDue(force = false): Promise<void> {
    const engine = this.live.running;
    if (engine === null || (!force && !this.sealing.due(engine.now))) return;
    if (!this.live.settle()) return;
    await this.sealing.begin(engine, this.journal.lastSeq, this.journal.ledgerId);
  }

  /** Compares engine time with the wall clock and enters what does not fit. */
  lookAtClock(): void {
    const step = this.clock.check();
    const engine = this.live.running;
    const { clock } = this.options;
    this.clockInDoubt = this.clock.inDoubt || clock.wallMs() < limits.earliestPlausibleMs;
    this.intake.setClockDoubt(this.clockInDoubt);
    if (step === null || engine === null) return;
    this.live.settle();
    const from = engine.now;
    if (step.kind === 'ahead') {
      this.live.input({ kind: 'gap', judged: from + 1, fromMs: from, toMs: step.toMs });
      engine.advance(step.toMs);
    } else {
      this.live.input({ kind: 'rebase', judged: from + 1, deltaMs: step.deltaMs });
      engine.advance(from + 1);
      this.columns.rebase();
    }
    this.clock.set(engine.now);
    this.record({ type: 'clock', step: step.kind, from, to: engine.now });
  }

  record(body: LedgerBody): void {
    this.journal.record(body);
  }

  // ── the start ───────────────────────────────────────────────────────────────────────────────

  private recover(): Recovered | null {
    const { store, samples } = this;
    const judgedTo = store.previousRun?.judgedTo ?? 0;
    const remembered = new SampleBatch();
    return recover(
      {
        read: store.read,
        sealedSeq: store.sealedSeq,
        recordAfter: (seq) => this.recordAfter(seq),
        planOf: (revision) => this.plans.planOf(revision),
        lay: (plan) => this.site.lay(plan),
        indexById: () => samples.indexById(),
        remember: (batch) => {
          samples.append(batch);
          this.intake.remember(inPlan(this.plans.now.plan, batch, this.site.laid, remembered));
        },
        rederived: (batch) => samples.append(batch),
        rebased: () => this.columns.rebase(),
        damaged: (row) => this.options.warn({ ...row }, 'a damaged record was skipped'),
      },
      judgedTo,
      (effect) => this.live.emit(effect),
    );
  }

  private *recordAfter(seq: number): Generator<FedItem> {
    const indexOf = (signal: { name: string }): number => this.signalIndex(signal.name);
    for (const item of readRecord(this.store.folder, { fromSeq: seq, indexOf }))
      if (item.kind === 'damage') this.options.warn({ ...item }, 'part of the record is damaged');
      else yield item;
  }

  private newSealing(recovered: Recovered | null): Sealing {
    return new Sealing(
      {
        everyMs: this.options.sealEveryMs,
        columns: this.columns,
        signals: () => this.samples.storedSignals,
        samples: () => this.samples.cursor,
        encode: (frozen, signals) => seal(frozen, signals),
        write: (segment) => {
          this.store.writeSegment(segment);
          this.sealingFailed = null;
        },
        failed: (error) => {
          this.sealingFailed = error instanceof Error ? error.message : String(error);
          this.options.warn({ error: this.sealingFailed }, 'sealing failed; it is tried again');
        },
      },
      {
        afterSeq: this.store.sealedSeq,
        from: recovered?.firstJudged ?? null,
        commands: recovered?.commands ?? [],
      },
    );
  }

  private takeUp(recovered: Recovered | null): void {
    const { store, options } = this;
    const wallNow = this.clock.now();
    store.startRun(options.mode === 'wall' ? wallNow : (recovered?.engine.now ?? 0));
    this.desk.load(
      [
        ...store.read.occurrencesBetween(wallNow - limits.occurrencesAtHandMs, wallNow + 1),
        ...store.read.openOccurrences(),
      ],
      store.read.openHolds(),
    );
    this.record({
      type: 'started',
      at: options.clock.wallMs(),
      version: options.version,
      clock: options.mode,
    });
    for (const finding of store.findings)
      this.record({
        type: 'finding',
        at: options.clock.wallMs(),
        finding,
        words: findingWords(finding),
      });
    this.begunAnew = recovered === null && store.lastSeq > 0;
    if (this.begunAnew) {
      this.record({ type: 'begun-anew', at: options.clock.wallMs(), words: begunAnewWords });
      options.warn({ lastSeq: store.lastSeq }, begunAnewWords);
    }
    if (recovered === null) {
      if (options.mode === 'wall') this.live.start(this.begin(this.clock.now()));
    } else this.goOn(recovered);
    this.journal.commit(this.live.engineNow ?? 0, this.live.engineNow ?? 0);
  }

  private goOn(recovered: Recovered): void {
    const { engine, effects, known, differs } = recovered;
    if (differs !== null) {
      this.record({ type: 'recovered-differs', at: this.options.clock.wallMs(), ...differs });
      for (const effect of effects) this.reconcile(effect);
    }
    for (const effect of effects.slice(known)) this.live.emit(effect);
    if (this.options.mode === 'wall') {
      const to = this.clock.now();
      if (to > engine.now) {
        this.live.input({ kind: 'gap', judged: engine.now + 1, fromMs: engine.now, toMs: to });
        engine.advance(to);
      }
    }
    if (engine.plan.revision === this.plans.now.plan.revision) return;
    this.site.keep(this.plans.now);
    this.site.adoptNow();
  }

  /** The rows of what was recomputed, without telling anybody or entering it twice. */
  private reconcile(effect: Effect): void {
    this.journal.entry({ ...this.desk.take(effect), ledger: null });
  }

  /** The very first moment: the site is the first row of the log. */
  private begin(at: EpochMs): Engine {
    const { plan } = this.plans.now;
    this.site.keep(this.plans.now);
    this.site.lay(plan);
    this.live.input({ kind: 'site', judged: at, revision: plan.revision });
    return Engine.begin(plan, at, {
      emit: this.live.emit,
      planOf: (revision) => this.plans.planOf(revision),
    });
  }
}
