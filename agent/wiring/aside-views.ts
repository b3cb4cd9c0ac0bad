/** What is put aside now, and the change that an effect is to it. */
import { isSuppressed } from '#rules/alarm/lifecycle.ts';
import type { Effect } from '#rules/input.ts';
import type { AsideView } from '../web/aside-contract.ts';
import type { ToldEvent } from '../web/ports.ts';
import type { Core } from './core.ts';
import { split } from './views.ts';

export function asideViews(core: Core): AsideView[] {
  const rules = core.live.running?.plan.rules ?? [];
  return rules
    .flatMap((_, i) => asideView(core, i) ?? [])
    .sort(
      (a, b) =>
        rank(a) - rank(b) ||
        (a.until ?? Number.POSITIVE_INFINITY) - (b.until ?? Number.POSITIVE_INFINITY) ||
        (a.rule < b.rule ? -1 : 1),
    );
}

/** null for what goes neither into it nor out of it. */
export function asideEvent(core: Core, effect: Effect): ToldEvent | null {
  if (effect.kind !== 'transition') return null;
  const { judged: at, transition: change, rule, from, to } = effect;
  if (!isSuppressed(from) && !isSuppressed(to)) return null;
  const index = core.live.running?.plan.rules.findIndex(({ id }) => id === rule) ?? -1;
  return {
    event: 'aside',
    data: { at, change, rule, aside: index < 0 ? null : asideView(core, index) },
  };
}

const order = ['out-of-service', 'shelved', 'suppressed-by-design'] as const;
const rank = ({ state }: AsideView): number => order.indexOf(state);

/** null for an alarm that is not put aside. */
function asideView(core: Core, index: number): AsideView | null {
  const engine = core.live.running;
  if (engine === null) return null;
  const alarm = engine.present.alarms.list[index]!;
  const { state, beneath, aside, occurrence, shelvedUntil, releaseAt } = alarm;
  if (!isSuppressed(state)) return null;
  const { id, priority } = engine.plan.rules[index]!;
  return {
    rule: id,
    ...placeOf(id),
    signal: engine.present.book.about(index),
    occurrence,
    state,
    stands: beneath === 'unacknowledged' || beneath === 'acknowledged',
    priority: priority[engine.present.book.severity(index) === 2 ? 1 : 0],
    since: aside?.since ?? null,
    until: shelvedUntil ?? releaseAt,
    one_shot: aside?.oneShot ?? false,
    by: aside?.by ?? null,
    reason: aside?.reason ?? '',
  };
}

function placeOf(id: string): { line: string; station: string } {
  const { line, station } = split(id);
  return { line, station };
}
