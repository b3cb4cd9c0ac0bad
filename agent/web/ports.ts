/**
 * What the web part needs from the rest of the agent. agent/compose.ts hands it in.
 *
 * Always true: nothing here blocks; what takes time answers with a promise. Views come in wire
 * shape, so that compose is the only place where inner names become outer ones.
 */
import type { Disposition, HoldWhat } from '#rules/hold/hold.ts';
import type { AlarmVerb, PersonId } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Role } from '../people/contract.ts';
import type { AsideView } from './aside-contract.ts';
import type {
  AlarmState,
  AlarmView,
  CoverageView,
  Health,
  HoldView,
  RuleView,
  SampleEvent,
  Series,
  SignalView,
  SiteLoaded,
  SiteView,
  StreamEvent,
} from './contract.ts';
import type { LoadView } from './load-contract.ts';
import type { OwnRulesView } from './own-rules-contract.ts';
import type { RefusedTopicView } from './refused-contract.ts';
import type { RunProfileView, RunView } from './run-contract.ts';
import type { MarksView, ReadingView, SaidMarkView } from './written-contract.ts';

/** Health without its summary: the web part computes `condition` from the parts. */
export type HealthParts = Omit<Health, 'condition'>;

export interface AlarmQuery {
  /** Any of these; all where absent. */
  readonly states?: readonly AlarmState[];
  /** Open at or after this time. */
  readonly sinceMs?: EpochMs;
  /** Raised before this time. */
  readonly untilMs?: EpochMs;
  /** At most this many, newest raise first. */
  readonly limit: number;
}

export interface HoldQuery {
  readonly standingOnly: boolean;
  readonly what?: HoldWhat;
  readonly item?: string;
  /** At most this many, newest first. */
  readonly limit: number;
}

export interface LoadQuery {
  readonly sinceMs: EpochMs;
  readonly untilMs: EpochMs;
  /** Of the whole site where null. */
  readonly line: string | null;
}

export interface RunQuery {
  readonly sinceMs: EpochMs;
  readonly untilMs: EpochMs;
  /** `line/station`; all where null. */
  readonly station: string | null;
  /** At most this many, newest first. */
  readonly limit: number;
}

/** The shell adds `judged`, and for a shelf `untilMs = judged + forMs`. */
export interface AlarmCommand {
  readonly verb: AlarmVerb;
  /** Of what puts aside, or ends that: the id of its rule will do. */
  readonly occurrence: string;
  readonly by: PersonId;
  /** Absent: of somebody whose right was asked before. */
  readonly role?: Role | null;
  readonly reason?: string;
  readonly forMs?: number;
  /** The shelf ends before, as soon as the alarm returns. */
  readonly oneShot?: true;
}

export type HoldCommand =
  | {
      readonly verb: 'hold';
      readonly what: HoldWhat;
      readonly item: string;
      readonly by: PersonId;
      readonly reason: string;
    }
  | {
      readonly verb: 'lift';
      readonly hold: string;
      readonly disposition: Disposition;
      readonly by: PersonId;
      readonly reason: string;
    };

/** A mark as its route took it; `at` is now where it is absent. */
export interface MarkSaid {
  /** `line/station`. */
  readonly station: string;
  readonly mark: string;
  readonly item?: string | undefined;
  readonly at?: EpochMs | undefined;
  readonly note?: string | undefined;
  readonly by: PersonId;
}

export interface ReadingEntered {
  readonly signal: string;
  readonly value: number;
  readonly unit: string;
  readonly at?: EpochMs | undefined;
  readonly note?: string | undefined;
  readonly by: PersonId;
}

/** `unknown`: there is no such occurrence or hold. `refused`: it changed nothing, and why. */
export type Declined =
  | { readonly outcome: 'unknown' }
  | { readonly outcome: 'refused'; readonly why: string };
export type AlarmAnswer =
  | {
      readonly outcome: 'accepted';
      readonly state: AlarmState;
      /** What was found otherwise than whoever asked may think. */
      readonly note?: string;
      /** Of passing on: the names of those who are asked now. */
      readonly asked?: { readonly people: readonly string[]; readonly canBeTold: boolean };
    }
  | Declined;
export type MarkAnswer = { readonly outcome: 'accepted'; readonly mark: SaidMarkView } | Declined;
export type HoldAnswer = { readonly outcome: 'accepted'; readonly hold: HoldView } | Declined;

/** Samples travel by `samplesSince`; the rest is told at once. */
export type ToldEvent =
  | Extract<StreamEvent, { event: 'alarm' | 'hold' | 'mark' | 'aside' }>
  | { readonly event: 'site'; readonly data: SiteView }
  | { readonly event: 'health'; readonly data: HealthParts };

/** One of the agent's own figures; counters only grow while the process lives. */
export interface Figure {
  /** `forebond_…`, snake case, the unit last; a counter ends in `_total`. */
  readonly name: string;
  readonly kind: 'counter' | 'gauge';
  readonly help: string;
  /** Label values in the order of `labels`; no labels: one row. */
  readonly labels?: readonly string[];
  readonly rows: readonly { readonly labels?: readonly string[]; readonly value: number }[];
}

export interface WebPorts {
  /** The engine's clock: the default end of a series. */
  nowMs(): EpochMs;
  /** Its name, and the zone of its clocks. */
  site(): Omit<SiteView, 'at'>;
  /** The site file as it is now. Rejects with the errors its route names; then nothing has changed. */
  reloadSite(by: PersonId): Promise<SiteLoaded>;
  ownRules(): OwnRulesView['files'];
  /** Throws OWN_RULES_UNKNOWN. */
  switchOwnRulesOn(file: string, by: PersonId): OwnRulesView['files'][number];
  health(): HealthParts;
  signals(): SignalView[];
  /** null where no signal has that id. Points ascend; at most `points` of them. */
  series(id: string, sinceMs: EpochMs, untilMs: EpochMs, points: number): Promise<Series | null>;
  alarms(query: AlarmQuery): AlarmView[];
  holds(query: HoldQuery): HoldView[];
  aside(): AsideView[];
  runs(query: RunQuery): RunView[];
  /** null where no run has that id. */
  run(id: string, points: number): Promise<RunProfileView | null>;
  coverage(): CoverageView;
  refused(): RefusedTopicView[];
  rules(): RuleView[];
  /** Alarm performance; the span is not empty. */
  load(query: LoadQuery): LoadView;
  /** What somebody says of an alarm once it is over. Rejects where the disk refuses. */
  answerNeeded(
    occurrence: string,
    needed: boolean,
    by: PersonId,
  ): Promise<{ readonly outcome: 'accepted' } | Declined>;
  /** Resolve after the command is committed. */
  commandAlarm(command: AlarmCommand): Promise<AlarmAnswer>;
  commandHold(command: HoldCommand): Promise<HoldAnswer>;
  /** Of one station, or of all. */
  marks(station: string | null): MarksView;
  sayMark(said: MarkSaid): Promise<MarkAnswer>;
  /** Rejects with the errors its route names; then nothing was kept. */
  enterReading(entered: ReadingEntered): Promise<ReadingView>;
  /**
   * The latest sample of each signal that got one after `cursor` (what an earlier call returned;
   * 0 for all). Asked four times a second while anybody listens, so that a sample costs nothing
   * where nobody does. The cursor grows with each sample: a counter stamped on each signal will do.
   */
  samplesSince(cursor: number): { readonly cursor: number; readonly samples: SampleEvent[] };
  /** Called in the turn of the transition; the listener writes to sockets at once and never throws. */
  subscribe(listener: (event: ToldEvent) => void): () => void;
  figures(): Figure[];
}
