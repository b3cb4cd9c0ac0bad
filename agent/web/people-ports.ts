/** What the web part needs to know of people. agent/compose.ts hands it in. */
import type { Caller, Language, Role } from '../people/contract.ts';
import type { InvitationView, MeView, PersonView, TokenView } from './people-contract.ts';
import type { OwnSessionsView } from './session-contract.ts';

type OwnSession = OwnSessionsView['sessions'][number];

/** What a request brought to be known by. */
export interface Brought {
  readonly cookie: string | null;
  readonly bearer: string | null;
  /** It comes from this machine. */
  readonly near: boolean;
}

/** Somebody came in: their new cookie. */
export interface Entered {
  readonly cookie: string;
  readonly caller: Caller;
}

export interface Invited {
  readonly person: PersonView;
  readonly secret: string;
  readonly ends: number;
}

export interface PeoplePorts {
  /** The address of the page that the site file names; null where it names none. */
  sitePage(): string | null;
  /** null where anybody may and nobody is signed in. Throws the refusals of openapi.ts. */
  admit(operation: string, brought: Brought): Caller | null;
  /** Still signed in, with the same role. */
  isIn(caller: Caller | null): boolean;
  me(caller: Caller | null): MeView;
  names(): Readonly<Record<string, string>>;
  signIn(name: string, password: string, address: string): Promise<Entered>;
  again(caller: Caller, password: string, address: string): Promise<Entered>;
  signOut(caller: Caller): void;
  signOutEverywhere(caller: Caller): void;
  /** On what a session is used, as its browser says. */
  usedOn(caller: Caller, on: string): void;
  mySessions(caller: Caller): OwnSession[];
  /** Whether it was the one that asks. Throws PEOPLE_SESSION_UNKNOWN. */
  endMySession(caller: Caller, id: string): boolean;
  changePassword(caller: Caller, current: string, next: string, address: string): Promise<Entered>;
  changeMe(caller: Caller, change: MeChange): MeView;
  invitation(secret: string, near: boolean): InvitationView;
  accept(secret: string, given: Accepted, near: boolean): Promise<Entered>;
  people(): PersonView[];
  invite(given: NewPerson, by: string): Invited;
  /** null: none. */
  changeEmail(id: string, email: string | null, by: string): PersonView;
  changeRole(id: string, role: Role, by: string): PersonView;
  reset(id: string, by: string): Invited;
  remove(id: string, by: string): void;
  tokens(): TokenView[];
  addToken(
    given: { readonly label: string; readonly role: Role; readonly forMs: number },
    by: string,
  ): { readonly token: TokenView; readonly secret: string };
  removeToken(id: string, by: string): void;
  /** The root's certificate in PEM; null where the agent has no authority of its own. */
  authority(): string | null;
}

export interface MeChange {
  readonly language?: Language | undefined;
  readonly email?: string | null | undefined;
  readonly push?: boolean | undefined;
}
export interface Accepted {
  readonly password: string;
  readonly name: string | null;
  readonly language: Language;
}
export interface NewPerson {
  readonly name: string;
  readonly role: Role;
  readonly language: Language;
  readonly email: string | null;
}
