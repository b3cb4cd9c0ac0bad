/** Taking up an invitation: whom it is for, the password chosen, and the root to trust. */
import { AgentError } from '../../errors.ts';
import { isNear } from '../known-by.ts';
import { invitationSchema, meSchema } from '../people-contract.ts';
import { acceptBody, invitationBody } from '../people-requests.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';
import { given, passwordRefusals, type SessionParts } from './session.ts';

export const invitationRoutes = (parts: SessionParts): Route[] => [
  ...takingUp(parts),
  authorityRoute(parts.people),
];

const takingUp = (parts: SessionParts): Route[] => [
  route(
    {
      method: 'POST',
      url: '/api/invitation',
      operation: 'readInvitation',
      summary: 'Whom the link of an invitation is for.',
      description: 'The secret stands behind the # of the link, so that no log of a server has it.',
      path: nothing,
      query: nothing,
      body: invitationBody,
      answers: { 200: { description: 'The invitation.', schema: invitationSchema } },
      refusals: ['PEOPLE_INVITATION_UNUSABLE', 'PEOPLE_SETUP_ELSEWHERE'],
    },
    ({ body: { secret }, request }) => parts.people.invitation(secret, isNear(request)),
  ),
  route(
    {
      method: 'POST',
      url: '/api/invitation/accept',
      operation: 'acceptInvitation',
      summary: 'Choose a password; the link is used up, and you are signed in.',
      path: nothing,
      query: nothing,
      body: acceptBody,
      answers: { 200: { description: 'Who is signed in.', schema: meSchema } },
      refusals: [
        'PEOPLE_INVITATION_UNUSABLE',
        'PEOPLE_SETUP_ELSEWHERE',
        'PEOPLE_FIRST_ADMINISTRATOR',
        'PEOPLE_NAME_UNUSABLE',
        'PEOPLE_NAME_TAKEN',
        'PEOPLE_BUSY',
        ...passwordRefusals,
      ],
    },
    ({ body: { secret, password, name, language }, request, reply }) => {
      const chosen = { password, name: name ?? null, language: language ?? 'en' } as const;
      const entering = parts.people.accept(secret, chosen, isNear(request));
      return given(parts, { reply, request }, entering);
    },
  ),
];

const authorityRoute = (people: SessionParts['people']): Route =>
  route(
    {
      method: 'GET',
      url: '/api/authority.crt',
      operation: 'readAuthority',
      summary: 'The root certificate of the agent’s own authority, to be trusted by a phone.',
      path: nothing,
      query: nothing,
      answers: {
        200: { description: 'The certificate in PEM.', contentType: 'application/x-x509-ca-cert' },
      },
      refusals: ['WEB_ROUTE_UNKNOWN'],
    },
    ({ reply }) => {
      const root = people.authority();
      if (root === null) throw new AgentError('WEB_ROUTE_UNKNOWN', { path: '/api/authority.crt' });
      reply.type('application/x-x509-ca-cert');
      reply.header('content-disposition', 'attachment; filename="forebond-root.crt"');
      return root;
    },
  );
