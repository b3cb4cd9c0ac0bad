/** What a snapshot holds of rules and derived signals, by their ids. */
import type { Plan } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Derivation } from './derivation.ts';
import type { SavedDerived } from './state.ts';

export const byRule = <T>(plan: Plan, of: (index: number) => T): Record<string, T> =>
  Object.fromEntries(plan.rules.map((rule, i) => [rule.id, of(i)]));

export const savedDerived = (
  plan: Plan,
  derivation: Derivation,
  due: (index: number) => EpochMs | null,
): Record<string, SavedDerived> =>
  Object.fromEntries(
    plan.derived.map(({ signal }, i) => [
      plan.signals[signal]!.id,
      { ...derivation.save(i), due: due(i) },
    ]),
  );
