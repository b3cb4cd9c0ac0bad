/**
 * Who may publish and read what. A pure table: nothing is allowed unless a row says so.
 *
 * Always true:
 *   - `forebond/#` carries the agent's own words and no client may publish there, whatever its row
 *     says, or a sensor could switch off a stack light;
 *   - topics of the server (`$…`) are neither published nor read by clients;
 *   - a subscription is allowed only where one read filter of the row covers all of it.
 */
import {
  type FilterFault,
  filterCovers,
  filterFault,
  isServerTopic,
  type TopicFault,
  topicFault,
  topicMatches,
} from './topic.ts';

/** What one user may do. `user` is null for a client of a door without devices. */
export interface AccessRow {
  readonly user: string | null;
  readonly publish: readonly string[];
  readonly read: readonly string[];
}

/** Only the agent publishes under this filter. */
export const ownFilter = 'forebond/#';

/** A door without devices, on a loopback address: publish anything but the agent's own, read that. */
export const anonymousRow: AccessRow = { user: null, publish: ['#'], read: [ownFilter] };

export type Denial = TopicFault | FilterFault | 'own' | 'server' | 'not-listed';
export type Verdict = { readonly allow: true } | { readonly allow: false; readonly why: Denial };

const allowed: Verdict = { allow: true };
const denied = (why: Denial): Verdict => ({ allow: false, why });

/** May this row publish to this topic? `bytesMax` bounds the topic in bytes of UTF-8. */
export function mayPublish(row: AccessRow, topic: string, bytesMax?: number): Verdict {
  const fault = topicFault(topic, bytesMax);
  if (fault !== null) return denied(fault);
  if (isServerTopic(topic)) return denied('server');
  if (topicMatches(ownFilter, topic)) return denied('own');
  return row.publish.some((filter) => topicMatches(filter, topic)) ? allowed : denied('not-listed');
}

/** May this row subscribe with this filter? `bytesMax` bounds the filter in bytes of UTF-8. */
export function mayRead(row: AccessRow, filter: string, bytesMax?: number): Verdict {
  const fault = filterFault(filter, bytesMax);
  if (fault !== null) return denied(fault);
  if (isServerTopic(filter)) return denied('server');
  return row.read.some((wide) => filterCovers(wide, filter)) ? allowed : denied('not-listed');
}

/** What is wrong with a filter in the publish column, or null. */
export function publishFilterFault(
  filter: string,
  bytesMax?: number,
): FilterFault | 'own' | 'server' | null {
  const fault = filterFault(filter, bytesMax);
  if (fault !== null) return fault;
  if (isServerTopic(filter)) return 'server';
  return filterCovers(ownFilter, filter) ? 'own' : null;
}

/** What is wrong with a filter in the read column, or null. */
export function readFilterFault(filter: string, bytesMax?: number): FilterFault | 'server' | null {
  const fault = filterFault(filter, bytesMax);
  if (fault !== null) return fault;
  return isServerTopic(filter) ? 'server' : null;
}
