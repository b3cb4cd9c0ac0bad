/**
 * Who asks, for every route: known once when a request comes in, then asked for by its handler.
 */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Caller, localPerson } from '../people/contract.ts';
import { type PageForOthers, pageForOthers } from './for-others.ts';
import { broughtBy, cookieName, giveCookie } from './known-by.ts';
import type { PeoplePorts } from './people-ports.ts';
import type { Route } from './route.ts';
import { invitationRoutes } from './routes/invitations.ts';
import { ownSessionRoutes } from './routes/own-sessions.ts';
import { peopleRoutes } from './routes/people.ts';
import { sessionRoutes } from './routes/session.ts';

/** Where there are no people at all, whoever reaches the page. */
const whoeverIsHere: Caller = { id: localPerson, role: 'administrator', how: 'local', session: '' };

export class PeopleDoor {
  private readonly people: PeoplePorts | null;
  private readonly scheme: 'http' | 'https';
  private readonly names: readonly string[];
  private readonly callers = new WeakMap<FastifyRequest, Caller | null>();
  private port = 0;
  private address = '127.0.0.1';

  constructor(people: PeoplePorts | null, scheme: 'http' | 'https', names: readonly string[]) {
    this.people = people;
    this.scheme = scheme;
    this.names = names;
  }

  /** It listens now; cookies are named after the port. */
  opened(address: string, port: number): void {
    this.address = address;
    this.port = port;
  }

  /** Throws where whoever asks may not. */
  admit(operation: string, request: FastifyRequest): void {
    const caller =
      this.people === null
        ? whoeverIsHere
        : this.people.admit(operation, broughtBy(request, this.cookie));
    this.callers.set(request, caller);
  }

  callerOf(request: FastifyRequest): Caller | null {
    return this.callers.get(request) ?? null;
  }

  isIn(caller: Caller | null): boolean {
    return this.people === null || this.people.isIn(caller);
  }

  routes(): Route[] {
    const { people } = this;
    if (people === null) return [];
    const give = (reply: FastifyReply, value: string): void =>
      giveCookie(reply, this.cookie, value);
    const parts = { people, giveCookie: give };
    const forOthers = (request: FastifyRequest): PageForOthers => this.forOthers(people, request);
    return [
      ...sessionRoutes(parts),
      ...ownSessionRoutes(parts),
      ...invitationRoutes(parts),
      ...peopleRoutes({ people, forOthers }),
    ];
  }

  private get cookie(): string {
    return cookieName(this.scheme === 'https', this.port);
  }

  /** The guard knows the name under which whoever asks has reached it. */
  private forOthers(people: PeoplePorts, { headers: { host } }: FastifyRequest): PageForOthers {
    const { scheme, address, port, names } = this;
    return pageForOthers({ scheme, address, port, names, sitePage: people.sitePage() }, host);
  }
}
