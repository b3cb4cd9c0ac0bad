/**
 * GET /api/site: what this works is called, whose clock it goes by, and what that clock says.
 * POST /api/site/reload: the site file as it is now, whole or not at all.
 */
import type { ErrorCode } from '../../errors.ts';
import type { WebPorts } from '../ports.ts';
import { emptyBody, nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';
import { siteLoadedSchema, siteSchema } from '../site-contract.ts';

const reloadRefusals: readonly ErrorCode[] = [
  'SITE_FILE_WRONG',
  'SITE_NOT_FROM_FILE',
  'SITE_TOO_LARGE',
  'STORE_SIGNAL_CHANGED',
  'STORE_DISK_FULL',
  'STORE_DISK_FAILED',
];

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
  route(
    {
      method: 'POST',
      url: '/api/site/reload',
      operation: 'reloadSite',
      summary: 'Load the site file as it is now; alarms that stand go on standing.',
      description:
        'A file with a fault changes nothing. The ledger says who changed which setting, from what to what.',
      path: nothing,
      query: nothing,
      body: emptyBody,
      answers: { 200: { description: 'What it changed.', schema: siteLoadedSchema } },
      refusals: reloadRefusals,
    },
    ({ by }) => ports.reloadSite(by),
  ),
];
