/**
 * GET /api/telling: who would be told now. GET /api/telling/outbox: what waits, and why.
 * POST /api/telling/test: a test alarm to oneself.
 */
import { z } from 'zod';
import { AgentError } from '../../errors.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';
import { tellingQuery, tellingSchema, testSchema, waitingSchema } from '../telling-contract.ts';
import type { TellingPorts } from '../telling-ports.ts';

export const tellingRoutes = (ports: TellingPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/telling',
      operation: 'readTelling',
      summary: 'Who would be told now of an alarm of a station and hazard, in which order.',
      path: nothing,
      query: tellingQuery,
      answers: { 200: { description: 'People and what is wrong.', schema: tellingSchema } },
      refusals: [],
    },
    ({ query: { station = '', hazard = null, priority = 'high' } }) =>
      ports.telling({ station, hazard, priority }),
  ),
  route(
    {
      method: 'GET',
      url: '/api/telling/outbox',
      operation: 'listWaitingMessages',
      summary:
        'Messages that wait to be delivered, with the cause, and alarms nobody answered yet.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'Oldest first.', schema: waitingSchema } },
      refusals: [],
    },
    () => ports.waitingMessages(),
  ),
  route(
    {
      method: 'POST',
      url: '/api/telling/test',
      operation: 'testTelling',
      summary: 'Send a test alarm to oneself, by every way there is.',
      path: nothing,
      query: nothing,
      body: z.strictObject({}),
      answers: { 200: { description: 'On its way.', schema: testSchema } },
      refusals: ['TELLING_NO_WAY'],
    },
    ({ by }) => {
      const channels = ports.testTelling(by);
      if (channels.length === 0) throw new AgentError('TELLING_NO_WAY');
      return { channels: [...channels] };
    },
  ),
];
