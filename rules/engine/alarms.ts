/**
 * The alarms of a plan, one a rule: what conditions and commands do to them, as effects.
 *
 * An occurrence opens with a raise and closes when its alarm is normal again. Its id is
 * `<rule>@<judged ms>`; a rule raised twice within one millisecond goes on with the same one.
 */
import {
  type AlarmEvent,
  type AlarmPosition,
  type AlarmState,
  type BasicState,
  step,
} from '../alarm/lifecycle.ts';
import type { Hold, Holds } from '../hold/hold.ts';
import type { Command, Effect, MarkCommand } from '../input.ts';
import type { Evidence, Severity } from '../kinds/kind.ts';
import type { PlanHold, PlanRule } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { LiveRule } from './live-rule.ts';

export interface Alarm extends AlarmPosition {
  state: AlarmState;
  beneath: BasicState;
  /** The open occurrence. */
  occurrence: string | null;
  /** The one before it, by which a shelf may still be named. */
  lastOccurrence: string | null;
  shelvedUntil: EpochMs | null;
}

export const alarmBegin = (): Alarm => ({
  state: 'normal',
  beneath: 'normal',
  occurrence: null,
  lastOccurrence: null,
  shelvedUntil: null,
});

/** What the alarms ask of the engine. */
export interface AlarmHost {
  readonly now: EpochMs;
  rule(index: number): PlanRule;
  /** What a rule is about: its signal, or its mark. */
  about(rule: number): string;
  severity(rule: number): Severity;
  evidence(rule: number): Evidence;
  /** What is held where the rule itself knows none; `sinceMs`: when that began which it tells. */
  heldItem(hold: PlanHold, sinceMs: EpochMs | null): string;
  setShelfEnd(rule: number, at: EpochMs | null): void;
  emit(effect: Effect): void;
}

type AlarmCommand = Extract<Command, { occurrence: string }>;

interface Asked {
  readonly by?: string;
  readonly reason?: string;
  readonly untilMs?: EpochMs;
}

export class Alarms {
  readonly list: Alarm[];
  readonly holds: Holds;
  private readonly host: AlarmHost;
  private readonly indexOf: ReadonlyMap<string, number>;

  constructor(host: AlarmHost, list: Alarm[], holds: Holds, indexOf: ReadonlyMap<string, number>) {
    this.host = host;
    this.list = list;
    this.holds = holds;
    this.indexOf = indexOf;
  }

  /** The condition of a rule, or its shelf's end, moved its alarm. */
  happen(index: number, event: AlarmEvent, at: EpochMs): void {
    this.move(index, event, at, event === 'unshelve' ? { by: 'clock' } : {});
  }

  command(command: Exclude<Command, MarkCommand>): void {
    const why =
      command.verb === 'hold'
        ? this.setHold(command)
        : command.verb === 'lift'
          ? this.lift(command)
          : this.alarmCommand(command);
    if (why !== null) this.host.emit({ kind: 'refused', judged: this.host.now, command, why });
  }

  /** Its rule is no longer part of the site: the occurrence closes, and says why. */
  removed(index: number): void {
    const alarm = this.list[index]!;
    if (alarm.occurrence === null && alarm.state === 'normal') return;
    const from = alarm.state;
    const { occurrence } = alarm;
    Object.assign(alarm, alarmBegin());
    this.emitTransition(index, this.host.now, 'removed', from, occurrence, {});
  }

  /** Returns why it is refused; null where it is not. */
  private alarmCommand(command: AlarmCommand): string | null {
    const cut = command.occurrence.lastIndexOf('@');
    const ruleId = cut < 0 ? command.occurrence : command.occurrence.slice(0, cut);
    const index = this.indexOf.get(ruleId);
    if (index === undefined) return `there is no rule ${ruleId}`;
    const alarm = this.list[index]!;
    const aboutOccurrence = command.verb === 'acknowledge' || command.verb === 'reset';
    const named =
      command.occurrence === alarm.occurrence ||
      (!aboutOccurrence &&
        (command.occurrence === ruleId || command.occurrence === alarm.lastOccurrence));
    if (!named) return 'it is not the current occurrence; look at the alarm again';
    if (command.verb === 'shelve') {
      if (this.host.rule(index).class.highlyManaged)
        return 'it is highly managed: nobody may silence it; act on its steps';
      if (command.untilMs === undefined || command.untilMs <= this.host.now)
        return 'a shelf needs an end that lies ahead';
      if (command.reason === undefined || command.reason.trim() === '')
        return 'a shelf needs a reason';
    }
    return this.move(index, command.verb, this.host.now, {
      by: command.by,
      ...(command.reason === undefined ? {} : { reason: command.reason }),
      ...(command.untilMs === undefined ? {} : { untilMs: command.untilMs }),
    });
  }

