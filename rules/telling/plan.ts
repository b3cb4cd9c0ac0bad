/**
 * Who is to be told of what, and when: alarms in, orders out. Pure; the shell finds the people,
 * writes the orders down with the turn and carries them out.
 *
 * Always true: an alarm that asks for somebody, and does not come and go too fast to act on, has a
 * next step until somebody answers it, it is over or put aside; a highly managed alarm waits for
 * nothing and is told alone; high priority never waits for the end of quiet hours; what became of
 * an alarm makes no sound.
 */
import { type FloodState, FloodWatch } from '../alarm/flood.ts';
import type { Effect } from '../input.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { AlarmToTell, Chase, Ending, Order } from './chase.ts';
import { endMember, type Group, groupOf, joined, nextInGroup, withNews } from './group.ts';
import { DigestNotes, type NotesState } from './notes.ts';
import { againAfterMs, quietUntil } from './pace.ts';
import type { TellingSettings } from './settings.ts';
import { calls, endingOf, isGroup, isUnanswered, quiet } from './what-it-means.ts';

type Transition = Extract<Effect, { kind: 'transition' }>;

/** What the plan knows beside its chases; written down with them. */
export interface PlanState extends NotesState {
  readonly flood: FloodState;
}

/** Chases that changed since they were last asked for; null where one is closed. */
export type Changed = ReadonlyMap<string, Chase | null>;

export class TellingPlan {
  private settings: TellingSettings;
  private readonly chases = new Map<string, Chase>();
  private readonly flood: FloodWatch;
  private readonly notes: DigestNotes;
  private changes = new Map<string, Chase | null>();
  private readonly orders: Order[] = [];
  private readonly outranked: (occurrence: string) => boolean;

  /** `outranked`: whether a worse alarm about the same signal and side stands. */
  constructor(
    settings: TellingSettings,
    chases: readonly Chase[] = [],
    state: PlanState | null = null,
    outranked: (occurrence: string) => boolean = () => false,
  ) {
    this.settings = settings;
    this.outranked = outranked;
    for (const chase of chases) this.chases.set(chase.occurrence, chase);
    this.flood = new FloodWatch(undefined, state?.flood ?? null);
    this.notes = new DigestNotes(state);
  }

  /** The site file says it otherwise from here on. */
  set(settings: TellingSettings): void {
    this.settings = settings;
  }

  state(): PlanState {
    return { flood: this.flood.save(), ...this.notes.save() };
  }

  chase(occurrence: string): Chase | null {
    return this.chases.get(occurrence) ?? null;
  }

  all(): Chase[] {
    return [...this.chases.values()];
  }

  /** What changed since the last call. */
  takeChanges(): Changed {
    const { changes } = this;
    this.changes = new Map();
    return changes;
  }

  /** Something happened to an alarm. */
  take(effect: Transition, alarm: AlarmToTell): Order[] {
    const { occurrence, supersedes, judged, to, transition } = effect;
    if (occurrence === null) return [];
    if (alarm.highlyManaged) this.notes.managed(effect, this.settings);
    if (supersedes !== undefined) this.end(supersedes, 'over', judged, null, true);
    if (transition === 'passed-on') this.unreached(occurrence, judged);
    else if (calls(effect)) this.call(alarm, effect);
    else if (!isUnanswered(to)) {
      const { ending, by } = endingOf(effect);
      if (transition === 'returned' && this.chases.get(occurrence)?.waits === 'quiet')
        this.notes.add(effect, 'quiet', this.settings);
      this.end(occurrence, ending, judged, by, effect.closes === true);
    }
    return this.given();
  }

  /** Whoever was told cannot be reached, or passed it on: the next step is due. */
  unreached(occurrence: string, now: EpochMs): void {
    const chase = this.chases.get(occurrence);
    if (chase?.waits === 'answer')
      this.keep({ ...chase, dueMs: Math.min(now, chase.dueMs ?? now) });
  }

  /** Time passes: what is due by `now`, oldest first. */
  look(now: EpochMs): Order[] {
    if (this.flood.look(now) !== null)
      for (const { occurrence, waits, members } of this.all())
        if (members !== undefined && waits === 'nothing') this.drop(occurrence);
    for (const chase of this.all()) if ((chase.newsMs ?? now + 1) <= now) this.tellNews(chase, now);
    const due = this.all()
      .filter((chase) => chase.dueMs !== null && chase.dueMs <= now)
      .sort((a, b) => (a.dueMs ?? 0) - (b.dueMs ?? 0));
    for (const { occurrence } of due) {
      const chase = this.chases.get(occurrence);
      if (chase !== undefined && chase.dueMs !== null && chase.dueMs <= now) this.due(chase, now);
    }
    const notes = this.notes.take(now);
    if (notes !== null) this.orders.push({ do: 'digest', at: now, notes });
    return this.given();
  }

  /** When `look` has something to do at the soonest; null where never. */
  get nextMs(): EpochMs | null {
    let next = this.notes.dueMs;
    for (const { dueMs, newsMs = null } of this.chases.values())
      for (const at of [dueMs, newsMs]) if (at !== null && (next === null || at < next)) next = at;
    return next;
  }

  private given(): Order[] {
    return this.orders.splice(0);
  }

