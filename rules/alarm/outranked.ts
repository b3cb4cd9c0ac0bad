/**
 * Of alarms about one signal and one side of its window, which speaks for the others.
 *
 * A milder one is not told again while a worse one stands: its steps are for a smaller trouble.
 * People first, then priority, then the limit that lies further out; common sense, no published source.
 */
import { type Priority, priorities } from './priority.ts';

export interface Standing {
  readonly people: boolean;
  readonly priority: Priority;
  /** Canonical; absent where it has none. */
  readonly limit?: number | undefined;
}

/** Is `other` worse than `one`? Both about the same signal and side. */
export function isWorse(other: Standing, one: Standing, side: 'low' | 'high'): boolean {
  if (other.people !== one.people) return other.people;
  const ranks = priorities.indexOf(other.priority) - priorities.indexOf(one.priority);
  if (ranks !== 0) return ranks < 0;
  if (other.limit === undefined || one.limit === undefined) return false;
  return side === 'high' ? other.limit > one.limit : other.limit < one.limit;
}