  /** Returns why nothing moved, where somebody should be told; null otherwise. */
  private move(index: number, event: AlarmEvent, at: EpochMs, asked: Asked): string | null {
    const alarm = this.list[index]!;
    const rule = this.host.rule(index);
    const taken = step(alarm, event, rule.class);
    if (taken.did !== 'move') return asked.by === undefined ? null : taken.why;
    const from = alarm.state;
    const before = alarm.occurrence;
    const wasBeneath = alarm.beneath;
    alarm.state = taken.next.state;
    alarm.beneath = taken.next.beneath;
    alarm.shelvedUntil = alarm.state === 'shelved' ? (asked.untilMs ?? alarm.shelvedUntil) : null;
    this.host.setShelfEnd(index, alarm.shelvedUntil);
    const opens = event === 'raise' && !wasBeneath.startsWith('latched');
    if (opens) this.open(alarm, rule.id);
    const supersedes = opens && before !== null && before !== alarm.occurrence ? before : null;
    this.emitTransition(index, at, taken.transition, from, alarm.occurrence, asked, supersedes);
    if (event === 'raise' && rule.kind.passed === undefined)
      this.holdByRule(index, this.host.evidence(index));
    if (alarm.beneath === 'normal') this.close(alarm);
    return null;
  }

  private open(alarm: Alarm, ruleId: string): void {
    if (alarm.occurrence !== null) alarm.lastOccurrence = alarm.occurrence;
    alarm.occurrence = `${ruleId}@${this.host.now}`;
  }

  private close(alarm: Alarm): void {
    if (alarm.occurrence === null) return;
    alarm.lastOccurrence = alarm.occurrence;
    alarm.occurrence = null;
  }

  private emitTransition(
    index: number,
    at: EpochMs,
    transition: Extract<Effect, { kind: 'transition' }>['transition'],
    from: AlarmState,
    occurrence: string | null,
    asked: Asked,
    supersedes: string | null = null,
  ): void {
    const rule = this.host.rule(index);
    const severity = this.host.severity(index);
    const { by, reason } = asked;
    const { state, beneath, shelvedUntil } = this.list[index]!;
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
      severity,
      priority: rule.priority[severity === 2 ? 1 : 0],
      evidence: this.host.evidence(index),
      ...(by === undefined ? {} : { by }),
      ...(reason === undefined ? {} : { reason }),
      ...(shelvedUntil === null ? {} : { untilMs: shelvedUntil }),
      ...(occurrence !== null && beneath === 'normal' ? { closes: true } : {}),
      ...(supersedes === null ? {} : { supersedes }),
    });
  }

  /** Where items passed a rule's limit: a hold on each; '' is what the rule holds by itself. */
  holdPassed({ index, kind, memory }: LiveRule): void {
    if (kind.passed === undefined) return;
    for (const item of kind.passed(memory)) this.holdByRule(index, item === '' ? {} : { item });
  }

  private holdByRule(index: number, about: Pick<Evidence, 'item' | 'sinceMs'>): void {
    const rule = this.host.rule(index);
    if (rule.hold === null) return;
    const named = rule.hold.named !== undefined;
    const hold = this.holds.set({
      what: rule.hold.what,
      // What the rule is about may be no rack, as the container after which parts are doubted.
      item: (named ? undefined : about.item) ?? this.host.heldItem(rule.hold, about.sinceMs ?? null),
      since: this.host.now,
      by: `rule:${rule.id}`,
      reason: rule.id,
      occurrence: this.list[index]!.occurrence,
    });
    if (hold !== null) this.emitHold(hold);
  }

  private setHold(command: Extract<Command, { verb: 'hold' }>): string | null {
    const { what, item, by, reason } = command;
    const hold = this.holds.set({
      what,
      item,
      since: this.host.now,
      by,
      reason,
      occurrence: null,
    });
    if (hold === null) return `${what} ${item} is on hold already`;
    this.emitHold(hold);
    return null;
  }

  private lift(command: Extract<Command, { verb: 'lift' }>): string | null {
    const hold = this.holds.lift(command.hold);
    if (hold === null) return `there is no hold ${command.hold} that stands`;
    this.host.emit({
      kind: 'hold',
      judged: this.host.now,
      hold: hold.id,
      what: hold.what,
      item: hold.item,
      action: 'lifted',
      by: command.by,
      reason: command.reason,
      disposition: command.disposition,
    });
    return null;
  }

  private emitHold(hold: Hold): void {
    this.host.emit({
      kind: 'hold',
      judged: this.host.now,
      hold: hold.id,
      what: hold.what,
      item: hold.item,
      action: 'set',
      by: hold.by,
      reason: hold.reason,
      ...(hold.occurrence === null ? {} : { occurrence: hold.occurrence }),
    });
  }
}
