/** A flood as one chase: its members, the worst of them, and who of them nobody has answered. */
import { priorities } from '../alarm/priority.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Chase } from './chase.ts';

export interface Group extends Chase {
  readonly members: readonly string[];
  readonly unanswered: readonly string[];
}

/** An empty one; `first` lends it the place by which people are found. */
export const groupOf = (id: string, first: Chase, at: EpochMs): Group => ({
  ...first,
  occurrence: id,
  rule: id,
  hazard: null,
  respondMs: null,
  raisedMs: at,
  waits: 'turn',
  dueMs: null,
  step: 0,
  rung: 0,
  group: null,
  priority: 'low',
  members: [],
  unanswered: [],
});

export function joined(group: Group, one: Chase): Group {
  const { occurrence, priority } = one;
  const worse = priorities.indexOf(priority) < priorities.indexOf(group.priority);
  return {
    ...group,
    priority: worse ? priority : group.priority,
    station: worse || group.members.length === 0 ? one.station : group.station,
    hazard: worse || group.members.length === 0 ? one.hazard : group.hazard,
    members: [...new Set([...group.members, occurrence])],
    unanswered: [...new Set([...group.unanswered, occurrence])],
  };
}

export const endMember = (group: Group, occurrence: string): Group => ({
  ...group,
  unanswered: group.unanswered.filter((member) => member !== occurrence),
});

/** Those it took over were waiting for their next step: it comes no later with the group. */
export function nextInGroup(group: Group, taken: readonly Chase[]): Group {
  const dueMs = [group.dueMs, ...taken.map((one) => one.dueMs)].filter((due) => due !== null);
  return dueMs.length === 0 ? group : { ...group, dueMs: Math.min(...dueMs) };
}

/** So often those who were told hear of what joined since. Judgement. */
const newsEveryMs = 60_000;

export const withNews = (group: Group, at: EpochMs): Group => ({
  ...group,
  newsMs: group.newsMs ?? at + newsEveryMs,
});
