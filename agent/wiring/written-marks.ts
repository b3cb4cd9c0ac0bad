/** Marks and their clocks as the page sees them, and a mark that somebody says. */
import type { MarkAnswer, MarkSaid } from '../web/ports.ts';
import type { ClockView, MarksView, SaidMarkView } from '../web/written-contract.ts';
import type { Core } from './core.ts';
import { split } from './views.ts';

export function marksView(core: Core, station: string | null, at: number): MarksView {
  const present = core.live.running?.present;
  const asked = (of: string): boolean => station === null || of === station;
  return {
    at,
    marks: core.plans.now.marks
      .filter((mark) => asked(mark.station))
      .map(({ id, what, meaning, byWhom, topic }) => {
        const { line, station: place, name } = split(id);
        const last = present?.marks.last.get(id) ?? null;
        return {
          id,
          line,
          station: place,
          mark: name,
          what,
          meaning,
          by_whom: byWhom,
          topic,
          last,
        };
      }),
    clocks: clocksOf(core)
      .filter((clock) => asked(`${clock.line}/${clock.station}`))
      .sort((a, b) => a.due - b.due),
  };
}

function clocksOf(core: Core): ClockView[] {
  const rules = core.live.running?.present.rules ?? [];
  return rules.flatMap(({ kind, settings, memory, plan, about }) => {
    const { line, station } = split(plan.id);
    const [first] = core.plans.now.rules.find(({ id }) => id === plan.id)?.marks ?? [about];
    const mark = split(first ?? about).name;
    return (kind.clocks?.(settings, memory) ?? []).map(
      ({ item, sinceMs, said, earlyMs, dueMs, severity }): ClockView => ({
        rule: plan.id,
        line,
        station,
        mark,
        item,
        since: sinceMs,
        said,
        early: earlyMs,
        due: dueMs,
        severity,
      }),
    );
  });
}

export async function sayMark(core: Core, said: MarkSaid): Promise<MarkAnswer> {
  const { station, mark, item, at, by, note } = said;
  if (!core.plans.now.marks.some(({ id }) => id === `${station}/${mark}`))
    return { outcome: 'unknown' };
  const effects = await core.live.command({
    kind: 'command',
    verb: 'mark',
    station,
    mark,
    by,
    ...(item === undefined ? {} : { item }),
    ...(at === undefined ? {} : { at }),
    ...(note === undefined ? {} : { note }),
  });
  for (const effect of effects) {
    if (effect.kind === 'refused') return { outcome: 'refused', why: effect.why };
    if (effect.kind === 'mark') return { outcome: 'accepted', mark: saidMarkView(effect) };
  }
  return { outcome: 'refused', why: 'nothing changed' };
}

export function saidMarkView(effect: {
  readonly station: string;
  readonly mark: string;
  readonly item: string | null;
  readonly at: number;
  readonly by: string;
}): SaidMarkView {
  const { mark, item, at, by } = effect;
  const { line, station } = split(`${effect.station}/${mark}`);
  return { line, station, mark, item, at, by };
}
