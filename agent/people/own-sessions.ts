/**
 * A person's own sessions: seen by themselves alone, each ended by them.
 *
 * Always true: a session is named by the beginning of its hash, which lets nobody in; nobody sees or ends
 * another person's.
 */
import { AgentError } from '../errors.ts';
import { note } from './book.ts';
import type { Caller } from './contract.ts';
import type { People } from './people.ts';

export interface OwnSession {
  readonly id: string;
  /** Browser and system in words; null where the browser did not say. */
  readonly on: string | null;
  /** Epoch ms. */
  readonly made: number;
  readonly used: number;
  readonly ends: number;
  /** The one that asks. */
  readonly here: boolean;
}

const idOf = (hash: string): string => hash.slice(0, 16);

const liveOf = ({ sessions, nowMs, book }: People, { id }: Caller) => {
  const { sessions_after: after } = book.person(id);
  return sessions
    .of(id)
    .filter(({ hash, made }) => made >= after && sessions.live(hash, nowMs) !== null);
};

/** Last used first. */
export function ownSessions(people: People, caller: Caller): OwnSession[] {
  const { sessions, nowMs } = people;
  const here = sessions.live(caller.session, nowMs)?.hash;
  return liveOf(people, caller)
    .sort((a, b) => b.used - a.used)
    .map((session) => ({
      id: idOf(session.hash),
      on: session.on ?? null,
      made: session.made,
      used: session.used,
      ends: sessions.endsMs(session),
      here: session.hash === here,
    }));
}

/** Whether it was the one that asks. Throws PEOPLE_SESSION_UNKNOWN. */
export function endOwnSession(people: People, caller: Caller, id: string): boolean {
  const { sessions, nowMs } = people;
  const found = liveOf(people, caller).find(({ hash }) => idOf(hash) === id);
  if (found === undefined) throw new AgentError('PEOPLE_SESSION_UNKNOWN', { id });
  const isHere = found.hash === sessions.live(caller.session, nowMs)?.hash;
  sessions.end(found.hash, nowMs);
  people.book.note(note(nowMs, 'signed-out', caller.id, caller.id));
  people.tend();
  return isHere;
}
