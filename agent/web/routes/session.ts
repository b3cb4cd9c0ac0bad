/** Signing in and out, and what people change of themselves. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AgentError, type ErrorCode } from '../../errors.ts';
import type { Caller } from '../../people/contract.ts';
import { deviceWords } from '../device-words.ts';
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
export function signedIn(caller: Caller | null): Caller {
  if (caller === null || caller.how !== 'session') throw new AgentError('PEOPLE_SIGN_IN_NEEDED');
  return caller;
}

const meAnswer = { 200: { description: 'Who is signed in.', schema: meSchema } };
const doneAnswer = { 200: { description: 'Done.', schema: doneSchema } };

/** Somebody comes in: they get their cookie, and are told who they are. */
export async function given(
  { people, giveCookie }: SessionParts,
  { reply, request }: { readonly reply: FastifyReply; readonly request: FastifyRequest },
  entering: Promise<Entered>,
): Promise<MeView> {
  const { cookie, caller } = await entering;
  giveCookie(reply, cookie);
  const on = deviceWords(request.headers['user-agent']);
  if (on !== null) people.usedOn(caller, on);
  return people.me(caller);
}

export const sessionRoutes = (parts: SessionParts): Route[] => [
  ...ownRoutes(parts),
  ...comingIn(parts),
  ...goingOut(parts),
];

const ownRoutes = (parts: SessionParts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/me',
      operation: 'readMe',
      summary: 'Who is signed in, and what they may do.',
      path: nothing,
      query: nothing,
      answers: meAnswer,
      refusals: [],
    },
    ({ caller }) => parts.people.me(caller),
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
      answers: meAnswer,
      refusals: [],
    },
    ({ caller, body }) => parts.people.changeMe(signedIn(caller), body),
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
      answers: meAnswer,
      refusals: [...signInRefusals, ...passwordRefusals],
    },
    ({ caller, body: { current, next }, request, reply }) =>
      given(
        parts,
        { reply, request },
        parts.people.changePassword(signedIn(caller), current, next, countedAddress(request)),
      ),
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
    () => ({ names: parts.people.names() }),
  ),
];

const comingIn = (parts: SessionParts): Route[] => [
  route(
    {
      method: 'POST',
      url: '/api/session',
      operation: 'signIn',
      summary: 'Sign in with name and password; the answer sets a cookie.',
      path: nothing,
      query: nothing,
      body: signInBody,
      answers: meAnswer,
      refusals: signInRefusals,
    },
    ({ body: { name, password }, request, reply }) =>
      given(
        parts,
        { reply, request },
        parts.people.signIn(name, password, countedAddress(request)),
      ),
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
      answers: meAnswer,
      refusals: signInRefusals,
    },
    ({ caller, body: { password }, request, reply }) =>
      given(
        parts,
        { reply, request },
        parts.people.again(signedIn(caller), password, countedAddress(request)),
      ),
  ),
];

const goingOut = (parts: SessionParts): Route[] => [
  route(
    {
      method: 'POST',
      url: '/api/session/end',
      operation: 'signOut',
      summary: 'Sign out here.',
      path: nothing,
      query: nothing,
      body: emptyBody,
      answers: doneAnswer,
      refusals: [],
    },
    ({ caller, reply }) => {
      parts.people.signOut(signedIn(caller));
      parts.giveCookie(reply, '');
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
      answers: doneAnswer,
      refusals: [],
    },
    ({ caller, reply }) => {
      parts.people.signOutEverywhere(signedIn(caller));
      parts.giveCookie(reply, '');
      return { done: true };
    },
  ),
];
