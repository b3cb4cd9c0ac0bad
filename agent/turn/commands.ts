/** People's commands on their way: waiting for their moment, then for the disk. */
import type { Command, Effect } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';

interface WaitingCommand {
  command: Command;
  readonly settle: (effects: readonly Effect[]) => void;
  /** What it caused so far; told to whoever asked once it is on disk. */
  readonly effects: Effect[];
  /** Whoever waits asks only whether it is on disk; this hears why it was refused. */
  readonly refused: ((why: string) => void) | null;
}

/** A command before it knows its moment. */
export type Unjudged<C extends Command = Command> = C extends Command ? Omit<C, 'judged'> : never;

/** Commands in order: some wait for their moment, some for the commit that holds what they caused. */
export class CommandQueue {
  private waiting: WaitingCommand[] = [];
  private settling: WaitingCommand[] = [];

  get length(): number {
    return this.waiting.length + this.settling.length;
  }

  /** Settles with what it caused, once that is on disk. */
  add(command: Unjudged, judged: EpochMs): Promise<readonly Effect[]> {
    const { promise, resolve } = Promise.withResolvers<readonly Effect[]>();
    this.push(command, judged, resolve, null);
    return promise;
  }

  /** Calls `done` once what all of them caused is on disk, and `refused` for each that was. */
  pass<C extends Unjudged>(
    commands: readonly C[],
    judged: EpochMs,
    done: (() => void) | null,
    refused: (command: C, why: string) => void,
  ): void {
    const last = commands.length - 1;
    for (const [i, command] of commands.entries())
      this.push(
        command,
        judged,
        () => (i === last ? done?.() : undefined),
        (why) => refused(command, why),
      );
  }

  private push(
    command: Unjudged,
    judged: EpochMs,
    settle: WaitingCommand['settle'],
    refused: WaitingCommand['refused'],
  ): void {
    this.waiting.push({ command: { ...command, judged } as Command, settle, effects: [], refused });
  }

  /** Those that wait, on their way to the log; `judged` is theirs where it is given. */
  open(judged: EpochMs | null): readonly Command[] {
    const opened = this.waiting.splice(0);
    if (judged !== null) for (const each of opened) each.command = { ...each.command, judged };
    this.settling.push(...opened);
    return opened.map(({ command }) => command);
  }

  caused(effects: readonly Effect[]): void {
    for (const { command, refused, effects: caused } of this.settling)
      if (refused === null) caused.push(...effects.filter((effect) => concerns(effect, command)));
      else
        for (const effect of effects)
          if (effect.kind === 'refused' && effect.command === command) refused(effect.why);
  }

  settle(): void {
    for (const { settle, effects } of this.settling.splice(0)) settle(effects);
  }

  get waits(): boolean {
    return this.waiting.length > 0;
  }
}

export const untimedWords =
  'no sample has come yet, and until then it is no time; publish a sample first';

/** By the samples' clock there is no time before the first of them. */
export const refusedUntimed = (command: Unjudged): Effect => ({
  kind: 'refused',
  judged: 0,
  command: { ...command, judged: 0 } as Command,
  why: untimedWords,
});

/** Did this command cause this effect? The engine hands a refused command back as it came. */
function concerns(effect: Effect, command: Command): boolean {
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
