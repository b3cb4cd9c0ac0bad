/** What stands on hold, told to the rules that judge it. */
import type { Judgement } from './judgement.ts';
import type { LiveRule } from './live-rule.ts';

/** To those of these rules whose kind asks for it; each may raise or clear its alarm by it. */
export function tellHolds(judgement: Judgement, rules: readonly LiveRule[]): void {
  const { alarms, now } = judgement;
  for (const rule of rules) {
    const { kind, settings, memory } = rule;
    if (kind.holds === undefined || rule.off) continue;
    judgement.settle(rule, kind.holds(settings, memory, alarms.holds.list(), now), now);
  }
}
