/**
 * What the web part asks of the agent, answered from the core.
 */
import { sameItem } from '#rules/hold/item.ts';
import type { PersonId } from '#rules/input.ts';
import type { PlanSignal } from '#rules/plan/plan.ts';
import { shiftsMin } from '#rules/site/shifts.ts';
import { parseOccurrence } from '../alarms/desk.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import { AgentError } from '../errors.ts';
import type { SeriesReader } from '../store/series-reader.ts';
import type { TurnNews } from '../turn/ports.ts';
import type { AlarmView, SignalView, SiteLoaded } from '../web/contract.ts';
import type {
  AlarmAnswer,
  AlarmCommand,
  AlarmQuery,
  Figure,
  HealthParts,
  HoldAnswer,
  HoldCommand,
  HoldQuery,
  LoadQuery,
  RunQuery,
  ToldEvent,
  WebPorts,
} from '../web/ports.ts';
import { loadView } from './alarm-load-view.ts';
import { asideEvent, asideViews } from './aside-views.ts';
import { commandAlarm } from './command-alarm.ts';
import { commandHold, othersOf } from './command-hold.ts';
import type { Core } from './core.ts';
import type { DamagedSamples } from './damage-book.ts';
import { enterReading } from './hand-readings.ts';
import { ownRules, switchOwnRulesOn } from './own-rules-view.ts';
import { movedOn, presentForecast } from './present-forecast.ts';
import { refusedView } from './refused-view.ts';
import { ruleView } from './rule-view.ts';
import { runProfile, runViews } from './run-views.ts';
import { signalViews } from './signal-views.ts';
import type { SiteDesk } from './site-desk.ts';
import { toldEvent } from './told-events.ts';
import { alarmView, holdView, sampleView } from './views.ts';
import { wasNeeded } from './was-needed.ts';
import { coverageNow } from './watching.ts';
import { marksView, sayMark } from './written-marks.ts';

export interface WebPortsParts {
  readonly core: Core;
  readonly charts: SeriesReader;
  /** Stored samples that could not be read. */
  readonly damaged: (found: DamagedSamples) => void;
  readonly health: () => HealthParts;
  /** null where the agent does not run on a site file. */
  readonly siteDesk: SiteDesk | null;
  readonly figures: () => Figure[];
}

type Listener = (event: ToldEvent) => void;

export class CorePorts implements WebPorts {
  private readonly core: Core;
  private readonly parts: WebPortsParts;
  private readonly listeners = new Set<Listener>();

  constructor(parts: WebPortsParts) {
    this.core = parts.core;
    this.parts = parts;
  }

  nowMs(): number {
    return this.core.live.engineNow ?? this.core.clock.now();
  }

  site(): ReturnType<WebPorts['site']> {
    const { name, timezone } = this.core.plans;
    const shifts = shiftsMin(this.core.plans.source.site.shifts);
    return { site: name, timezone, shifts_min: shifts, revision: this.plan.revision };
  }

  async reloadSite(by: PersonId): Promise<SiteLoaded> {
    const { siteDesk } = this.parts;
    if (siteDesk === null) throw new AgentError('SITE_NOT_FROM_FILE');
    const { changes, more } = await siteDesk.load(by);
    const { revision } = this.plan;
    return { revision, changes: [...changes], more };
  }

  readonly ownRules: WebPorts['ownRules'] = () => ownRules(this.core);
  readonly switchOwnRulesOn: WebPorts['switchOwnRulesOn'] = (file, by) =>
    switchOwnRulesOn(this.core, file, by);

  health(): HealthParts {
    return this.parts.health();
  }

  figures(): Figure[] {
    return this.parts.figures();
  }

  signals(): SignalView[] {
    return signalViews(this.core);
  }

  samplesSince(cursor: number): ReturnType<WebPorts['samplesSince']> {
    const { samples } = this.core;
    const came = this.plan.signals.flatMap((signal, i) => {
      const latest = samples.cameAfter(i, cursor) ? samples.latest(i) : null;
      return latest === null ? [] : [sampleView(signal, latest)];
    });
    return { cursor: samples.cursor, samples: came };
  }

  async series(
    id: string,
    sinceMs: number,
    untilMs: number,
    points: number,
  ): ReturnType<WebPorts['series']> {
    const index = this.core.signalIndex(id);
    if (index < 0) return null;
    const open = this.core.columns.copyOf(this.core.samples.idOf(index));
    const answer = await this.parts.charts.series({ signal: id, sinceMs, untilMs, points, open });
    for (const damage of answer.damage) this.parts.damaged({ signal: id, ...damage });
    return {
      unit: this.plan.signals[index]!.unit,
      points: answer.points.map((point) => [...point]),
      uncertain: answer.inDoubt,
      damage: answer.damage.map(({ fromMs, toMs, reason }) => ({ from: fromMs, to: toMs, reason })),
    };
  }

  alarms(query: AlarmQuery): AlarmView[] {
    return this.occurrences(query)
      .filter(({ state, raised, closed }) => {
        if (query.states !== undefined && !query.states.includes(state)) return false;
        if (query.untilMs !== undefined && raised >= query.untilMs) return false;
        return query.sinceMs === undefined || closed === null || closed >= query.sinceMs;
      })
      .sort((a, b) => b.raised - a.raised)
      .slice(0, query.limit)
      .map((occurrence) => this.alarmView(occurrence));
  }

