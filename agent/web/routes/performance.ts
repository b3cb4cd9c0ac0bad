/**
 * GET /api/performance: whether there are more alarms than people can answer, and which.
 * POST /api/alarms/{occurrence}/needed: what people say of one once it is over.
 */
import { AgentError } from '../../errors.ts';
import { loadSchema, neededSchema } from '../load-contract.ts';
import type { WebPorts } from '../ports.ts';
import { loadQuery, neededBody, nothing, occurrencePath } from '../requests.ts';
import { type Route, route } from '../route.ts';

const spanMsDefault = 30 * 86_400_000;

export const performanceRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/performance',
      operation: 'readPerformance',
      summary: 'Alarm performance over a span: rates, floods, most frequent, chattering, standing.',
      description: 'Of the site or of one line, and by shift; never by person. Default: 30 days.',
      path: nothing,
      query: loadQuery,
      answers: { 200: { description: 'Figures and guidance.', schema: loadSchema } },
      refusals: [],
    },
    ({ query }) => {
      const untilMs = query.until ?? Math.max(ports.nowMs(), query.since ?? 0) + 1;
      const sinceMs = query.since ?? Math.max(0, untilMs - spanMsDefault);
      return ports.load({ sinceMs, untilMs, line: query.line ?? null });
    },
  ),
  route(
    {
      method: 'POST',
      url: '/api/alarms/:occurrence/needed',
      operation: 'answerNeeded',
      summary: 'Say of an alarm that is over whether it was needed; for the rule sheet.',
      path: occurrencePath,
      query: nothing,
      body: neededBody,
      answers: { 200: { description: 'Kept.', schema: neededSchema } },
      refusals: [
        'WEB_OCCURRENCE_UNKNOWN',
        'WEB_COMMAND_REFUSED',
        'STORE_DISK_FULL',
        'STORE_DISK_FAILED',
      ],
    },
    async ({ path: { occurrence }, body: { needed }, by }) => {
      const answer = await ports.answerNeeded(occurrence, needed, by);
      if (answer.outcome === 'unknown')
        throw new AgentError('WEB_OCCURRENCE_UNKNOWN', { id: occurrence });
      if (answer.outcome === 'refused')
        throw new AgentError('WEB_COMMAND_REFUSED', { why: answer.why });
      return { occurrence, needed };
    },
  ),
];
