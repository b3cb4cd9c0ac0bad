/** Which alarm speaks for others about the same signal and side. */
import { isWorse, type Standing } from '../alarm/outranked.ts';
import type { Priority } from '../alarm/priority.ts';
import type { Alarm } from './alarm.ts';
import type { AlarmHost } from './alarms.ts';

type Host = Pick<AlarmHost, 'about' | 'evidence' | 'rule' | 'severity'>;

export const priorityOf = (host: Pick<Host, 'rule' | 'severity'>, index: number): Priority =>
  host.rule(index).priority[host.severity(index) === 2 ? 1 : 0];

const standing = (host: Host, index: number): Standing => ({
  people: host.rule(index).hazardToPeople,
  priority: priorityOf(host, index),
  limit: host.evidence(index).limit,
});

/** Does a worse one than this stand, told to people? Asked when one is due again, never a sample. */
export function outranked(host: Host, list: readonly Alarm[], index: number): boolean {
  const { side } = host.evidence(index);
  if (side === undefined) return false;
  const about = host.about(index);
  const one = standing(host, index);
  return list.some(
    ({ state }, other) =>
      (state === 'unacknowledged' || state === 'acknowledged') &&
      other !== index &&
      host.about(other) === about &&
      host.evidence(other).side === side &&
      isWorse(standing(host, other), one, side),
  );
}
