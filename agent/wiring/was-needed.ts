/** What somebody says of an alarm once it is over: was it needed? Kept with it and in the ledger. */
import type { PersonId } from '#rules/input.ts';
import type { Declined } from '../web/ports.ts';
import type { Core } from './core.ts';

/** Throws as the disk refuses. */
export function wasNeeded(
  core: Core,
  occurrence: string,
  needed: boolean,
  by: PersonId,
  at: number,
): { readonly outcome: 'accepted' } | Declined {
  const known = core.desk.occurrence(occurrence);
  if (known === null) return { outcome: 'unknown' };
  if (known.returned === null && known.closed === null)
    return { outcome: 'refused', why: 'it is not over yet' };
  const row = core.desk.needed(occurrence, { at, by, answer: needed });
  core.record({ type: 'needed', at, occurrence, rule: known.rule, needed, by });
  if (row !== null) core.journal.entry({ ledger: null, occurrences: [row], holds: [] });
  core.live.settle();
  const { refusal } = core.journal.state;
  if (refusal !== null) throw refusal;
  return { outcome: 'accepted' };
}
