/** GET /api/refused: messages that could not be used, and why. */
import type { WebPorts } from '../ports.ts';
import { refusedSchema } from '../refused-contract.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const refusedRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/refused',
      operation: 'listRefusedMessages',
      summary:
        'Messages of sensors that could not be used: per topic the last few, with the reason.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'The topic refused last first.', schema: refusedSchema } },
      refusals: [],
    },
    () => ({ topics: ports.refused() }),
  ),
];
