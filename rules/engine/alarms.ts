/**
 * The alarms of a plan, one a rule: what conditions and commands do to them, as effects.
 *
 * An occurrence opens with a raise and closes when its alarm is normal again. Its id is
 * `<rule>@<judged ms>`; a rule raised twice within one millisecond goes on with the same one.
 */
import { next, toldAt } from '../alarm/again.ts';
import { endedBy } from '../alarm/ended-by.ts';
import { type AlarmEvent, type AlarmState, step, type Transition } from '../alarm/lifecycle.ts';
import type { ManagedNow } from '../alarm/managed.ts';
import type { Priority } from '../alarm/priority.ts';
import type { Holds } from '../hold/hold.ts';
import type { Command, Effect, MarkCommand } from '../input.ts';
import type { Evidence, Severity } from '../kinds/kind.ts';
import type { PlanHold, PlanRule, ShelfMost } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import { type Alarm, alarmBegin, traitsOf } from './alarm.ts';
import { noteRestless, setAgain } from './alarm-course.ts';
import { Holding } from './holding.ts';
import { outranked, priorityOf } from './outranking.ts';
import { commandRefusal } from './refusing.ts';

/** What the alarms ask of the engine. */
export interface AlarmHost {
  readonly now: EpochMs;
  readonly shelving: ShelfMost;
  rule(index: number): PlanRule;
  /** What a rule is about: its signal, or its mark. */
  about(rule: number): string;
  /** Resolution of what a rule is about; 0 where it has none. */
  stepOf(rule: number): number;
  severity(rule: number): Severity;
  conditionOf(rule: number): ManagedNow;
  evidence(rule: number): Evidence;
  /** What is held where the rule itself knows none; `sinceMs`: when that began which it tells. */
  heldItem(hold: PlanHold, sinceMs: EpochMs | null): string;
  setShelfEnd(rule: number, at: EpochMs | null): void;
  /** When it is told again. */
  setAgain(rule: number, at: EpochMs | null): void;
  setRelease(rule: number, at: EpochMs | null): void;
  emit(effect: Effect): void;
}

type AlarmCommand = Extract<Command, { occurrence: string }>;
type TransitionEffect = Extract<Effect, { kind: 'transition' }>;

export interface Asked {
  readonly by?: string;
  readonly reason?: string;
  readonly untilMs?: EpochMs;
  readonly oneShot?: true;
}

export class Alarms {
  readonly list: Alarm[];
  readonly holding: Holding;
  private readonly host: AlarmHost;
  private readonly indexOf: ReadonlyMap<string, number>;

  constructor(host: AlarmHost, list: Alarm[], holds: Holds, indexOf: ReadonlyMap<string, number>) {
    this.host = host;
    this.list = list;
    this.holding = new Holding(host, holds, (rule) => list[rule]!.occurrence);
    this.indexOf = indexOf;
    for (const index of list.keys()) this.setDeadlines(index);
  }

  get holds(): Holds {
    return this.holding.holds;
  }

  /** The condition of a rule, or its shelf's end, moved its alarm. */
  happen(index: number, event: AlarmEvent, at: EpochMs, asked: Asked = {}): void {
    const { changed, state: before } = this.list[index]!;
    const why = event === 'clear' && changed ? { ...asked, reason: endedBy.changed } : asked;
    // The end of what was put aside for a time.
    const ends = before === 'out-of-service' ? 'return-to-service' : event;
    if (event === 'unshelve') this.move(index, ends, at, { by: 'clock' });
    else this.move(index, event, at, why);
    const { state, aside } = this.list[index]!;
    if (event === 'clear' && state === 'shelved' && aside?.oneShot === true)
      this.move(index, 'unshelve', at, { by: 'clock' });
  }

  command(command: Exclude<Command, MarkCommand>): void {
    const why =
      command.verb === 'hold'
        ? this.holding.set(command)
        : command.verb === 'lift'
          ? this.holding.lift(command)
          : this.alarmCommand(command);
    if (why !== null) this.host.emit({ kind: 'refused', judged: this.host.now, command, why });
  }

