/** A person's own sessions: where they are signed in, and ending any of them. */
import { doneSchema } from '../people-contract.ts';
import { sessionPath } from '../people-requests.ts';
import { emptyBody, nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';
import { ownSessionsSchema } from '../session-contract.ts';
import { type SessionParts, signedIn } from './session.ts';

export const ownSessionRoutes = ({ people, giveCookie }: SessionParts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/me/sessions',
      operation: 'listMySessions',
      summary: 'Where you are signed in: browser and system, since when, when last used.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'Your own, and nobody else’s.', schema: ownSessionsSchema } },
      refusals: [],
    },
    ({ caller }) => ({ sessions: people.mySessions(signedIn(caller)) }),
  ),
  route(
    {
      method: 'POST',
      url: '/api/me/sessions/:id/end',
      operation: 'endMySession',
      summary: 'Sign out in one of the places where you are signed in.',
      path: sessionPath,
      query: nothing,
      body: emptyBody,
      answers: { 200: { description: 'It is ended.', schema: doneSchema } },
      refusals: ['PEOPLE_SESSION_UNKNOWN'],
    },
    ({ caller, path: { id }, reply }) => {
      if (people.endMySession(signedIn(caller), id)) giveCookie(reply, '');
      return { done: true };
    },
  ),
];
