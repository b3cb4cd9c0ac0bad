/**
 * Telling: takes what happened to alarms, asks the plan what is to be done, finds the people, and
 * writes it all down with the turn; then the outbox carries it out.
 *
 * Always true: what the plan knows is on disk with the transition that taught it; people are found
 * when a step is due, not before; where nobody of a step can be reached, the next is not waited for.
 */
import type { Effect, PersonId } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Chase, Order } from '#rules/telling/chase.ts';
import { TellingPlan } from '#rules/telling/plan.ts';
import { whoIsOn } from '#rules/telling/rota.ts';
import type { TellingSettings } from '#rules/telling/settings.ts';
import { limits } from '../limits.ts';
import type { OutboxRow } from '../store/contract.ts';
import type { Message, MessageKind, Target } from './contract.ts';
import { type Ladder, ladderOf, onRungs, type Subject } from './ladder.ts';
import { Mailings } from './mailings.ts';
import { Outbox, type Parcel } from './outbox.ts';
import { unreadCause } from './rota-book.ts';
import { targetName, targetsOf, webhookTarget } from './targets.ts';
import type { Said, TellerParts, Told } from './teller-parts.ts';
import { chaseRow, closedRow, planRow, readRows } from './telling-rows.ts';

interface Post {
  readonly kind: MessageKind;
  readonly silent: boolean;
  readonly language: 'en' | 'de';
  readonly said: Said;
  readonly members?: readonly string[] | undefined;
}

const ofNoAlarm: ReadonlySet<MessageKind> = new Set([
  ...(['test', 'digest', 'week', 'checkpoint'] as const),
]);

export class Teller {
  readonly parts: TellerParts;
  private readonly plan: TellingPlan;
  private readonly targets = new Map<string, Map<string, Target>>();
  private stateText: string;
  /** Chases of whose newest step somebody was reached, or nobody can be. */
  private readonly reached = new Set<string>();
  private hadAnybody = false;
  private readonly mailings: Mailings;
  readonly outbox: Outbox;

  /** `rows`: what waited when the last run ended. */
  constructor(parts: TellerParts, settings: TellingSettings, rows: readonly OutboxRow[]) {
    this.parts = parts;
    const { kept, state, mailed, messages } = readRows(rows);
    const chases = kept.map(({ chase }) => chase);
    this.plan = new TellingPlan(settings, chases, state, parts.outranked);
    this.stateText = JSON.stringify(this.plan.state());
    for (const { chase, targets, reached } of kept) {
      this.targets.set(chase.occurrence, new Map(targets.map((one) => [targetName(one), one])));
      if (reached) this.reached.add(chase.occurrence);
    }
    const { channels, write, now, ready, fault } = parts;
    const settled = (row: OutboxRow, parcel: Parcel): void => this.settled(row, parcel);
    this.outbox = new Outbox({ channels, write, settled, now, ready, fault });
    this.outbox.load(messages);
    this.mailings = new Mailings(parts, mailed, (thread, kind, target, language, said) =>
      this.post(thread, 0, target, { kind, silent: true, language, said }),
    );
  }

  /** The site file says it otherwise from here on. */
  set(settings: TellingSettings): void {
    this.plan.set(settings);
  }

  /** Before its turn is committed. */
  take(effect: Effect): void {
    if (effect.kind !== 'transition' || effect.occurrence === null) return;
    if (!this.hasAnybody && this.plan.chase(effect.occurrence) === null) return;
    const alarm = this.parts.alarmOf(effect);
    if (alarm !== null) this.carryOut(this.plan.take(effect, alarm));
  }

  /** What is due by `now` goes into the next turn. */
  look(now: EpochMs): void {
    this.lookForFirst(now);
    this.lookForUnreached(now);
    const next = this.plan.nextMs;
    if (next !== null && next <= now) this.carryOut(this.plan.look(now));
    this.mailings.look(now);
  }

  /** The turn is on disk, or the disk refuses: people first. */
  perform(): void {
    this.outbox.release();
    this.outbox.look();
  }

  stop(): Promise<void> {
    return this.outbox.stop();
  }

  get webhooks(): readonly string[] {
    return this.parts.webhooks();
  }

  chases(): Chase[] {
    return this.plan.all();
  }

