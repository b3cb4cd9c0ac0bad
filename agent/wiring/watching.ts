/** What is watched now: which rules judge and are told, and what keeps the others from it. */
import { isSuppressed } from '#rules/alarm/lifecycle.ts';
import type { WaitingRule } from '#rules/plan/card.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { AsideView } from '../web/aside-contract.ts';
import type { CoverageView, UnheardView } from '../web/contract.ts';
import { asideViews } from './aside-views.ts';
import type { Core } from './core.ts';
import { coverageView, type RuleNow } from './coverage-view.ts';
import { Heard } from './heard.ts';
import { namesTaken } from './names-taken.ts';
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
      return index === undefined ? 'No place of it has been heard yet.' : heard.whyNot(index);
    }),
    unheard: unheardSignals(core, heard),
    name_taken: namesTaken(core),
  };
}

const none = { unjudged: true, unread: [], nameTaken: [] } as const;

/** What is true of each rule now. */
function rulesNow(core: Core, heard: Heard): (rule: string) => RuleNow {
  const off = whyOff(core);
  const aside = new Map<string, AsideView>(asideViews(core).map((each) => [each.rule, each]));
  const running = core.live.running?.present;
  const live = new Map(running?.rules.map((rule) => [rule.plan.id, rule]));
  const taken = namesTaken(core);
  const { signals: known } = core.plans.now.plan;
  const waiting = new Map(waitingRules(core).map((each) => [each.rule, each]));
  return (id) => {
    const rule = live.get(id);
    if (rule === undefined) {
      const unheard = (waiting.get(id)?.signals ?? []).map((signal) => ({
        signal,
        says: heard.placeWords(signal).says,
      }));
      return { off: off(id), aside: null, unheard, judges: false, ...none };
    }
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
      unread: [...rule.plan.inputs, ...rule.plan.gates.map(({ signal }) => signal)]
        .filter((signal) => running?.signals.usable(signal) === false)
        .map((signal) => known[signal]!.id),
      nameTaken: taken.filter(({ rules }) => rules.includes(id)),
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
  const measured = [...waiting].map(([signal, { rules, people }]) => ({
    signal: core.plans.now.plan.signals[signal]!.id,
    ...heard.words(signal),
    to_people: people,
    rules,
  }));
  return [...measured, ...unheardPlaces(core, heard)].sort((a, b) =>
    a.signal < b.signal ? -1 : 1,
  );
}

const waitingRules = ({ plans }: Core): WaitingRule[] =>
  plans.now.coverage.stations.flatMap(({ waiting }) => waiting);

/** Wildcards of which no place has been heard: their rules do not exist before one is. */
function unheardPlaces(core: Core, heard: Heard): UnheardView[] {
  const each = waitingRules(core).flatMap((rule) =>
    rule.signals.map((signal) => ({ signal, rule })),
  );
  return [...Map.groupBy(each, ({ signal }) => signal)].map(([signal, those]) => ({
    signal,
    ...heard.placeWords(signal),
    to_people: those.some(({ rule }) => rule.people),
    rules: those.map(({ rule }) => rule.rule),
  }));
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
