/**
 * How people come in and go: signing in and out, taking up an invitation, a new password.
 *
 * Always true: a name nobody has is answered as a wrong password is, after the same time; no secret
 * is given to anybody but the one it is made for; the ledger hears of each change.
 */
import { AgentError } from '../errors.ts';
import { Admission } from './admission.ts';
import { Attempts } from './attempts.ts';
import { Book, note } from './book.ts';
import { type Caller, localPerson, type PeopleNote, type Person } from './contract.ts';
import { checkPassword } from './password-rules.ts';
import { folded, type PersonRow, personOf } from './roster.ts';
import { hashPassword, hashSecret, PasswordChecker } from './secrets.ts';
import { Sessions, type SessionTimes } from './sessions.ts';
import { SetupLink } from './setup-link.ts';

export interface PeopleParts {
  readonly folder: string;
  readonly times: SessionTimes;
  /** People are asked for even while there are none. */
  readonly asked: boolean;
  readonly nowMs: () => number;
  readonly siteName: () => string;
  /** Into the ledger. */
  readonly record: (entry: PeopleNote) => void;
}

export interface Entered {
  readonly cookie: string;
  readonly caller: Caller;
}

export class People {
  readonly book: Book;
  readonly sessions: Sessions;
  readonly admission: Admission;
  readonly setup: SetupLink;
  private readonly parts: PeopleParts;
  private readonly attempts = new Attempts();
  private readonly checker = new PasswordChecker();

  constructor(parts: PeopleParts) {
    this.parts = parts;
    this.book = new Book(parts.folder);
    this.sessions = new Sessions(parts.folder, parts.times);
    this.setup = new SetupLink();
    const { asked, nowMs } = parts;
    const { book, sessions } = this;
    this.admission = new Admission({ book, sessions, asked, nowMs, noted: () => this.tend() });
  }

  /** Everybody, for who tells alarms. */
  list(): Person[] {
    return this.book.now.people.map(personOf);
  }

  /** Enters in the ledger what was changed, here or by a command on the box. */
  tend(): void {
    this.book.drain((entry) => {
      this.parts.record(entry);
      if (entry.what !== 'reset') return;
      const row = this.book.now.people.find(({ id }) => id === entry.person);
      if (row !== undefined) this.attempts.forget(folded(row.name));
    });
  }

  /** Throws PEOPLE_SIGN_IN_WRONG, PEOPLE_WAIT, PEOPLE_SHUT, PEOPLE_BUSY. */
  async signIn(name: string, password: string, address: string): Promise<Entered> {
    const person = this.book.named(name);
    const id = await this.prove(person, folded(name), password, address);
    return this.enter(id, 'signed-in');
  }

  /** The password once more, for a dangerous change: a new cookie. Throws as signIn. */
  async again(caller: Caller, password: string, address: string): Promise<Entered> {
    const person = this.book.person(caller.id);
    await this.prove(person, folded(person.name), password, address);
    const cookie = this.sessions.renew(caller.session, this.parts.nowMs());
    if (cookie === null) throw new AgentError('PEOPLE_SIGN_IN_NEEDED');
    return { cookie, caller: { ...caller, session: hashSecret(cookie) } };
  }

  signOut(caller: Caller): void {
    const nowMs = this.parts.nowMs();
    this.sessions.end(caller.session, nowMs);
    this.write(note(nowMs, 'signed-out', caller.id, caller.id));
  }

  signOutEverywhere(caller: Caller): void {
    const nowMs = this.parts.nowMs();
    this.sessions.endAll(caller.id, nowMs);
    this.write(note(nowMs, 'signed-out-everywhere', caller.id, caller.id));
  }

  /** All other sessions end, and this one has a new cookie. Throws as signIn and checkPassword. */
  async changePassword(
    caller: Caller,
    current: string,
    next: string,
    address: string,
  ): Promise<Entered> {
    const person = this.book.person(caller.id);
    checkPassword(next, [this.parts.siteName(), person.name]);
    await this.prove(person, folded(person.name), current, address);
    const password = await hashPassword(next);
    const nowMs = this.parts.nowMs();
    this.book.alter(person.id, note(nowMs, 'password-changed', person.id, person.id), (row) => ({
      ...row,
      password,
      failures: 0,
      sessions_after: nowMs,
    }));
    this.sessions.endAll(person.id, nowMs);
    return this.enter(person.id, null);
  }

  /** Whom a link of an invitation is for. Throws PEOPLE_INVITATION_UNUSABLE, PEOPLE_SETUP_ELSEWHERE. */
  invitation(
    secret: string,
    near: boolean,
  ): { readonly person: PersonRow | null; readonly ends: number } {
    const nowMs = this.parts.nowMs();
    const ends = this.setup.endsOf(secret, near, nowMs);
    if (ends !== null) return { person: null, ends };
    const hash = hashSecret(secret);
    const person = this.book.now.people.find(({ invitation }) => invitation?.hash === hash);
    if (person?.invitation === undefined || person.invitation === null)
      throw new AgentError('PEOPLE_INVITATION_UNUSABLE');
    if (person.invitation.ends <= nowMs) throw new AgentError('PEOPLE_INVITATION_UNUSABLE');
    return { person, ends: person.invitation.ends };
  }