  /** Who would be told now. */
  ladder(subject: Subject): Ladder {
    const { persons, rota, now } = this.parts;
    return ladderOf(persons.list(), rota(), now(), subject);
  }

  /** There is a rota, all of it is read, and it has nobody for this now. */
  isUnstaffed(station: string, hazard: string | null): boolean {
    const { rota, now } = this.parts;
    const known = rota();
    if (known.entries.length === 0) return false;
    const { who, causes } = whoIsOn(known, now(), station, hazard);
    return who.length === 0 && !causes.some((cause) => cause.includes(unreadCause));
  }

  /** A message to one person that is no alarm’s; gives its targets, none where they have none. */
  test(person: PersonId, say: (language: 'en' | 'de') => Said): readonly Target[] {
    const found = this.parts.persons.list().find(({ id }) => id === person);
    if (found === undefined) return [];
    const { language } = found;
    const targets = targetsOf(found, true);
    const post: Post = { kind: 'test', silent: false, said: say(language), language };
    for (const target of targets) this.post(`test@${this.parts.now()}`, 0, target, post);
    return targets;
  }

  /** Somebody is there at last: what stands already is told to them now, not when it next moves. */
  private lookForFirst(now: EpochMs): void {
    const had = this.hadAnybody;
    this.hadAnybody = this.hasAnybody;
    if (had || !this.hadAnybody) return;
    for (const effect of this.parts.standing()) {
      if (effect.occurrence === null || this.plan.chase(effect.occurrence) !== null) continue;
      const alarm = this.parts.alarmOf(effect);
      if (alarm !== null) this.carryOut(this.plan.take({ ...effect, judged: now }, alarm));
    }
  }

  private get hasAnybody(): boolean {
    return this.parts.persons.list().length > 0 || this.parts.webhooks().length > 0;
  }

  // ── what the plan orders ────────────────────────────────────────────────────────────────────

  private carryOut(orders: readonly Order[]): void {
    for (const order of orders) {
      if (order.do === 'tell') this.tell(order);
      else if (order.do === 'end') this.end(order);
      else this.digest(order);
    }
    for (const [occurrence, chase] of this.plan.takeChanges()) {
      if (chase === null) {
        this.targets.delete(occurrence);
        this.reached.delete(occurrence);
        this.parts.write(closedRow(occurrence, this.parts.now()));
      } else this.keep(chase);
    }
    const state = this.plan.state();
    const text = JSON.stringify(state);
    if (text !== this.stateText) this.parts.write(planRow(state));
    this.stateText = text;
  }

  private keep(chase: Chase): void {
    const { occurrence } = chase;
    const targets = [...(this.targets.get(occurrence)?.values() ?? [])];
    this.parts.write(chaseRow({ chase, targets, reached: this.reached.has(occurrence) }));
  }

  private tell(order: Extract<Order, { do: 'tell' }>): void {
    const { occurrence, chase, step, as: kind, silent, at } = order;
    const { members } = chase;
    const ladder = this.ladder(chase);
    const people = onRungs(ladder, order.rungs);
    const say = (language: 'en' | 'de'): Post => {
      const said = this.parts.say({ kind, chase, at, language, by: null, notes: [] });
      return { kind, silent, language, said, members };
    };
    const posts = { en: say('en'), de: say('de') };
    const urgent = chase.highlyManaged || chase.priority === 'high';
    const waiting = this.waitingFor(occurrence);
    const post = (target: Target, language: 'en' | 'de'): void => {
      // One that waits says it already.
      if (!waiting.has(targetName(target))) this.post(occurrence, step, target, posts[language]);
    };
    if (!silent) this.reached.delete(occurrence);
    for (const person of people)
      for (const target of targetsOf(person, urgent)) post(target, person.language);
    for (const name of this.parts.webhooks()) post(webhookTarget(name), 'en');
    if (people.length > 0) return;
    this.reached.add(occurrence);
    const { causes } = ladder;
    this.parts.record({ type: 'told-nobody', at, occurrence, step, causes });
  }

