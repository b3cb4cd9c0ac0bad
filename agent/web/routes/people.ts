/** People and tokens, for administrators. Every change of them is in the ledger. */
import type { FastifyRequest } from 'fastify';
import type { PageForOthers } from '../for-others.ts';
import {
  doneSchema,
  type InvitedView,
  invitedSchema,
  peopleSchema,
  personSchema,
  tokenAddedSchema,
  tokensSchema,
} from '../people-contract.ts';
import type { Invited, PeoplePorts } from '../people-ports.ts';
import {
  addTokenBody,
  emailBody,
  inviteBody,
  personPath,
  roleBody,
  tokenPath,
} from '../people-requests.ts';
import { qrOf } from '../qr.ts';
import { emptyBody, nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export interface PeopleRouteParts {
  readonly people: PeoplePorts;
  /** The address under which others reach the page. */
  readonly forOthers: (request: FastifyRequest) => PageForOthers;
}

const invitedView = (
  { person, secret, ends }: Invited,
  { page, onlyHere }: PageForOthers,
): InvitedView => {
  const link = `${page}/#/invitation/${secret}`;
  return { person, link, only_here: onlyHere, qr: onlyHere ? null : qrOf(link), ends };
};

export const peopleRoutes = (parts: PeopleRouteParts): Route[] => [
  ...invitingRoutes(parts),
  ...changingRoutes(parts),
  ...tokenRoutes(parts.people),
];

const invitingRoutes = ({ people, forOthers }: PeopleRouteParts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/people',
      operation: 'listPeople',
      summary: 'Everybody, with role and whether they have come in.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'By name.', schema: peopleSchema } },
      refusals: [],
    },
    () => ({ people: people.people() }),
  ),
  route(
    {
      method: 'POST',
      url: '/api/people',
      operation: 'invitePerson',
      summary: 'Invite somebody: a link, and the same as a QR code, good once and for a day.',
      path: nothing,
      query: nothing,
      body: inviteBody,
      answers: {
        201: { description: 'Invited; the link is shown this once.', schema: invitedSchema },
      },
      refusals: ['PEOPLE_NAME_TAKEN', 'PEOPLE_TOO_MANY'],
    },
    ({ body: { name, role, language, email }, by, request, reply }) => {
      const given = { name, role, language: language ?? 'en', email: email ?? null } as const;
      const invited = invitedView(people.invite(given, by), forOthers(request));
      reply.code(201);
      return invited;
    },
  ),
  route(
    {
      method: 'POST',
      url: '/api/people/:id/reset',
      operation: 'resetPerson',
      summary: 'A new link for somebody; their password is void and their sessions end.',
      path: personPath,
      query: nothing,
      body: emptyBody,
      answers: { 200: { description: 'The link is shown this once.', schema: invitedSchema } },
      refusals: ['PEOPLE_UNKNOWN', 'PEOPLE_LAST_ADMINISTRATOR'],
    },
    ({ path: { id }, by, request }) => invitedView(people.reset(id, by), forOthers(request)),
  ),
];

const changingRoutes = ({ people }: PeopleRouteParts): Route[] => [
  route(
    {
      method: 'POST',
      url: '/api/people/:id/email',
      operation: 'changeEmail',
      summary: 'Enter the e-mail address to which somebody’s messages go, or take it away.',
      path: personPath,
      query: nothing,
      body: emailBody,
      answers: { 200: { description: 'As they are now.', schema: personSchema } },
      refusals: ['PEOPLE_UNKNOWN'],
    },
    ({ path: { id }, body: { email }, by }) => people.changeEmail(id, email, by),
  ),
  route(
    {
      method: 'POST',
      url: '/api/people/:id/role',
      operation: 'changeRole',
      summary: 'Give somebody another role.',
      path: personPath,
      query: nothing,
      body: roleBody,
      answers: { 200: { description: 'As they are now.', schema: personSchema } },
      refusals: ['PEOPLE_UNKNOWN', 'PEOPLE_LAST_ADMINISTRATOR'],
    },
    ({ path: { id }, body: { role }, by }) => people.changeRole(id, role, by),
  ),
  route(
    {
      method: 'POST',
      url: '/api/people/:id/remove',
      operation: 'removePerson',
      summary: 'Remove somebody: they are signed out, and their name is forgotten.',
      description: 'The ledger keeps what they did under their id.',
      path: personPath,
      query: nothing,
      body: emptyBody,
      answers: { 200: { description: 'Removed.', schema: doneSchema } },
      refusals: ['PEOPLE_UNKNOWN', 'PEOPLE_LAST_ADMINISTRATOR'],
    },
    ({ path: { id }, by }) => {
      people.remove(id, by);
      return { done: true };
    },
  ),
];

const tokenRoutes = (people: PeoplePorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/tokens',
      operation: 'listTokens',
      summary: 'Bearer tokens of programs, without their secrets.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'Those that are still good.', schema: tokensSchema } },
      refusals: [],
    },
    () => ({ tokens: people.tokens() }),
  ),
  route(
    {
      method: 'POST',
      url: '/api/tokens',
      operation: 'addToken',
      summary: 'A token for a program, with a role and an end.',
      path: nothing,
      query: nothing,
      body: addTokenBody,
      answers: { 201: { description: 'Its secret is shown this once.', schema: tokenAddedSchema } },
      refusals: ['PEOPLE_TOO_MANY'],
    },
    ({ body: { label, role, days }, by, reply }) => {
      const added = people.addToken({ label, role, forMs: days * 86_400_000 }, by);
      reply.code(201);
      return added;
    },
  ),
  route(
    {
      method: 'POST',
      url: '/api/tokens/:id/remove',
      operation: 'removeToken',
      summary: 'End a token.',
      path: tokenPath,
      query: nothing,
      body: emptyBody,
      answers: { 200: { description: 'It is good no more.', schema: doneSchema } },
      refusals: ['TOKEN_UNKNOWN'],
    },
    ({ path: { id }, by }) => {
      people.removeToken(id, by);
      return { done: true };
    },
  ),
];
