/**
 * An acknowledgement of an alarm that somebody has acknowledged already: what is said to whoever
 * came second, and what they wrote, kept with the occurrence and in the ledger.
 */
import type { PersonId } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Occurrence } from '../alarms/occurrence.ts';
import type { AlarmCommand } from '../web/ports.ts';
import type { Core } from './core.ts';

/** Throws as the disk refuses; then the comment is told to be kept by nobody. */
export function acknowledgedBefore(
  core: Core,
  { occurrence, by, reason }: AlarmCommand,
  known: Occurrence | null,
  at: EpochMs,
): string {
  const before = known?.acknowledged ?? null;
  const whose =
    before === null
      ? 'It is acknowledged already'
      : `${nameIn(core, before.by)} acknowledged it already, at ${new Date(before.at).toISOString()}`;
  if (reason === undefined) return `${whose}.`;
  const comment = { at, by, text: reason };
  const row = core.desk.comment(occurrence, comment);
  core.record({ type: 'comment', occurrence, ...comment });
  if (row !== null) core.journal.entry({ ledger: null, occurrences: [row], holds: [] });
  core.live.settle();
  const { refusal } = core.journal.state;
  if (refusal !== null) throw refusal;
  return `${whose}. Your comment is kept with it.`;
}

/** A person's name; the id where nobody has it any more. */
const nameIn = (core: Core, person: PersonId): string =>
  core.telling?.parts.persons.list().find(({ id }) => id === person)?.name ?? person;
