/**
 * The agent without its doors: store, engine, intake and turn, brought to where they were.
 *
 * Order of the start: the store is opened and checked, the log is judged again up to where the
 * last run stood, what the ledger lacks is entered, the time in between is entered as a gap, the
 * site as it is now is adopted. Only then does anything arrive.
 */
import { Engine } from '#rules/engine.ts';
import type { Effect, ExtensionInput, Input } from '#rules/input.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { Desk } from '../alarms/desk.ts';
import { EngineClock } from '../clock/engine-clock.ts';
import { createIntake, type Intake } from '../intake/intake.ts';
import { limits } from '../limits.ts';
import type { Teller } from '../notify/teller.ts';
import type { FedItem } from '../replay/feed.ts';
import { canonicalJson } from '../store/canonical.ts';
import { OpenColumns } from '../store/columns.ts';
import { type InputRow, inputKind, type LedgerBody } from '../store/contract.ts';
import { readRecord } from '../store/reader.ts';
import type { Store } from '../store/store.ts';
import { Journal } from '../turn/journal.ts';
import { Live } from '../turn/live.ts';
import * as anew from './begun-anew.ts';
import { ClockBook } from './clock-book.ts';
import { enterClockStep } from './clock-step.ts';
import type { CoreOptions } from './core-options.ts';
import { ExtensionDesk } from './extension-desk.ts';
import { findingRecord } from './finding-words.ts';
import { lastPlaces } from './last-places.ts';
import { PlanBook } from './plan-book.ts';
import { type Recovered, recover } from './recover.ts';
import { refusedLine } from './refused-view.ts';
import { inPlan, SampleBook } from './sample-book.ts';
import { rememberSealed } from './sealed-memory.ts';
import type { Sealing } from './sealing.ts';
import { sealingFrom } from './sealing-from.ts';
import { SiteChanging } from './site-changing.ts';
import { tellingOf } from './telling.ts';

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
  clockBook!: ClockBook;
  readonly sealing: Sealing;
  readonly site: SiteChanging;
  readonly extensions: ExtensionDesk;
  readonly telling: Teller | null;
  sealingFailed: string | null = null;
  /** The record has rows, and nothing could be rebuilt from them: judging began anew. */
  begunAnew = false;
  /** What comes is marked: engine time is ahead of the wall clock, or that cannot be right. */
  clockInDoubt = false;
  private readonly options: CoreOptions;
  /** Own rules that stopped the last run, until the log says so. */
  private stopped: ExtensionInput | null;

  constructor(options: CoreOptions) {
    const { store } = options;
    this.options = options;
    this.store = store;
    this.extensions = new ExtensionDesk({
      folder: store.folder,
      engine: () => this.live?.running ?? null,
      row: (input) => this.extensionRow(input),
      warn: (facts, message) => options.warn(facts, message),
    });
    this.stopped = this.extensions.stopped(store.previousRun?.judgedTo ?? 0);
    this.plans = new PlanBook(
      options.source,
      lastPlaces(store.read, store.sealedSeq),
      store.read,
      this.extensions,
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
      ...this.site.wildcards,
      limits,
      clock: options.mode,
      firstRefused: (topic, message) => options.warn(...refusedLine(topic, message)),
    });
    const recovered = this.recover();
    rememberSealed(store, this.plans.now, (batch) => this.intake.remember(batch));
    const start = recovered?.engine.now ?? 0;
    this.clock = new EngineClock(options.clock, Math.max(start, options.clock.wallMs()));
    this.sealing = sealingFrom(this, this.options, recovered);
    this.journal = this.newJournal(options);
    this.telling = tellingOf(this, options.telling);
    this.live = new Live(
      {
        mode: options.mode,
        journal: this.journal,
        desk: { take: (effect) => this.take(effect) },
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
    this.clockInDoubt = enterClockStep(this, this.options.clock);
  }

  private newJournal({ store, lazyCommitMs }: CoreOptions): Journal {
    const rowed = (row: InputRow): void => this.sealing.row(row);
    const mayTell = (): void => this.telling?.perform();
    return new Journal(store, store.ledgerHead.id, rowed, lazyCommitMs, mayTell);
  }

  /** By which steps are due and messages are tried again. */
  get tellingNow(): EpochMs {
    return this.byWall ? this.clock.now() : (this.live.engineNow ?? 0);
  }

  /** What an effect means for alarms, and for whoever is to be told: both in one turn. */
  private take(effect: Effect): ReturnType<Desk['take']> {
    const entry = this.desk.take(effect);
    this.telling?.take(effect);
    return entry;
  }

  record(body: LedgerBody): void {
    this.journal.record(body);
  }

  /** Somebody was told of it, or could not be. */
  toldOf(occurrence: string): void {
    this.options.tell({ effects: [], kept: true, told: [occurrence] });
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
        revisionFor: (seq) => anew.revisionFor(store.read, seq),
        lay: (plan) => this.site.lay(plan),
        indexById: () => samples.indexById(),
        remember: (batch) => {
          samples.append(batch);
          this.intake.remember(inPlan(this.plans.now.plan, batch, this.site.laid, remembered));
        },
        rederived: (batch) => samples.append(batch),
        rebased: () => this.columns.rebase(),
        watch: this.extensions,
        stopped: this.stopped,
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

  private takeUp(recovered: Recovered | null): void {
    const { store, options } = this;
    this.extensions.goLive();
    this.clockBook = new ClockBook(store.read, store.ledgerHead.id);
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
    for (const finding of store.findings) this.record(findingRecord(finding, options.clock));
    this.begunAnew = recovered === null && store.lastSeq > 0;
    if (this.begunAnew) anew.noteBegunAnew(this, options);
    if (recovered === null) {
      if (options.mode === 'wall') this.live.start(this.begin(this.clock.now()));
    } else this.goOn(recovered);
    if (recovered !== null) this.enterStopped();
    anew.closeUnfollowed(this, recovered === null);
    const kept = this.journal.commit(this.live.engineNow ?? 0, this.live.engineNow ?? 0);
    if (kept && this.stopped === null) this.extensions.forgetStopped();
  }

  private goOn(recovered: Recovered): void {
    const { engine, effects, known, differs } = recovered;
    if (recovered.assumed !== null) anew.noteAssumed(this, recovered.assumed, this.options);
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
    const engine = Engine.begin(plan, at, {
      emit: this.live.emit,
      planOf: (revision) => this.plans.planOf(revision),
      watch: this.extensions,
    });
    anew.carryHolds(this, engine, bodyOf);
    if (this.stopped === null) return engine;
    this.stopped = { ...this.stopped, judged: at, at: Math.max(this.stopped.at, at + 1) };
    engine.offer(this.stopped);
    this.enterStopped();
    return engine;
  }

  /** The log says which own rules stopped the last run. */
  private enterStopped(): void {
    if (this.stopped !== null) this.extensionRow(this.stopped);
    this.stopped = null;
  }

  private extensionRow(input: ExtensionInput): void {
    this.journal.row(input.judged, inputKind.extension, bodyOf(input), false);
  }
}
