/** GET /api/put-aside: what is shelved, suppressed by design or out of service, with ends and reasons. */
import { asidesSchema } from '../aside-contract.ts';
import type { WebPorts } from '../ports.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const asideRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/put-aside',
      operation: 'listPutAside',
      summary: 'What is shelved, suppressed by design or out of service, each with its reason.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'All of it.', schema: asidesSchema } },
      refusals: [],
    },
    () => ({ aside: ports.aside() }),
  ),
];