  holds(query: HoldQuery): ReturnType<WebPorts['holds']> {
    const kept = query.standingOnly
      ? this.core.desk.heldNow()
      : this.core.store.read.holds().map((row) => JSON.parse(row.detail));
    return kept
      .filter(
        (hold) =>
          (query.what === undefined || hold.what === query.what) &&
          (query.item === undefined || sameItem(hold.item, query.item)),
      )
      .sort((a, b) => b.since - a.since)
      .slice(0, query.limit)
      .map((hold) => holdView(hold, othersOf(this.core, hold)));
  }

  runs(query: RunQuery): ReturnType<WebPorts['runs']> {
    return runViews(this.core, query);
  }

  run(id: string, points: number): ReturnType<WebPorts['run']> {
    return runProfile(this.core, id, points, this.nowMs(), this.series.bind(this));
  }

  aside(): ReturnType<WebPorts['aside']> {
    return asideViews(this.core);
  }

  coverage(): ReturnType<WebPorts['coverage']> {
    const view = coverageNow(this.core, this.nowMs());
    return { ...view, refused: this.refused().filter(({ standing }) => standing) };
  }

  refused(): ReturnType<WebPorts['refused']> {
    return refusedView(this.core.intake.refused());
  }

  load(query: LoadQuery): ReturnType<WebPorts['load']> {
    return loadView(this.core, query);
  }

  async answerNeeded(
    occurrence: string,
    needed: boolean,
    by: PersonId,
  ): ReturnType<WebPorts['answerNeeded']> {
    return wasNeeded(this.core, occurrence, needed, by, this.nowMs());
  }

  rules(): ReturnType<WebPorts['rules']> {
    return this.core.plans.now.rules.map((card) => ruleView(card, (id) => this.signal(id)));
  }

  commandAlarm(command: AlarmCommand): Promise<AlarmAnswer> {
    const known = (id: string) => this.occurrence(id);
    return commandAlarm(this.core, command, known, () => this.nowMs());
  }

  commandHold(command: HoldCommand): Promise<HoldAnswer> {
    return commandHold(this.core, command);
  }

  readonly marks: WebPorts['marks'] = (station) => marksView(this.core, station, this.nowMs());
  readonly sayMark: WebPorts['sayMark'] = (said) => sayMark(this.core, said);
  readonly enterReading: WebPorts['enterReading'] = (entered) => enterReading(this.core, entered);

  subscribe(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** What a turn did, to everybody who listens. */
  tell(news: TurnNews): void {
    if (this.listeners.size === 0) return;
    for (const effect of news.effects) {
      const event = toldEvent(this.core, effect, (occurrence) => this.alarmView(occurrence));
      const aside = asideEvent(this.core, effect);
      for (const each of [event, aside])
        if (each !== null) for (const listener of this.listeners) listener(each);
    }
    for (const id of news.told ?? []) {
      const occurrence = this.core.desk.occurrence(id);
      if (occurrence !== null) this.tellAlarm('told', occurrence);
    }
  }

  /** Another site runs: whoever listens reads rules, signals and coverage again. */
  tellSite(): void {
    const data = { ...this.site(), at: this.nowMs() };
    for (const listener of this.listeners) listener({ event: 'site', data });
  }

  /** What alarms say of when a limit is reached, or why a sensor is lost, is said anew. */
  tellForecasts(): void {
    if (this.listeners.size === 0) return;
    for (const occurrence of movedOn(this.core)) this.tellAlarm('forecast', occurrence);
  }

  /** What is new of it is none of its transitions. */
  private tellAlarm(change: 'forecast' | 'told', occurrence: Occurrence): void {
    const data = { at: this.nowMs(), change, alarm: this.alarmView(occurrence) };
    for (const listener of this.listeners) listener({ event: 'alarm', data });
  }

  tellHealth(): void {
    const data = this.health();
    for (const listener of this.listeners) listener({ event: 'health', data });
  }

  private get plan() {
    return this.core.plans.now.plan;
  }

  private signal(id: string): PlanSignal | null {
    return this.plan.signals[this.core.signalIndex(id)] ?? null;
  }

  private alarmView(occurrence: Occurrence): AlarmView {
    const { plans } = this.core;
    const { ownKinds, plan } = plans.now;
    const card = plans.now.rules.find(({ id }) => id === occurrence.rule) ?? null;
    const now = presentForecast(this.core, occurrence);
    const signal = this.signal(occurrence.signal);
    const view = alarmView(now.occurrence, card, signal, plans.timezone, ownKinds, plan.shelving);
    if (!now.vanished) return view;
    return { ...view, evidence: { ...view.evidence, earliest: null, latest: null } };
  }

  private occurrence(id: string): Occurrence | null {
    const row = this.core.desk.occurrence(id);
    if (row !== null) return row;
    const kept = this.core.store.read.occurrence(id);
    return kept === null ? null : parseOccurrence(kept);
  }

  /** What is at hand; and what is on disk besides, where a span is asked for. */
  private occurrences(query: AlarmQuery): Occurrence[] {
    const { desk, store } = this.core;
    const atHand = desk.atHand();
    if (query.sinceMs === undefined && query.untilMs === undefined) return atHand;
    const known = new Set(atHand.map(({ id }) => id));
    const until = query.untilMs ?? Number.MAX_SAFE_INTEGER;
    const older = store.read
      .occurrencesBetween(query.sinceMs ?? 0, until)
      .filter(({ id }) => !known.has(id))
      .map(parseOccurrence);
    return [...atHand, ...older];
  }
}
