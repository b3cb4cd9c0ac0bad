/** A hold set or lifted by a person: answered with the hold as it is once that is on disk. */
import type { Hold } from '#rules/hold/hold.ts';
import type { Effect } from '#rules/input.ts';
import type { HoldAnswer, HoldCommand } from '../web/ports.ts';
import type { Core } from './core.ts';
import { holdView } from './views.ts';

export async function commandHold(core: Core, command: HoldCommand): Promise<HoldAnswer> {
  const standing = command.verb === 'lift' ? core.desk.keptHold(command.hold) : null;
  if (command.verb === 'lift' && standing === null) return { outcome: 'unknown' };
  const effects = await core.live.command({ kind: 'command', ...command });
  const why = refusal(effects);
  if (why !== null) return { outcome: 'refused', why };
  const done = effects.find((effect) => effect.kind === 'hold');
  if (done?.kind !== 'hold') return { outcome: 'refused', why: 'nothing changed' };
  const row = core.store.read.holds().find(({ id }) => id === done.hold);
  if (row === undefined) return { outcome: 'unknown' };
  const hold = JSON.parse(row.detail);
  return { outcome: 'accepted', hold: holdView(hold, othersOf(core, hold)) };
}

/** How many other holds stand on the same thing. */
export const othersOf = (core: Core, hold: Pick<Hold, 'id' | 'what' | 'item'>): number =>
  core.live.running?.present.alarms.holds.others(hold) ?? 0;

/** Why a command changed nothing; null where it did. */
export const refusal = (effects: readonly Effect[]): string | null =>
  effects.find((effect) => effect.kind === 'refused')?.why ?? null;
