/** Places of wildcards that nobody watches, because the topic of another place took their name first. */
import { isSuppressed } from '#rules/alarm/lifecycle.ts';
import type { NameTakenView } from '../web/coverage-contract.ts';
import type { Core } from './core.ts';

/** In the order of their topics. */
export function namesTaken(core: Core): NameTakenView[] {
  const running = core.live.running?.present;
  const { signals, derived } = core.plans.now.plan;
  const sources = new Map(derived.map(({ signal, inputs }) => [signal, inputs]));
  const isFrom = (signal: number, source: number): boolean =>
    signal === source || (sources.get(signal) ?? []).some((each) => isFrom(each, source));
  return core.intake
    .taken()
    .map(({ topic, owner, id, instance }) => {
      const signal = `${id}-${instance}`;
      const source = signals.findIndex((each) => each.id === signal);
      const rules = (running?.rules ?? []).filter(
        ({ plan, index }) =>
          plan.inputs.some((input) => isFrom(input, source)) &&
          !isSuppressed(running!.alarms.list[index]!.state),
      );
      return {
        topic,
        owner,
        signal,
        says: `The place that sends on ${topic} is not watched: its name is that of ${owner}, which feeds ${signal}.`,
        fix: 'Give the two senders names that differ in more than capitals and signs; where one replaced the other, give it the very name of the other.',
        to_people: rules.some(({ plan }) => plan.hazardToPeople),
        rules: rules.map(({ plan }) => plan.id),
      };
    })
    .sort((a, b) => (a.topic < b.topic ? -1 : 1));
}
