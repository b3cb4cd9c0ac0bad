/** What a snapshot holds of a judgement, by id, and how a judgement takes it up again. */
import type { Plan } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import { raisedAt } from './alarm.ts';
import type { Derivation } from './derivation.ts';
import type { SavedJudgement } from './host.ts';
import type { Judgement } from './judgement.ts';
import type { LiveRule } from './live-rule.ts';
import { unusable } from './signals.ts';
import type { SavedDerived } from './state.ts';
import { tellHolds } from './tell-holds.ts';

const byRule = <T>(plan: Plan, of: (index: number) => T): Record<string, T> =>
  Object.fromEntries(plan.rules.map((rule, i) => [rule.id, of(i)]));

const savedDerived = (
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

export function savedJudgement(judgement: Judgement): SavedJudgement {
  const { plan, rules, deadlines, derivation, alarms, off } = judgement;
  return {
    latest: judgement.signals.save(),
    rules: byRule(plan, (i) => rules[i]!.save()),
    derived: savedDerived(plan, derivation, (i) => deadlines.get(rules.length + i)),
    alarms: byRule(plan, (i) => ({ ...alarms.list[i]! })),
    holds: alarms.holds.save(),
    runs: judgement.runs.save(),
    ...(plan.heats === undefined ? {} : { racks: judgement.runs.heats.save() }),
    marks: judgement.marks.save(),
    ...(off.size === 0 ? {} : { off: Object.fromEntries(off) }),
  };
}

/** Every rule takes up its saved memory, or begins and judges what is known. */
export function resume(judgement: Judgement, saved: SavedJudgement | null): void {
  const { plan, rules, deadlines, wiring, signals } = judgement;
  for (const [i, { signal }] of plan.derived.entries())
    deadlines.set(rules.length + i, saved?.derived[plan.signals[signal]!.id]?.due ?? null);
  const begun = rules.filter((rule) => !resumeRule(judgement, rule, saved));
  for (const signal of plan.signals.keys())
    if (signals.unusable[signal] !== 0)
      for (const rule of wiring.rules.of(signal)) rule.unusable += 1;
  for (const rule of rules) {
    if (rule.plan.gates.length > 0) judgement.lookAtGate(rule, -1);
    judgement.freezeOrThaw(rule);
  }
  judgement.suppression.lookAll();
  tellHolds(judgement, begun);
  if (saved === null) return;
  for (const rule of begun)
    if (rule.judged && rule.kind.watchesHealth !== true) judgement.judgeLatest(rule, -1);
}

/** False where it begins anew. */
function resumeRule(judgement: Judgement, rule: LiveRule, saved: SavedJudgement | null): boolean {
  const { now, deadlines, book, alarms, signals } = judgement;
  const old = saved?.rules[rule.plan.id];
  const resumed = old !== undefined && rule.resume(old, now);
  if (old !== undefined) rule.severity = old.severity;
  if (!resumed) rule.begin(now);
  if (rule.severity > 0) {
    const alarm = alarms.list[rule.index]!;
    if (!resumed) rule.stand(raisedAt(alarm) ?? now);
    if (old !== undefined && rule.differs(old)) alarm.changed = true;
  }
  // Switched off, it stands still as it did; mended, it is judged again from here.
  if (old?.off === true && rule.off) rule.frozenAt = old.frozenAt;
  else if (old?.off === true) judgement.tellJudgeable(rule, true);
  deadlines.set(rule.index, rule.timer.at);
  book.setShelfEnd(rule.index, alarms.list[rule.index]!.shelvedUntil);
  if (rule.kind.watchesHealth === true && rule.severity > 0)
    signals.unusable[rule.plan.inputs[0]!]! |= unusable.lost;
  return resumed;
}
