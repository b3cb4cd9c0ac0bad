/** Whether anybody was told of an alarm: a technician must not wait for help that nobody called. */
import type { AlarmView } from '../../agent/web/contract.ts';
import { isAnswered, isOpen } from './bands.ts';

/** A message needs a moment to arrive. */
const onTheWayMs = 60_000;
/** What calls somebody; that it is answered or over comes without a sound. */
const calls: readonly string[] = ['alarm', 'again', 'flood'];

/** Did any call of it arrive at or after `from`, at a phone, a mailbox or a program? */
export const wasReached = (told: AlarmView['told'], from = 0): boolean =>
  told.some(
    ({ kind, outcome, at }) => calls.includes(kind) && outcome === 'delivered' && at >= from,
  );

/** Of several that stand unanswered none has reached anybody: then it is said once for all. */
export function areAllUntold(alarms: readonly AlarmView[], now: number): boolean {
  const waiting = alarms.filter(
    (alarm) => isOpen(alarm) && !isAnswered(alarm) && alarm.state !== 'returned-unacknowledged',
  );
  const untold = waiting.filter((alarm) => isUntold(alarm, now));
  return (
    untold.length > 1 &&
    waiting.every((alarm) => isUntold(alarm, now) || now - alarm.raised <= onTheWayMs)
  );
}

/** Nobody has answered it, and it has reached nobody, though a message would have arrived by now. */
export const isUntold = (alarm: AlarmView, now: number): boolean =>
  isOpen(alarm) &&
  !isAnswered(alarm) &&
  alarm.state !== 'returned-unacknowledged' &&
  now - alarm.raised > onTheWayMs &&
  !wasReached(alarm.told);
