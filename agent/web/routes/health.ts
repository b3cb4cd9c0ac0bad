/** GET /api/health: how the agent is, in NE 107 words; 503 on failure, for supervisors that only look at the status. */
import { withCondition } from '../condition.ts';
import { healthSchema } from '../contract.ts';
import type { WebPorts } from '../ports.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const healthRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/health',
      operation: 'readHealth',
      summary: 'The condition of the agent and of each of its parts.',
      path: nothing,
      query: nothing,
      answers: {
        200: { description: 'It works; a part may need care.', schema: healthSchema },
        503: { description: 'A part has failed.', schema: healthSchema },
      },
      refusals: [],
    },
    ({ reply }) => {
      const health = withCondition(ports.health());
      if (health.condition === 'failure') reply.code(503);
      return health;
    },
  ),
];
