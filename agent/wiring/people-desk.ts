/** What the web part asks of people, answered from the people part. */
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { fingerprint } from '../people/authority.ts';
import { note } from '../people/book.ts';
import type { Caller } from '../people/contract.ts';
import { endOwnSession, ownSessions } from '../people/own-sessions.ts';
import type { People } from '../people/people.ts';
import { dangerous, rights, rolesOf } from '../people/rights.ts';
import { type PersonRow, personOf, type TokenRow } from '../people/roster.ts';
import type { InvitationView, MeView, PersonView, TokenView } from '../web/people-contract.ts';
import type { Accepted, Invited, MeChange, NewPerson, PeoplePorts } from '../web/people-ports.ts';

export interface PeopleDeskParts {
  readonly people: People;
  readonly siteName: () => string;
  /** The address of the page that the site file names; null where it names none. */
  readonly sitePage: () => string | null;
  /** The root of the agent's own authority, in PEM; null where it has none. */
  readonly root: () => string | null;
}

export class PeopleDesk implements PeoplePorts {
  private readonly house: People;
  private readonly parts: PeopleDeskParts;

  constructor(parts: PeopleDeskParts) {
    this.house = parts.people;
    this.parts = parts;
  }

  readonly admit: PeoplePorts['admit'] = (operation, brought) =>
    this.house.admission.admit(operation, brought);
  readonly isIn: PeoplePorts['isIn'] = (caller) => this.house.admission.isIn(caller);
  readonly signIn: PeoplePorts['signIn'] = (...given) => this.house.signIn(...given);
  readonly again: PeoplePorts['again'] = (...given) => this.house.again(...given);
  readonly signOut: PeoplePorts['signOut'] = (caller) => this.house.signOut(caller);
  readonly signOutEverywhere: PeoplePorts['signOutEverywhere'] = (caller) =>
    this.house.signOutEverywhere(caller);
  readonly usedOn: PeoplePorts['usedOn'] = ({ session }, on) =>
    this.house.sessions.setOn(session, on, this.house.nowMs);
  readonly mySessions: PeoplePorts['mySessions'] = (caller) => ownSessions(this.house, caller);
  readonly endMySession: PeoplePorts['endMySession'] = (caller, id) =>
    endOwnSession(this.house, caller, id);
  readonly changePassword: PeoplePorts['changePassword'] = (...given) =>
    this.house.changePassword(...given);
  readonly sitePage = (): string | null => this.parts.sitePage();
  readonly authority = (): string | null => this.parts.root();

  me(caller: Caller | null): MeView {
    const people = this.house.admission.required;
    if (caller === null) return { people, person: null, may: [], ends: null, proved_until: null };
    const may = Object.keys(rights).filter((each) => rolesOf(each).includes(caller.role));
    if (caller.how === 'local')
      return { people, person: null, may, ends: null, proved_until: null };
    if (caller.how === 'token') return this.token(caller, may);
    const { addresses, ...person } = personOf(this.house.book.person(caller.id));
    const session = this.house.sessions.live(caller.session, this.house.nowMs);
    return {
      people,
      person: { ...person, ...addresses },
      may,
      ends: session === null ? null : this.house.sessions.endsMs(session),
      proved_until: session === null ? null : session.proved + limits.provedMs,
    };
  }

  names(): Readonly<Record<string, string>> {
    const { people, tokens } = this.house.book.now;
    return Object.fromEntries([
      ...people.map(({ id, name }) => [id, name]),
      ...tokens.map(({ id, label }) => [id, label]),
    ]);
  }

  changeMe(caller: Caller, { language, email, push }: MeChange): MeView {
    this.house.changeMe(caller, {
      ...(language === undefined ? {} : { language }),
      ...(email === undefined ? {} : { email }),
      ...(push === undefined ? {} : { push }),
    });
    return this.me(caller);
  }

