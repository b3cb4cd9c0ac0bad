/**
 * Who is asking, and whether they may.
 *
 * Always true: while there are no people and none are asked for, whoever sits at the machine may do
 * all; once there were people in this process, nobody else may do anything, even if their file is
 * taken away.
 */
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { type Book, note } from './book.ts';
import { type Caller, localPerson } from './contract.ts';
import { dangerous, rights, rolesOf } from './rights.ts';
import { hashSecret } from './secrets.ts';
import type { Sessions } from './sessions.ts';

/** What a request brought to be known by. */
export interface Brought {
  readonly cookie: string | null;
  readonly bearer: string | null;
  /** It comes from this machine. */
  readonly near: boolean;
}

export interface AdmissionParts {
  readonly book: Book;
  readonly sessions: Sessions;
  /** People are asked for even while there are none. */
  readonly asked: boolean;
  readonly nowMs: () => number;
  /** A change was noted that the ledger is to have. */
  readonly noted: () => void;
}

export class Admission {
  private readonly parts: AdmissionParts;
  private readonly refusedAt = new Map<string, number>();
  private wereThere: boolean;

  constructor(parts: AdmissionParts) {
    this.parts = parts;
    this.wereThere = parts.asked;
  }

  /** Whoever asks must be signed in. */
  get required(): boolean {
    this.wereThere ||= this.parts.book.now.people.some(({ password }) => password !== null);
    return this.wereThere;
  }

  /** null where nobody is signed in. Throws PEOPLE_SIGN_IN_NEEDED for a cookie or token that is over. */
  who({ cookie, bearer }: Brought): Caller | null {
    if (!this.required)
      return { id: localPerson, role: 'administrator', how: 'local', session: '' };
    const nowMs = this.parts.nowMs();
    if (bearer !== null) return this.ofToken(bearer, nowMs);
    const session = cookie === null ? null : this.parts.sessions.use(cookie, nowMs);
    if (session === null) return null;
    const person = this.parts.book.now.people.find(({ id }) => id === session.person);
    if (person === undefined || person.password === null || session.made < person.sessions_after)
      return null;
    return { id: person.id, role: person.role, how: 'session', session: session.hash };
  }

  /**
   * Who asks, where they may do this. Throws PEOPLE_SIGN_IN_NEEDED, PEOPLE_MAY_NOT, PEOPLE_NOT_BY_TOKEN,
   * PEOPLE_AGAIN_NEEDED.
   */
  admit(operation: string, brought: Brought): Caller | null {
    const caller = this.who(brought);
    const right = rights[operation];
    if (caller?.how === 'local' || right === 'anyone') return caller;
    if (caller === null) {
      if (right === 'near' && brought.near) return null;
      throw new AgentError('PEOPLE_SIGN_IN_NEEDED');
    }
    if (!rolesOf(operation).includes(caller.role)) throw this.refused(operation, caller);
    const byToken = caller.how === 'token';
    if (byToken && (right === 'person' || dangerous.has(operation))) {
      this.noteRefused(operation, caller);
      throw new AgentError('PEOPLE_NOT_BY_TOKEN');
    }
    if (dangerous.has(operation) && !this.isProved(caller))
      throw new AgentError('PEOPLE_AGAIN_NEEDED', { minutes: limits.provedMs / 60_000 });
    return caller;
  }

  /** Still the one they were: signed out, removed and expired are not. */
  isIn(caller: Caller | null): boolean {
    if (caller === null || caller.how === 'local') return !this.required;
    const { people, tokens } = this.parts.book.now;
    const nowMs = this.parts.nowMs();
    if (caller.how === 'token')
      return tokens.some(
        ({ id, ends, role }) => id === caller.id && ends > nowMs && role === caller.role,
      );
    const person = people.find(({ id }) => id === caller.id);
    const session = this.parts.sessions.live(caller.session, nowMs);
    if (person === undefined || session === null) return false;
    const isOld = session.made < person.sessions_after;
    return person.password !== null && !isOld && person.role === caller.role;
  }

  private ofToken(bearer: string, nowMs: number): Caller {
    const hash = hashSecret(bearer);
    const found = this.parts.book.now.tokens.find((each) => each.hash === hash);
    if (found === undefined || found.ends <= nowMs) throw new AgentError('PEOPLE_SIGN_IN_NEEDED');
    return { id: found.id, role: found.role, how: 'token', session: '' };
  }

  private isProved({ session }: Caller): boolean {
    const found = this.parts.sessions.live(session, this.parts.nowMs());
    return found !== null && this.parts.nowMs() - found.proved < limits.provedMs;
  }

  private refused(operation: string, caller: Caller): AgentError {
    this.noteRefused(operation, caller);
    const who = rolesOf(operation).join(', ');
    return new AgentError('PEOPLE_MAY_NOT', {
      role: caller.role,
      roles: who === '' ? 'nobody' : who,
    });
  }

  /** The same refusal of the same person is entered once an hour. */
  private noteRefused(operation: string, { id }: Caller): void {
    const nowMs = this.parts.nowMs();
    const key = `${id} ${operation}`;
    if (nowMs - (this.refusedAt.get(key) ?? -Infinity) < limits.refusalToldMs) return;
    this.refusedAt.set(key, nowMs);
    this.parts.book.note(note(nowMs, 'refused', id, id, operation));
    this.parts.noted();
  }
}
