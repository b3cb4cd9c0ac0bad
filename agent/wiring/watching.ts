/** What is watched now: which rules judge and are told, and what keeps the others from it. */
import { isSuppressed } from '#rules/alarm/lifecycle.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { AsideView } from '../web/aside-contract.ts';
import type { CoverageView, UnheardView } from '../web/contract.ts';
import { asideViews } from './aside-views.ts';
import type { Core } from './core.ts';
import { coverageView, type RuleNow } from './coverage-view.ts';
import { Heard } from './heard.ts';
import { whyOff } from './own-rules-view.ts';

/** Coverage as it is at `at`: never heard, put aside and not worked out are said. */
export function coverageNow(core: Core, at: EpochMs): Omit<CoverageView, 'refused'> {
  const { coverage, rules } = core.plans.now;
  const heard = new Heard(core);
  const derivedIndex = new Map(
    core.plans.now.plan.derived.map(({ signal }, i) => [
      core.plans.now.plan.signals[signal]!.id,
      i,
    ]),
  );
  return {
    ...coverageView(coverage, rules, rulesNow(core, heard), at, (signal) => {
      const index = derivedIndex.get(signal);
      return index === undefined ? 'It does not run yet.' : heard.whyNot(index);
    }),
    unheard: unheardSignals(core, heard),
  };
}

/** What is true of each rule now. */
function rulesNow(core: Core, heard: Heard): (rule: string) => RuleNow {
  const off = whyOff(core);
  const aside = new Map<string, AsideView>(asideViews(core).map((each) => [each.rule, each]));
  const running = core.live.running?.present;
  const live = new Map(running?.rules.map((rule) => [rule.plan.id, rule]));
  return (id) => {
    const rule = live.get(id);
    if (rule === undefined)
      return { off: off(id), aside: null, unheard: [], judges: false, unjudged: true };
    const { signals, judges } = heard.missingOf(rule);
    return {
      off: off(id),
      aside: aside.get(id) ?? null,
      unheard: signals.map((signal) => ({
        signal: core.plans.now.plan.signals[signal]!.id,
        says: heard.words(signal).says,
      })),
      judges,
      unjudged: rule.frozenAt !== null,
    };
  };
}

/** Signals that armed rules need and that have never been heard, by their ids; not for rules put aside. */
export function unheardSignals(core: Core, heard = new Heard(core)): UnheardView[] {
  const waiting = new Map<number, { rules: string[]; people: boolean }>();
  const running = core.live.running?.present;
  for (const rule of running?.rules ?? []) {
    if (rule.kind.watchesHealth === true) continue;
    if (isSuppressed(running!.alarms.list[rule.index]!.state)) continue;
    for (const signal of heard.missingOf(rule).signals) {
      const { rules, people } = waiting.get(signal) ?? { rules: [], people: false };
      waiting.set(signal, {
        rules: [...rules, rule.plan.id],
        people: people || rule.plan.hazardToPeople,
      });
    }
  }
  return [...waiting]
    .map(([signal, { rules, people }]) => ({
      signal: core.plans.now.plan.signals[signal]!.id,
      ...heard.words(signal),
      to_people: people,
      rules,
    }))
    .sort((a, b) => (a.signal < b.signal ? -1 : 1));
}

/** Rules that are judged by nobody just now though nothing but a reading keeps them from it. */
export function unjudgedRules(core: Core): number {
  const running = core.live.running?.present;
  if (running === undefined) return 0;
  const heard = new Heard(core);
  return running.rules.filter(
    (rule) =>
      rule.frozenAt !== null &&
      heard.missingOf(rule).signals.length === 0 &&
      !isSuppressed(running.alarms.list[rule.index]!.state),
  ).length;
}