  invitation(secret: string, near: boolean): InvitationView {
    const { person, ends } = this.house.invitation(secret, near);
    const root = this.parts.root();
    return {
      site: this.parts.siteName(),
      name: person?.name ?? null,
      role: person?.role ?? 'administrator',
      language: person?.language ?? 'en',
      ends,
      password_chars_min: limits.passwordCharsMin,
      authority: root === null ? null : { fingerprint: fingerprint(root) },
    };
  }

  accept(secret: string, given: Accepted, near: boolean): ReturnType<PeoplePorts['accept']> {
    return this.house.accept(secret, given, near);
  }

  people(): PersonView[] {
    const views = this.house.book.now.people.map((row) => this.personView(row));
    return views.sort((a, b) => (a.name < b.name ? -1 : 1));
  }
  readonly invite = (given: NewPerson, by: string): Invited => {
    const { person, ...link } = this.house.book.invite(given, by, this.house.nowMs);
    this.house.tend();
    return { person: this.personView(person), ...link };
  };

  changeEmail(id: string, email: string | null, by: string): PersonView {
    const changed = this.house.book.giveEmail(id, email, by, this.house.nowMs);
    this.house.tend();
    return this.personView(changed);
  }

  changeRole(id: string, role: PersonRow['role'], by: string): PersonView {
    if (role !== 'administrator') this.refuseLast(id);
    const entry = note(this.house.nowMs, 'role-changed', id, by, role);
    const changed = this.house.book.alter(id, entry, (row) => ({ ...row, role }));
    this.house.tend();
    return this.personView(changed);
  }

  reset(id: string, by: string): Invited {
    this.refuseLast(id);
    const { person, ...link } = this.house.book.reset(id, by, this.house.nowMs);
    this.house.ended(person);
    return { person: this.personView(person), ...link };
  }

  remove(id: string, by: string): void {
    this.refuseLast(id);
    const person = this.house.book.person(id);
    this.house.book.remove(id, by, this.house.nowMs);
    this.house.ended(person);
  }

  tokens(): TokenView[] {
    const { nowMs } = this.house;
    return this.house.book.now.tokens.filter(({ ends }) => ends > nowMs).map(tokenView);
  }

  addToken(
    given: Parameters<PeoplePorts['addToken']>[0],
    by: string,
  ): ReturnType<PeoplePorts['addToken']> {
    const { id, token: secret } = this.house.book.addToken(given, by, this.house.nowMs);
    this.house.tend();
    const token = this.house.book.now.tokens.find((each) => each.id === id)!;
    return { token: tokenView(token), secret };
  }

  removeToken(id: string, by: string): void {
    this.house.book.removeToken(id, by, this.house.nowMs);
    this.house.tend();
  }

  private token(caller: Caller, may: readonly string[]): MeView {
    const found = this.house.book.now.tokens.find(({ id }) => id === caller.id);
    const name = found?.label ?? caller.id;
    return {
      people: true,
      person: { id: caller.id, name, role: caller.role, language: 'en', email: null, push: false },
      may: may.filter((each) => rights[each] !== 'person' && !dangerous.has(each)),
      ends: found?.ends ?? null,
      proved_until: null,
    };
  }

  private refuseLast(id: string): void {
    const row = this.house.book.person(id);
    const isOne = row.role === 'administrator' && row.password !== null;
    if (isOne && !this.house.hasAdministrator(id))
      throw new AgentError('PEOPLE_LAST_ADMINISTRATOR');
  }

  private personView(row: PersonRow): PersonView {
    const { id, name, role, language, email, made, password, invitation } = row;
    const { nowMs, sessions } = this.house;
    const isOpen = invitation !== null && invitation.ends > nowMs;
    return {
      ...{ id, name, role, language, email, made },
      joined: password !== null,
      invited_until: isOpen ? invitation.ends : null,
      sessions: sessions.of(id).filter(({ hash }) => sessions.live(hash, nowMs) !== null).length,
    };
  }
}

const tokenView = ({ id, label, role, made, ends, by }: TokenRow): TokenView => ({
  id,
  label,
  role,
  made,
  ends,
  by,
});