  private call(alarm: AlarmToTell, effect: Transition): void {
    const { judged: at, transition, nuisance } = effect;
    const known = this.chases.get(alarm.occurrence);
    const { step = 0, group = null, rung = 0, raisedMs = at } = known ?? {};
    const chase: Chase = {
      ...alarm,
      raisedMs: transition === 'raised' ? at : raisedMs,
      step,
      group,
      rung: known?.waits === 'nothing' ? 0 : rung,
      waits: 'turn',
      dueMs: at,
    };
    if (nuisance !== undefined && !alarm.highlyManaged) {
      this.notes.add(effect, nuisance, this.settings);
      this.keep({ ...chase, waits: 'nothing', dueMs: null });
    } else if (alarm.highlyManaged) this.tell({ ...chase, group: null }, at, step > 0);
    else this.callUnlessQuiet(chase, at, step > 0);
  }

  private callUnlessQuiet(chase: Chase, at: EpochMs, again: boolean): void {
    const until = quietUntil(this.settings, chase.priority, at);
    if (until !== null) {
      this.keep({ ...chase, waits: 'quiet', dueMs: until });
      return;
    }
    this.flood.told(at);
    const since = this.flood.since;
    if (since !== null) this.join(chase, `flood@${since}`, at);
    else {
      if (chase.group !== null) this.leave(chase.group, chase.occurrence, at, 'answered');
      this.tell({ ...chase, group: null }, at, again);
    }
  }

  /** Tells it now, and sets when the next step is due. */
  private tell(chase: Chase, at: EpochMs, again: boolean): void {
    const { occurrence, step } = chase;
    const isGroup = chase.members !== undefined;
    const repeated = again && chase.rung > 0;
    const rungs = repeated ? ([0, chase.rung - 1] as const) : ([chase.rung, chase.rung] as const);
    const as = isGroup ? 'flood' : step > 0 || again ? 'again' : 'alarm';
    this.orders.push({ do: 'tell', occurrence, chase, step, rungs, as, silent: false, at });
    const rung = repeated ? chase.rung : chase.rung + 1;
    this.keep({
      ...chase,
      step: step + 1,
      rung,
      ...(isGroup ? { newsMs: null } : {}),
      waits: 'answer',
      dueMs: at + againAfterMs(this.settings, chase, rung),
    });
  }

  /** The worse alarm speaks for it; once that is over this one goes on where it was. */
  private waitForWorse(chase: Chase, now: EpochMs): void {
    this.keep({ ...chase, dueMs: now + againAfterMs(this.settings, chase, chase.rung) });
  }

  private due(chase: Chase, now: EpochMs): void {
    switch (chase.waits) {
      case 'answer':
        if (this.outranked(chase.occurrence)) this.waitForWorse(chase, now);
        else this.tell(chase, now, false);
        return;
      case 'turn':
        this.tell(chase, now, false);
        return;
      case 'quiet':
        this.callUnlessQuiet(chase, now, false);
        return;
      case 'group':
      case 'nothing':
        this.keep({ ...chase, dueMs: null });
    }
  }

  // ── floods ──────────────────────────────────────────────────────────────────────────────────

  private join(chase: Chase, id: string, at: EpochMs): void {
    const known = this.chases.get(id);
    const group: Group = isGroup(known) ? known : groupOf(id, chase, at);
    const taken = isGroup(known)
      ? []
      : this.all().filter((one) => one.waits === 'answer' && !one.highlyManaged && !isGroup(one));
    let grown = group;
    for (const one of [...taken, chase]) {
      grown = joined(grown, one);
      if (one.group !== null && one.group !== id) this.leave(one.group, one.occurrence, at, 'over');
      this.keep({ ...one, group: id, waits: 'group', dueMs: null });
    }
    if (group.waits === 'nothing') grown = { ...grown, rung: 0, priority: chase.priority };
    const worse = grown.priority !== group.priority;
    if (group.waits !== 'answer') this.tell(grown, at, false);
    else if (worse) this.tell(grown, at, true);
    else this.keep(withNews(grown, at));
    const told = this.chases.get(id);
    if (isGroup(told)) this.keep(nextInGroup(told, taken));
  }

  /** What joined since, without a sound. */
  private tellNews(chase: Chase, at: EpochMs): void {
    const { occurrence, step, rung } = chase;
    const rungs = [0, Math.max(0, rung - 1)] as const;
    this.orders.push({ do: 'tell', occurrence, chase, step, rungs, as: 'flood', silent: true, at });
    this.keep({ ...chase, step: step + 1, newsMs: null });
  }

  private leave(id: string, occurrence: string, at: EpochMs, as: Ending): void {
    const group = this.chases.get(id);
    if (!isGroup(group)) return;
    const left = endMember(group, occurrence);
    this.keep(left);
    // While the flood goes on, the next of it joins again.
    if (left.unanswered.length === 0) this.end(id, as, at, null, id !== this.floodId);
  }

  private get floodId(): string | null {
    const { since } = this.flood;
    return since === null ? null : `flood@${since}`;
  }

  // ── endings ─────────────────────────────────────────────────────────────────────────────────

  private end(
    occurrence: string,
    as: Ending,
    at: EpochMs,
    by: string | null,
    closes: boolean,
  ): void {
    const chase = this.chases.get(occurrence);
    if (chase === undefined) return;
    const told = chase.step > 0 && chase.waits !== 'nothing';
    if (told) this.orders.push({ do: 'end', occurrence, chase, step: chase.step, as, at, by });
    const step = chase.step + (told ? 1 : 0);
    if (closes) this.drop(occurrence);
    else this.keep({ ...quiet(chase), step });
    if (chase.group !== null) this.leave(chase.group, occurrence, at, as);
  }

  private keep(chase: Chase): void {
    this.chases.set(chase.occurrence, chase);
    this.changes.set(chase.occurrence, chase);
  }

  private drop(occurrence: string): void {
    this.chases.delete(occurrence);
    this.changes.set(occurrence, null);
  }
}
