/**
 * Who listens to which signal, by index: made once a plan, so that a sample asks no map.
 */
import type { Plan } from '../plan/plan.ts';
import type { LiveRule } from './live-rule.ts';

/**
 * Lists by signal, one behind the other in a single array: what every sample looks through lies
 * together in memory.
 */
export class Lists<T> {
  /** The list of a signal stands in `items` from its start to the next one's. */
  readonly starts: Int32Array;
  readonly items: readonly T[];

  constructor(lists: readonly (readonly T[])[]) {
    this.starts = new Int32Array(lists.length + 1);
    for (const [i, list] of lists.entries()) this.starts[i + 1] = this.starts[i]! + list.length;
    this.items = lists.flat();
  }

  /** A copy of one list. */
  of(signal: number): readonly T[] {
    return this.items.slice(this.starts[signal], this.starts[signal + 1]);
  }
}

export class Wiring {
  /** Rules that tell whether the signal can be used at all. */
  readonly health: Lists<LiveRule>;
  /** The other rules that judge the signal. */
  readonly rules: Lists<LiveRule>;
  /** Which of that rule's inputs the signal is, in the same places. */
  readonly inputs: Lists<number>;
  /** Rules that have the signal for a gate. */
  readonly gated: Lists<LiveRule>;
  /** Derived signals computed from it, by their place in the plan. */
  readonly derived: Lists<number>;
  readonly ruleIndex: ReadonlyMap<string, number>;
  readonly signalIndex: ReadonlyMap<string, number>;

  constructor(plan: Plan, rules: readonly LiveRule[]) {
    const perSignal = <T>(): T[][] => plan.signals.map(() => []);
    const health = perSignal<LiveRule>();
    const judging = perSignal<LiveRule>();
    const inputs = perSignal<number>();
    const gated = perSignal<LiveRule>();
    const derivedFrom = perSignal<number>();
    for (const rule of rules) {
      if (rule.kind.watchesHealth === true) health[rule.plan.inputs[0]!]!.push(rule);
      else
        for (const [input, signal] of rule.plan.inputs.entries()) {
          judging[signal]!.push(rule);
          inputs[signal]!.push(input);
        }
      for (const signal of new Set(rule.plan.gates.map((gate) => gate.signal)))
        gated[signal]!.push(rule);
    }
    for (const [i, derived] of plan.derived.entries())
      for (const input of derived.inputs) derivedFrom[input]!.push(i);
    this.health = new Lists(health);
    this.rules = new Lists(judging);
    this.inputs = new Lists(inputs);
    this.gated = new Lists(gated);
    this.derived = new Lists(derivedFrom);
    this.ruleIndex = new Map(plan.rules.map(({ id }, i) => [id, i]));
    this.signalIndex = new Map(plan.signals.map(({ id }, i) => [id, i]));
  }
}
