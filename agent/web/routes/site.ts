/** GET /api/site: what this works is called, whose clock it goes by, and what that clock says. */
import { siteSchema } from '../contract.ts';
import type { WebPorts } from '../ports.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const siteRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/site',
      operation: 'readSite',
      summary: 'Name, time zone and present time of the site.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'The site.', schema: siteSchema } },
      refusals: [],
    },
    () => ({ ...ports.site(), at: ports.nowMs() }),
  ),
];