  /** Its rule is no longer part of the site: the occurrence closes, and says why. */
  removed(index: number, by?: string): void {
    const alarm = this.list[index]!;
    if (alarm.occurrence === null && alarm.state === 'normal') return;
    const from = alarm.state;
    const { occurrence } = alarm;
    Object.assign(alarm, alarmBegin());
    this.emitTransition(index, this.host.now, 'removed', from, occurrence, {
      ...(by === undefined ? {} : { by }),
      reason: endedBy.removed,
    });
  }

  /** The time to respond is half over, or over. */
  againDue(index: number): void {
    const alarm = this.list[index]!;
    const { respondMs } = this.host.rule(index);
    if (alarm.again === null) return;
    if (respondMs == null && alarm.again.what !== 'proving') {
      // Another site gives it no time to respond.
      alarm.again = null;
      return;
    }
    const { what, times, dueMs } = alarm.again;
    if (what !== 'proving' && this.outranked(index)) {
      // The worse one speaks for it; once that is over it has its time again.
      alarm.again = toldAt(dueMs, respondMs ?? 0, times);
      this.setDeadlines(index);
      return;
    }
    alarm.again = next(
      alarm.again,
      respondMs ?? 0,
      this.host.evidence(index),
      this.host.stepOf(index),
    );
    if (alarm.again !== null) this.setDeadlines(index);
    else this.move(index, 'realarm', dueMs, {}, what === 'proving' ? 0 : times + 1);
  }

  /** Does a worse one about the same signal and side stand, told to people? */
  outranked(index: number): boolean {
    return outranked(this.host, this.list, index);
  }

  /** Nothing was observed in between, and nobody told: the time to respond stood still. */
  gap(fromMs: EpochMs, toMs: EpochMs): void {
    for (const [index, alarm] of this.list.entries()) {
      if (alarm.again === null) continue;
      alarm.again = { ...alarm.again, dueMs: alarm.again.dueMs + toMs - fromMs };
      this.setDeadlines(index);
    }
  }

  setRelease(index: number, at: EpochMs | null): void {
    this.list[index]!.releaseAt = at;
    this.host.setRelease(index, at);
  }

  /** Returns why it is refused; null where it is not. */
  private alarmCommand(command: AlarmCommand): string | null {
    const { verb, by, reason } = command;
    const cut = command.occurrence.lastIndexOf('@');
    const ruleId = cut < 0 ? command.occurrence : command.occurrence.slice(0, cut);
    const index = this.indexOf.get(ruleId);
    if (index === undefined) return `there is no rule ${ruleId}`;
    const alarm = this.list[index]!;
    const aboutOccurrence = verb === 'acknowledge' || verb === 'reset' || verb === 'pass-on';
    const named =
      command.occurrence === alarm.occurrence ||
      (!aboutOccurrence &&
        (command.occurrence === ruleId || command.occurrence === alarm.lastOccurrence));
    if (!named) return 'it is not the current occurrence; look at the alarm again';
    const why = commandRefusal(this.host, index, alarm, command);
    if (why !== null) return why;
    return this.move(index, verb, this.host.now, {
      by,
      ...(reason === undefined ? {} : { reason }),
      ...(command.untilMs === undefined ? {} : { untilMs: command.untilMs }),
      ...(verb === 'shelve' && command.oneShot === true ? { oneShot: true } : {}),
    });
  }

  private priority(index: number): Priority {
    return priorityOf(this.host, index);
  }

