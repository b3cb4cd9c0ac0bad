/** Why a command to an alarm is refused, before the lifecycle is asked. */
import type { AlarmState } from '../alarm/lifecycle.ts';
import { managedRefusal } from '../alarm/managed.ts';
import { shelfRefusal } from '../alarm/shelf.ts';
import type { Command } from '../input.ts';
import type { Alarm } from './alarm.ts';
import type { AlarmHost } from './alarms.ts';
import { priorityOf } from './outranking.ts';

type AlarmCommand = Extract<Command, { occurrence: string }>;

const standing: readonly AlarmState[] = ['unacknowledged', 'acknowledged'];

/** null where the lifecycle decides. */
export function commandRefusal(
  host: AlarmHost,
  index: number,
  { beneath, state }: Alarm,
  command: AlarmCommand,
): string | null {
  const { verb, reason } = command;
  const { highlyManaged } = host.rule(index).class;
  if (verb === 'shelve')
    return shelfRefusal(command, {
      now: host.now,
      highlyManaged,
      priority: priorityOf(host, index),
      most: host.shelving,
      stands: standing.includes(beneath),
    });
  if (verb === 'remove-from-service' && (reason === undefined || reason.trim() === ''))
    return 'taking it out of service needs a reason';
  if (!highlyManaged) return null;
  const closes = verb === 'reset' && state === 'latched-acknowledged';
  const leaves = verb === 'remove-from-service' && state !== 'out-of-service';
  return closes || leaves ? managedRefusal(verb, command, host.conditionOf(index)) : null;
}