  /**
   * Takes an invitation up: the password is set, the link is void. `name` is of the first administrator.
   * Throws as `invitation` and checkPassword; PEOPLE_FIRST_ADMINISTRATOR.
   */
  async accept(
    secret: string,
    given: {
      readonly password: string;
      readonly name: string | null;
      readonly language: 'en' | 'de';
    },
    near: boolean,
  ): Promise<Entered> {
    const { person } = this.invitation(secret, near);
    const name = person?.name ?? given.name ?? '';
    if (person === null && name === '') throw new AgentError('PEOPLE_NAME_UNUSABLE');
    checkPassword(given.password, [this.parts.siteName(), name]);
    const password = await hashPassword(given.password);
    // Both may have been used up meanwhile.
    this.invitation(secret, near);
    const nowMs = this.parts.nowMs();
    const id = person?.id ?? this.firstAdministrator(secret, name, given.language, nowMs);
    if (!this.hasAdministrator() && this.book.person(id).role !== 'administrator')
      throw new AgentError('PEOPLE_FIRST_ADMINISTRATOR');
    this.book.alter(id, note(nowMs, 'joined', id, id), (row) => ({
      ...row,
      password,
      language: given.language,
      invitation: null,
      failures: 0,
    }));
    this.attempts.forget(folded(name));
    return this.enter(id, null);
  }

  changeMe(
    caller: Caller,
    change: Partial<Pick<PersonRow, 'language' | 'email' | 'push'>>,
  ): Person {
    const entry =
      change.email === undefined
        ? null
        : note(this.parts.nowMs(), 'address-changed', caller.id, caller.id);
    const changed = this.book.alter(caller.id, entry, (row) => ({ ...row, ...change }));
    this.tend();
    return personOf(changed);
  }

  hasAdministrator(except: string | null = null): boolean {
    return this.book.now.people.some(
      ({ id, role, password }) => id !== except && role === 'administrator' && password !== null,
    );
  }

  /** Somebody was reset or removed: their sessions end, and wrong passwords are forgotten. */
  ended({ id, name }: PersonRow): void {
    this.sessions.endAll(id, this.parts.nowMs());
    this.attempts.forget(folded(name));
    this.tend();
  }

  get nowMs(): number {
    return this.parts.nowMs();
  }

  private firstAdministrator(
    secret: string,
    name: string,
    language: 'en' | 'de',
    nowMs: number,
  ): string {
    const given = { name, role: 'administrator', language, email: null } as const;
    const { person } = this.book.invite(given, localPerson, nowMs);
    this.setup.used(secret);
    return person.id;
  }

  private enter(person: string, what: 'signed-in' | null): Entered {
    const nowMs = this.parts.nowMs();
    const { cookie, session } = this.sessions.begin(person, nowMs);
    if (what === null) this.tend();
    else this.write(note(nowMs, what, person, person));
    const { role } = this.book.person(person);
    return { cookie, caller: { id: person, role, how: 'session', session: session.hash } };
  }

  private async prove(
    person: PersonRow | null,
    account: string,
    password: string,
    address: string,
  ): Promise<string> {
    const nowMs = this.parts.nowMs();
    const answer = this.attempts.begin(account, address, nowMs, person?.failures ?? 0);
    if (answer.kind === 'shut') throw new AgentError('PEOPLE_SHUT');
    if (answer.kind === 'wait')
      throw new AgentError('PEOPLE_WAIT', { seconds: Math.ceil(answer.forMs / 1_000) });
    const isRight = await this.checker.check(password, person?.password ?? null);
    if (!isRight || person === null) {
      this.wrong(person, account, nowMs);
      throw new AgentError('PEOPLE_SIGN_IN_WRONG');
    }
    this.attempts.succeeded(account, address);
    if (person.failures > 0) this.book.alter(person.id, null, (row) => ({ ...row, failures: 0 }));
    return person.id;
  }

  /** The ledger hears of the fifth in a row, the tenth, the twentieth …; each is counted on disk. */
  private wrong(person: PersonRow | null, account: string, nowMs: number): void {
    const tries = this.attempts.triesOf(account);
    const isTold = tries >= 5 && Math.log2(tries / 5) % 1 === 0;
    const entry = isTold
      ? note(nowMs, 'password-wrong', person?.id ?? null, null, `${tries} in a row`)
      : null;
    if (person !== null) this.book.alter(person.id, entry, (row) => ({ ...row, failures: tries }));
    else if (entry !== null) this.book.note(entry);
    if (entry !== null) this.tend();
  }

  private write(entry: ReturnType<typeof note>): void {
    this.book.note(entry);
    this.tend();
  }
}