  /** Returns why nothing moved, where somebody should be told; null otherwise. */
  private move(
    index: number,
    event: AlarmEvent,
    at: EpochMs,
    asked: Asked,
    times = 0,
  ): string | null {
    const alarm = this.list[index]!;
    const rule = this.host.rule(index);
    const taken = step(alarm, event, traitsOf(alarm, rule.class));
    if (taken.did !== 'move') return asked.by === undefined ? null : taken.why;
    const from = alarm.state;
    const before = alarm.occurrence;
    const wasBeneath = alarm.beneath;
    alarm.state = taken.next.state;
    alarm.beneath = taken.next.beneath;
    const nuisance = noteRestless(alarm, rule, event, wasBeneath === 'acknowledged', this.host.now);
    const uncovered = from !== wasBeneath && alarm.state === alarm.beneath;
    this.putAside(index, event, asked);
    const told = uncovered || event === 'raise' || event === 'escalate' || event === 'realarm';
    setAgain(alarm, rule, told, nuisance, times, this.host.now);
    this.setDeadlines(index);
    const opens = event === 'raise' && !wasBeneath.startsWith('latched');
    if (opens) this.open(alarm, rule);
    const supersedes = opens && before !== null && before !== alarm.occurrence ? before : null;
    this.emitTransition(index, at, taken.transition, from, alarm.occurrence, asked, {
      ...(supersedes === null ? {} : { supersedes }),
      ...(nuisance === null ? {} : { nuisance }),
      ...(event === 'realarm' ? { again: times } : {}),
    });
    if (event === 'raise' && rule.kind.passed === undefined)
      this.holding.byRule(index, this.host.evidence(index));
    if (event === 'clear' || opens) alarm.changed = false;
    if (alarm.beneath === 'normal') this.close(alarm);
    return null;
  }

  /** Since when, by whom and why it is put aside; a shelf ends no later than its priority allows. */
  private putAside(index: number, event: AlarmEvent, asked: Asked): void {
    const alarm = this.list[index]!;
    const { now, shelving } = this.host;
    if (alarm.state !== 'suppressed-by-design') alarm.releaseAt = null;
    if (alarm.state !== 'shelved' && alarm.state !== 'out-of-service') alarm.shelvedUntil = null;
    if (alarm.state === alarm.beneath) {
      alarm.aside = null;
      return;
    }
    if (event === 'shelve' || event === 'suppress' || event === 'remove-from-service') {
      const { by = null, reason = '', oneShot = false, untilMs = null } = asked;
      alarm.aside = { since: now, by, reason, oneShot };
      alarm.shelvedUntil = event === 'suppress' ? null : untilMs;
    }
    if (alarm.shelvedUntil === null || alarm.state !== 'shelved') return;
    // What was shelved at its first limit is not hidden for as long at its second.
    const most = now + shelving[this.priority(index)];
    alarm.shelvedUntil = Math.min(alarm.shelvedUntil, most);
  }

  private setDeadlines(index: number): void {
    const { shelvedUntil, releaseAt, again } = this.list[index]!;
    this.host.setShelfEnd(index, shelvedUntil);
    this.host.setRelease(index, releaseAt);
    this.host.setAgain(index, again === null ? null : again.dueMs);
  }

  private open(alarm: Alarm, { id, class: of }: PlanRule): void {
    if (alarm.occurrence !== null) alarm.lastOccurrence = alarm.occurrence;
    alarm.occurrence = `${id}@${this.host.now}`;
    alarm.latching = of.latching;
  }

  private close(alarm: Alarm): void {
    if (alarm.occurrence === null) return;
    alarm.lastOccurrence = alarm.occurrence;
    alarm.occurrence = null;
  }

  private emitTransition(
    index: number,
    at: EpochMs,
    transition: Transition,
    from: AlarmState,
    occurrence: string | null,
    asked: Asked,
    more: Pick<TransitionEffect, 'supersedes' | 'nuisance' | 'again'> = {},
  ): void {
    const rule = this.host.rule(index);
    const { by, reason } = asked;
    const { state, beneath, shelvedUntil, aside } = this.list[index]!;
    this.host.emit({
      kind: 'transition',
      at,
      judged: this.host.now,
      rule: rule.id,
      signal: this.host.about(index),
      occurrence,
      transition,
      from,
      to: state,
      severity: this.host.severity(index),
      priority: this.priority(index),
      evidence: this.host.evidence(index),
      ...(by === undefined ? {} : { by }),
      ...(reason === undefined ? {} : { reason }),
      ...(shelvedUntil === null ? {} : { untilMs: shelvedUntil }),
      ...(shelvedUntil !== null && aside?.oneShot === true ? { oneShot: true } : {}),
      ...(occurrence !== null && beneath === 'normal' ? { closes: true } : {}),
      ...more,
    });
  }
}
