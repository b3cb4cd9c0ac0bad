/** Who people are to the rest of the agent: types alone. Names stay here; the ledger has only ids. */
import type { PersonId } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';

export type Role = 'reader' | 'operator' | 'maintenance' | 'ehs' | 'engineer' | 'administrator';
export type Language = 'en' | 'de';

export interface Person {
  readonly id: PersonId;
  readonly name: string;
  readonly role: Role;
  readonly language: Language;
  readonly addresses: { readonly email: string | null; readonly push: boolean };
}

/** One e-mail address, as it may be entered; 254 characters at most. */
export const emailPattern = /^(?=.{3,254}$)[^\s@,;<>"]+@[^\s@,;<>"]+$/;

/** Whoever sits at the machine itself while there are no people. */
export const localPerson = 'local';

/** Who asks, and by what they were known. */
export interface Caller {
  /** A person's id, a token's, or `local`. */
  readonly id: PersonId;
  readonly role: Role;
  readonly how: 'local' | 'session' | 'token';
  /** The key under which the session is kept; empty for the others. */
  readonly session: string;
}

/** What changed about people, as the ledger keeps it: ids, never names. */
export interface PeopleNote {
  readonly at: EpochMs;
  readonly what: PeopleChange;
  /** Whom it is about; null where nobody is known. */
  readonly person: PersonId | null;
  /** Who did it: a person, `local`, or `box` for whoever has an account on the machine. */
  readonly by: PersonId | null;
  readonly detail?: string;
}

export type PeopleChange =
  | 'invited'
  | 'joined'
  | 'role-changed'
  | 'address-changed'
  | 'reset'
  | 'removed'
  | 'password-changed'
  | 'signed-in'
  | 'signed-out'
  | 'signed-out-everywhere'
  | 'password-wrong'
  | 'refused'
  | 'token-added'
  | 'token-removed';
