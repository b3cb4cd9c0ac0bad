/** People's commands on their way: waiting for their moment, then for the disk. */
import type { Command, Effect } from '#rules/input.ts';

export interface WaitingCommand {
  command: Command;
  readonly settle: (effects: readonly Effect[]) => void;
  /** What it caused so far; told to whoever asked once it is on disk. */
  readonly effects: Effect[];
}

/** A command before it knows its moment. */
export type Unjudged<C extends Command = Command> = C extends Command ? Omit<C, 'judged'> : never;

/** By the samples' clock there is no time before the first of them. */
export const refusedUntimed = (command: Unjudged): Effect => ({
  kind: 'refused',
  judged: 0,
  command: { ...command, judged: 0 } as Command,
  why: 'no sample has come yet, and until then it is no time',
});

/** Did this command cause this effect? The engine hands a refused command back as it came. */
export function concerns(effect: Effect, command: Command): boolean {
  if (effect.kind === 'refused') return effect.command === command;
  if (effect.judged !== command.judged) return false;
  if (command.verb === 'mark')
    return (
      effect.kind === 'mark' &&
      effect.station === command.station &&
      effect.mark === command.mark &&
      effect.item === (command.item ?? null) &&
      effect.by === command.by
    );
  if (command.verb === 'hold')
    return effect.kind === 'hold' && effect.what === command.what && effect.item === command.item;
  if (command.verb === 'lift') return effect.kind === 'hold' && effect.hold === command.hold;
  return (
    effect.kind === 'transition' &&
    effect.by === command.by &&
    command.occurrence.startsWith(effect.rule)
  );
}
