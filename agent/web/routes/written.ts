/**
 * What people write down: GET and POST /api/marks, POST /api/readings. Answered after it is on disk.
 */
import { AgentError, type ErrorCode } from '../../errors.ts';
import type { WebPorts } from '../ports.ts';
import { marksQuery, nothing, readingBody, sayMarkBody } from '../requests.ts';
import { type Route, route } from '../route.ts';
import { marksSchema, readingSchema, saidMarkSchema } from '../written-contract.ts';

const diskRefusals: readonly ErrorCode[] = ['STORE_DISK_FULL', 'STORE_DISK_FAILED'];

export const writtenRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/marks',
      operation: 'listMarks',
      summary: 'What people may say happened, what was said last, and the clocks that run.',
      path: nothing,
      query: marksQuery,
      answers: { 200: { description: 'Of one station, or of all.', schema: marksSchema } },
      refusals: [],
    },
    ({ query }) => ports.marks(query.station ?? null),
  ),
  route(
    {
      method: 'POST',
      url: '/api/marks',
      operation: 'sayMark',
      summary: 'Say that something happened to an item, or at a place.',
      path: nothing,
      query: nothing,
      body: sayMarkBody,
      answers: {
        201: { description: 'Taken by every rule, and on disk.', schema: saidMarkSchema },
      },
      refusals: ['WEB_MARK_UNKNOWN', 'WEB_COMMAND_REFUSED', ...diskRefusals],
    },
    async ({ body, by, reply }) => {
      const { station, mark } = body;
      const answer = await ports.sayMark({ ...body, by });
      if (answer.outcome === 'unknown') throw new AgentError('WEB_MARK_UNKNOWN', { station, mark });
      if (answer.outcome === 'refused')
        throw new AgentError('WEB_COMMAND_REFUSED', { why: answer.why });
      reply.code(201);
      return answer.mark;
    },
  ),
  route(
    {
      method: 'POST',
      url: '/api/readings',
      operation: 'enterReading',
      summary: 'Enter a reading of a signal that people read by hand.',
      path: nothing,
      query: nothing,
      body: readingBody,
      answers: { 201: { description: 'Kept, and judged where it may be.', schema: readingSchema } },
      refusals: [
        'WEB_SIGNAL_UNKNOWN',
        'WEB_READING_NOT_BY_HAND',
        'WEB_READING_UNIT',
        'WEB_READING_RANGE',
        'WEB_READING_AHEAD',
        'WEB_READING_KNOWN',
        'WEB_READING_UNTIMED',
        ...diskRefusals,
      ],
    },
    async ({ body, by, reply }) => {
      const reading = await ports.enterReading({ ...body, by });
      reply.code(201);
      return reading;
    },
  ),
];
