/** Signing in and out, and what people change of themselves. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AgentError, type ErrorCode } from '../../errors.ts';
import type { Caller } from '../../people/contract.ts';
import { countedAddress } from '../known-by.ts';
import { doneSchema, type MeView, meSchema, namesSchema } from '../people-contract.ts';
import type { Entered, PeoplePorts } from '../people-ports.ts';
import { againBody, changeMeBody, changePasswordBody, signInBody } from '../people-requests.ts';
import { emptyBody, nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export interface SessionParts {
  readonly people: PeoplePorts;
  /** Gives the cookie of a session; an empty one takes it away. */
  readonly giveCookie: (reply: FastifyReply, value: string) => void;
}

const signInRefusals: readonly ErrorCode[] = [
  'PEOPLE_SIGN_IN_WRONG',
  'PEOPLE_WAIT',
  'PEOPLE_SHUT',
  'PEOPLE_BUSY',
];
export const passwordRefusals: readonly ErrorCode[] = [
  'PEOPLE_PASSWORD_SHORT',
  'PEOPLE_PASSWORD_LONG',
  'PEOPLE_PASSWORD_KNOWN',
];

/** Only somebody signed in gets here; a token was refused before. */
function signedIn(caller: Caller | null): Caller {
  if (caller === null || caller.how !== 'session') throw new AgentError('PEOPLE_SIGN_IN_NEEDED');
  return caller;
}

export const sessionRoutes = ({ people, giveCookie }: SessionParts): Route[] => {
  const given = async (reply: FastifyReply, entering: Promise<Entered>): Promise<MeView> => {
    const { cookie, caller } = await entering;
    giveCookie(reply, cookie);
    return people.me(caller);
  };
  const at = (request: FastifyRequest): string => countedAddress(request);
  const me = { 200: { description: 'Who is signed in.', schema: meSchema } };
  const done = { 200: { description: 'Done.', schema: doneSchema } };
  return [
    route(
      {
        method: 'GET',
        url: '/api/me',
        operation: 'readMe',
        summary: 'Who is signed in, and what they may do.',
        path: nothing,
        query: nothing,
        answers: me,
        refusals: [],
      },
      ({ caller }) => people.me(caller),
    ),
    route(
      {
        method: 'POST',
        url: '/api/me',
        operation: 'changeMe',
        summary: 'Change your own language, address or messages.',
        path: nothing,
        query: nothing,
        body: changeMeBody,
        answers: me,
        refusals: [],
      },
      ({ caller, body }) => people.changeMe(signedIn(caller), body),
    ),
    route(
      {
        method: 'POST',
        url: '/api/me/password',
        operation: 'changePassword',
        summary: 'Choose another password; all your other sessions end.',
        path: nothing,
        query: nothing,
        body: changePasswordBody,
        answers: me,
        refusals: [...signInRefusals, ...passwordRefusals],
      },
      ({ caller, body: { current, next }, request, reply }) =>
        given(reply, people.changePassword(signedIn(caller), current, next, at(request))),
    ),
    route(
      {
        method: 'GET',
        url: '/api/names',
        operation: 'listNames',
        summary: 'Names of people by id, as alarms and holds name them.',
        path: nothing,
        query: nothing,
        answers: { 200: { description: 'Of everybody there is.', schema: namesSchema } },
        refusals: [],
      },
      () => ({ names: people.names() }),
    ),
    route(
      {
        method: 'POST',
        url: '/api/session',
        operation: 'signIn',
        summary: 'Sign in with name and password; the answer sets a cookie.',
        path: nothing,
        query: nothing,
        body: signInBody,
        answers: me,
        refusals: signInRefusals,
      },
      ({ body: { name, password }, request, reply }) =>
        given(reply, people.signIn(name, password, at(request))),
    ),
    route(
      {
        method: 'POST',
        url: '/api/session/again',
        operation: 'proveAgain',
        summary: 'Give the password once more, for a dangerous change.',
        path: nothing,
        query: nothing,
        body: againBody,
        answers: me,
        refusals: signInRefusals,
      },
      ({ caller, body: { password }, request, reply }) =>
        given(reply, people.again(signedIn(caller), password, at(request))),
    ),
    route(
      {
        method: 'POST',
        url: '/api/session/end',
        operation: 'signOut',
        summary: 'Sign out here.',
        path: nothing,
        query: nothing,
        body: emptyBody,
        answers: done,
        refusals: [],
      },
      ({ caller, reply }) => {
        people.signOut(signedIn(caller));
        giveCookie(reply, '');
        return { done: true };
      },
    ),
    route(
      {
        method: 'POST',
        url: '/api/session/end-all',
        operation: 'signOutEverywhere',
        summary: 'Sign out everywhere.',
        path: nothing,
        query: nothing,
        body: emptyBody,
        answers: done,
        refusals: [],
      },
      ({ caller, reply }) => {
        people.signOutEverywhere(signedIn(caller));
        giveCookie(reply, '');
        return { done: true };
      },
    ),
  ];
};