  private end(order: Extract<Order, { do: 'end' }>): void {
    const { occurrence, chase, step, as: kind, at, by } = order;
    this.outbox.withdraw(occurrence, withdrawn[kind]);
    const language = new Map(this.parts.persons.list().map((one) => [one.id, one.language]));
    for (const target of this.targets.get(occurrence)?.values() ?? []) {
      const of = (target.person === null ? null : language.get(target.person)) ?? 'en';
      const said = this.parts.say({ kind, chase, at, language: of, by, notes: [] });
      const { members } = chase;
      this.post(occurrence, step, target, { kind, silent: true, language: of, said, members });
    }
  }

  private digest({ at, notes }: Extract<Order, { do: 'digest' }>): void {
    for (const person of this.parts.persons.list().filter(({ role }) => role === 'engineer')) {
      const { language } = person;
      const said = this.parts.say({ kind: 'digest', chase: null, at, language, by: null, notes });
      const targets = targetsOf(person, true);
      const mail = targets.find(({ channel }) => channel === 'email') ?? targets[0];
      if (mail !== undefined)
        this.post(`digest@${at}`, 0, mail, { kind: 'digest', silent: true, language, said });
    }
  }

  private post(thread: string, step: number, target: Target, post: Post): void {
    const { kind, silent, language, said, members } = post;
    const channel = targetName(target);
    const occurrence = ofNoAlarm.has(kind) ? null : thread;
    const key = `${thread}/${step}/${channel}`;
    const message: Message = { ...said, key, occurrence, thread, kind, silent, language };
    const parcel: Parcel = { message, target, ...(members === undefined ? {} : { members }) };
    if (occurrence !== null && !silent) {
      const known = this.targets.get(thread) ?? new Map<string, Target>();
      this.targets.set(thread, known.set(channel, target));
    }
    const due = this.parts.now();
    const waits = { tries: 0, done: null, outcome: null, cause: null };
    const detail = JSON.stringify(parcel);
    this.outbox.add({ occurrence: thread, step, channel, due, ...waits, detail }, parcel);
  }

  // ── what became of it ───────────────────────────────────────────────────────────────────────

  private settled(row: OutboxRow, { message, target, members }: Parcel): void {
    const { occurrence, step, cause } = row;
    const { person, channel, address } = target;
    const { kind } = message;
    const at = row.done ?? this.parts.now();
    const outcome = row.outcome ?? 'delivered';
    const to = person === null ? address : null;
    const told: Told = { at, occurrence, step, kind, channel, person, to, outcome, cause };
    this.parts.record({ type: 'told', ...told });
    if (message.occurrence !== null && members === undefined) this.parts.told(occurrence, told);
    if (outcome !== 'withdrawn') for (const member of members ?? []) this.parts.told(member, told);
    if (outcome === 'gone' && cause !== null) this.parts.gone(target, cause);
    const chase = this.plan.chase(occurrence);
    if (outcome !== 'delivered' || person === null || message.silent || chase === null) return;
    this.reached.add(occurrence);
    this.keep(chase);
  }

  /** Targets for which a message of it waits that is not on its way yet. */
  private waitingFor(occurrence: string): Set<string> {
    return new Set(
      this.outbox
        .waiting()
        .filter(({ row, sending }) => row.occurrence === occurrence && !sending)
        .map(({ parcel }) => targetName(parcel.target)),
    );
  }

  /** Steps of which nobody has been reached: at once where nobody will be, else after a while. */
  private lookForUnreached(now: EpochMs): void {
    const open = this.plan
      .all()
      .filter(({ waits, occurrence }) => waits === 'answer' && !this.reached.has(occurrence));
    if (open.length === 0) return;
    const waiting = Map.groupBy(
      this.outbox.waiting().filter(({ parcel }) => parcel.target.person !== null),
      ({ row }) => row.occurrence,
    );
    for (const chase of open) {
      const { occurrence } = chase;
      const rows = waiting.get(occurrence) ?? [];
      if (rows.some(({ sinceMs }) => now - sinceMs < limits.outboxUnreachableMs)) continue;
      // There may be nobody else: then it waits for its time.
      if (chase.rung >= this.ladder(chase).rungs.length) continue;
      this.reached.add(occurrence);
      this.plan.unreached(occurrence, now);
    }
  }
}

const withdrawn = {
  over: 'It was over before it could be sent.',
  answered: 'It was answered before it could be sent.',
} as const;
