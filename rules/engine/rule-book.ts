/** What the alarms ask of the rules and of the engine's clock. */
import type { ManagedNow } from '../alarm/managed.ts';
import { shelfMost } from '../alarm/shelf.ts';
import type { Effect } from '../input.ts';
import type { Evidence, Severity } from '../kinds/kind.ts';
import type { Plan, PlanHold, PlanRule, ShelfMost } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { AlarmHost } from './alarms.ts';
import type { Deadlines } from './deadlines.ts';
import type { JudgementHost } from './host.ts';
import type { LiveRule } from './live-rule.ts';
import type { Marks } from './marks.ts';
import { Owners } from './owners.ts';
import type { RackHeats } from './rack-heat.ts';

export class RuleBook implements AlarmHost {
  private readonly plan: Plan;
  private readonly rules: readonly LiveRule[];
  private readonly deadlines: Deadlines;
  private readonly host: JudgementHost;
  private readonly owners: Owners;
  private marks: Marks | null = null;
  private heats: RackHeats | null = null;

  constructor(plan: Plan, rules: readonly LiveRule[], deadlines: Deadlines, host: JudgementHost) {
    this.plan = plan;
    this.owners = new Owners(plan);
    this.rules = rules;
    this.deadlines = deadlines;
    this.host = host;
  }

  get now(): EpochMs {
    return this.host.now;
  }

  rule(index: number): PlanRule {
    return this.plan.rules[index]!;
  }

  about(rule: number): string {
    return this.rules[rule]!.about;
  }

  severity(rule: number): Severity {
    return this.rules[rule]!.severity;
  }

  conditionOf(rule: number): ManagedNow {
    const { frozenAt } = this.rules[rule]!;
    const { value, limit, side } = this.evidence(rule);
    const measured = value !== undefined && limit !== undefined;
    const past = measured && (side === 'low' ? value <= limit : value >= limit);
    return { now: this.now, unjudged: frozenAt !== null, past };
  }

  evidence(rule: number): Evidence {
    const { kind, settings, memory, off } = this.rules[rule]!;
    return off ? {} : kind.evidence(settings, memory);
  }

  /** What is said of items is known from now on. */
  hear(marks: Marks, heats: RackHeats): Marks {
    this.marks = marks;
    this.heats = heats;
    return marks;
  }

  heldItem(hold: PlanHold, sinceMs: EpochMs | null): string {
    const { hottest, named = [], item } = hold;
    const most = hottest === undefined ? null : this.heats?.hottest(hottest);
    return most ?? this.marks?.present(named, sinceMs) ?? item;
  }

  get shelving(): ShelfMost {
    return this.plan.shelving ?? shelfMost;
  }

  stepOf(rule: number): number {
    const [signal] = this.plan.rules[rule]!.inputs;
    const digits = signal === undefined ? null : this.plan.signals[signal]!.digits;
    return digits === null ? 0 : 10 ** -digits;
  }

  setShelfEnd(rule: number, at: EpochMs | null): void {
    this.deadlines.set(this.owners.of('shelf', rule), at);
  }

  setAgain(rule: number, at: EpochMs | null): void {
    this.deadlines.set(this.owners.of('again', rule), at);
  }

  setRelease(rule: number, at: EpochMs | null): void {
    this.deadlines.set(this.owners.of('release', rule), at);
  }

  emit(effect: Effect): void {
    this.host.emit(effect);
  }
}
