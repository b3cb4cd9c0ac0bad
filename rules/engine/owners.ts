/** Who a deadline belongs to: rules first, then derived signals, then what alarms wait for. */
import type { Plan } from '../plan/plan.ts';

const waits = ['shelf', 'again', 'release'] as const;
export type Wait = (typeof waits)[number];

export class Owners {
  readonly count: number;
  private readonly rules: number;
  private readonly derived: number;

  constructor(plan: Plan) {
    this.rules = plan.rules.length;
    this.derived = plan.derived.length;
    this.count = this.rules * (1 + waits.length) + this.derived;
  }

  of(wait: Wait, rule: number): number {
    return this.rules + this.derived + waits.indexOf(wait) * this.rules + rule;
  }

  /** What the alarm of which rule waits for; null for a rule or a derived signal. */
  waitOf(owner: number): { readonly wait: Wait; readonly rule: number } | null {
    const i = owner - this.rules - this.derived;
    if (i < 0) return null;
    return { wait: waits[Math.floor(i / this.rules)]!, rule: i % this.rules };
  }
}
