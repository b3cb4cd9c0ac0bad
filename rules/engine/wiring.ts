/**
 * Who listens to which signal, by index: made once a plan, so that a sample asks no map.
 */
import type { Plan } from '../plan/plan.ts';
import type { LiveRule } from './live-rule.ts';

export interface RuleUse {
  readonly rule: LiveRule;
  /** Which of the rule's inputs the signal is. */
  readonly input: number;
}

export class Wiring {
  /** Rules that tell whether the signal can be used at all. */
  readonly healthOf: readonly (readonly LiveRule[])[];
  /** The other rules that judge the signal. */
  readonly rulesOf: readonly (readonly RuleUse[])[];
  /** Rules that have the signal for a gate. */
  readonly gatedBy: readonly (readonly LiveRule[])[];
  /** Derived signals computed from it, by their place in the plan. */
  readonly derivedOf: readonly (readonly number[])[];
  readonly ruleIndex: ReadonlyMap<string, number>;
  readonly signalIndex: ReadonlyMap<string, number>;

  constructor(plan: Plan, rules: readonly LiveRule[]) {
    const perSignal = <T>(): T[][] => plan.signals.map(() => []);
    const healthOf = perSignal<LiveRule>();
    const rulesOf = perSignal<RuleUse>();
    const gatedBy = perSignal<LiveRule>();
    const derivedOf = perSignal<number>();
    for (const rule of rules) {
      if (rule.kind.watchesHealth === true) healthOf[rule.plan.inputs[0]!]!.push(rule);
      else
        for (const [input, signal] of rule.plan.inputs.entries())
          rulesOf[signal]!.push({ rule, input });
      for (const signal of new Set(rule.plan.gates.map((gate) => gate.signal)))
        gatedBy[signal]!.push(rule);
    }
    for (const [i, derived] of plan.derived.entries())
      for (const input of derived.inputs) derivedOf[input]!.push(i);
    this.healthOf = healthOf;
    this.rulesOf = rulesOf;
    this.gatedBy = gatedBy;
    this.derivedOf = derivedOf;
    this.ruleIndex = new Map(plan.rules.map(({ id }, i) => [id, i]));
    this.signalIndex = new Map(plan.signals.map(({ id }, i) => [id, i]));
  }
}
