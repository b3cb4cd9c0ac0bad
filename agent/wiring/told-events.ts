/** An effect as listeners are told of it; null where it is none of theirs. */
import type { Effect } from '#rules/input.ts';
import type { KeptHold } from '../alarms/desk.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import type { AlarmView } from '../web/contract.ts';
import type { ToldEvent } from '../web/ports.ts';
import type { Core } from './core.ts';
import { holdView } from './views.ts';
import { saidMarkView } from './written-marks.ts';

export function toldEvent(
  core: Core,
  effect: Effect,
  viewOf: (occurrence: Occurrence) => AlarmView,
): ToldEvent | null {
  if (effect.kind === 'hold') {
    const kept = core.desk.keptHold(effect.hold) ?? liftedHold(core, effect);
    return { event: 'hold', data: { change: effect.action, hold: holdView(kept) } };
  }
  if (effect.kind === 'mark') return { event: 'mark', data: saidMarkView(effect) };
  if (effect.kind !== 'transition' && effect.kind !== 'judgeable') return null;
  const occurrence = effect.occurrence === null ? null : core.desk.occurrence(effect.occurrence);
  if (occurrence === null) return null;
  const change =
    effect.kind === 'transition'
      ? effect.transition
      : effect.judgeable
        ? ('judgeable' as const)
        : ('unjudgeable' as const);
  return { event: 'alarm', data: { at: effect.judged, change, alarm: viewOf(occurrence) } };
}

function liftedHold(core: Core, effect: Extract<Effect, { kind: 'hold' }>): KeptHold {
  const row = core.store.read.holds().find(({ id }) => id === effect.hold);
  if (row !== undefined) return JSON.parse(row.detail);
  const { judged, by, reason, disposition = 'released', what, item, hold } = effect;
  return {
    id: hold,
    what,
    item,
    since: judged,
    by,
    reason,
    occurrence: null,
    lifted: { at: judged, by, disposition, reason },
  };
}
