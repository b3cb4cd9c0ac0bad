/**
 * The roster with what follows from a change of it: sessions that end, and what the ledger is told.
 *
 * Always true: a change and the note of it are one write, and the note goes only once the ledger
 * has it; so a change made by a command on the box is entered by the agent that runs or that starts next.
 */
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import type { PeopleChange, PeopleNote } from './contract.ts';
import type { KeptFile } from './kept-file.ts';
import { folded, type NoteRow, openRoster, type PersonRow, type Roster } from './roster.ts';
import { hashSecret, makeId, makeSecret } from './secrets.ts';

export interface NewPerson {
  readonly name: string;
  readonly role: PersonRow['role'];
  readonly language: PersonRow['language'];
  readonly email: string | null;
}

/** A secret that lets one person in once. */
export interface Invited {
  readonly person: PersonRow;
  readonly secret: string;
  readonly ends: number;
}

export const boxId = 'box';

export class Book {
  private readonly file: KeptFile<Roster>;

  constructor(folder: string) {
    this.file = openRoster(folder);
  }

  /** Throws PEOPLE_FILE_BROKEN, PEOPLE_FILE_FAILED, as every method here. */
  get now(): Roster {
    return this.file.read();
  }

  /** Throws PEOPLE_UNKNOWN. */
  person(id: string): PersonRow {
    const found = this.now.people.find((each) => each.id === id);
    if (found === undefined) throw new AgentError('PEOPLE_UNKNOWN', { name: id });
    return found;
  }

  named(name: string): PersonRow | null {
    const wanted = folded(name);
    return this.now.people.find((each) => folded(each.name) === wanted) ?? null;
  }

  /** Throws PEOPLE_NAME_TAKEN, PEOPLE_TOO_MANY. */
  invite(given: NewPerson, by: string, nowMs: number): Invited {
    const secret = makeSecret();
    const person: PersonRow = {
      ...given,
      name: given.name.normalize('NFC').trim(),
      id: makeId('p'),
      push: true,
      made: nowMs,
      password: null,
      sessions_after: nowMs,
      failures: 0,
      invitation: { hash: hashSecret(secret), ends: nowMs + limits.invitationMs },
    };
    this.file.change((held) => {
      if (held.people.some((each) => folded(each.name) === folded(person.name)))
        throw new AgentError('PEOPLE_NAME_TAKEN', { name: person.name });
      if (held.people.length >= limits.personsMax)
        throw new AgentError('PEOPLE_TOO_MANY', { max: limits.personsMax });
      const notes = noted(held, note(nowMs, 'invited', person.id, by, person.role));
      return { ...held, people: [...held.people, person], notes };
    });
    return { person, secret, ends: person.invitation!.ends };
  }

  /** Voids the password and every session; a new link lets the person in. Throws PEOPLE_UNKNOWN. */
  reset(id: string, by: string, nowMs: number): Invited {
    const secret = makeSecret();
    const invitation = { hash: hashSecret(secret), ends: nowMs + limits.invitationMs };
    const person = this.alter(id, note(nowMs, 'reset', id, by), (row) => ({
      ...row,
      password: null,
      sessions_after: nowMs,
      failures: 0,
      invitation,
    }));
    return { person, secret, ends: invitation.ends };
  }

  /** null: none. The ledger has that it changed, never the address. Throws PEOPLE_UNKNOWN. */
  giveEmail(id: string, email: string | null, by: string, nowMs: number): PersonRow {
    const entry = note(nowMs, 'address-changed', id, by);
    return this.alter(id, entry, (row) => ({ ...row, email }));
  }

  /** The row goes, and the name with it. Throws PEOPLE_UNKNOWN. */
  remove(id: string, by: string, nowMs: number): void {
    this.file.change((held) => {
      const people = held.people.filter((each) => each.id !== id);
      if (people.length === held.people.length)
        throw new AgentError('PEOPLE_UNKNOWN', { name: id });
      return { ...held, people, notes: noted(held, note(nowMs, 'removed', id, by)) };
    });
  }

  /** Changes one row; `entry` null leaves the ledger as it is. Throws PEOPLE_UNKNOWN. */
  alter(id: string, entry: NoteRow | null, change: (row: PersonRow) => PersonRow): PersonRow {
    const next = this.file.change((held) => {
      if (!held.people.some((each) => each.id === id))
        throw new AgentError('PEOPLE_UNKNOWN', { name: id });
      const people = held.people.map((each) => (each.id === id ? change(each) : each));
      return { ...held, people, notes: entry === null ? held.notes : noted(held, entry) };
    });
    return next.people.find((each) => each.id === id)!;
  }

  /** The token itself is given this once. Throws PEOPLE_TOO_MANY. */
  addToken(
    given: { readonly label: string; readonly role: PersonRow['role']; readonly forMs: number },
    by: string,
    nowMs: number,
  ): { readonly id: string; readonly token: string; readonly ends: number } {
    const token = `fb_${makeSecret()}`;
    const { label, role, forMs } = given;
    const id = makeId('t');
    const ends = nowMs + forMs;
    this.file.change((held) => {
      if (held.tokens.length >= limits.tokensMax)
        throw new AgentError('PEOPLE_TOO_MANY', { max: limits.tokensMax });
      const row = { id, label, role, hash: hashSecret(token), made: nowMs, ends, by };
      const notes = noted(held, note(nowMs, 'token-added', id, by, role));
      return { ...held, tokens: [...held.tokens, row], notes };
    });
    return { id, token, ends };
  }

  /** Throws TOKEN_UNKNOWN. */
  removeToken(id: string, by: string, nowMs: number): void {
    this.file.change((held) => {
      const tokens = held.tokens.filter((each) => each.id !== id);
      if (tokens.length === held.tokens.length) throw new AgentError('TOKEN_UNKNOWN', { id });
      return { ...held, tokens, notes: noted(held, note(nowMs, 'token-removed', id, by)) };
    });
  }

  note(entry: NoteRow): void {
    this.file.change((held) => ({ ...held, notes: noted(held, entry) }));
  }

  /** Where the page is served, for links that a command on the box prints. */
  served(page: string): void {
    if (this.now.page !== page) this.file.change((held) => ({ ...held, page }));
  }

  /** Gives the ledger what it does not have yet. */
  drain(record: (entry: PeopleNote) => void): void {
    const { notes } = this.now;
    if (notes.length === 0) return;
    for (const entry of notes) record(entry as PeopleNote);
    this.file.change((held) => ({ ...held, notes: held.notes.slice(notes.length) }));
  }
}

export const note = (
  at: number,
  what: PeopleChange,
  person: string | null,
  by: string | null,
  detail?: string,
): NoteRow => ({ at, what, person, by, ...(detail === undefined ? {} : { detail }) });

/** Without an agent that takes them the oldest give way. */
const noted = (held: Roster, entry: NoteRow): NoteRow[] =>
  [...held.notes, entry].slice(-limits.peopleNotesMax);
