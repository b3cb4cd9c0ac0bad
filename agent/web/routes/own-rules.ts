/**
 * GET /api/own-rules: files of the site's own rules, on or off.
 * POST /api/own-rules/switch-on: one that was switched off judges again.
 */
import { ownRulesFileSchema, ownRulesNamed, ownRulesSchema } from '../own-rules-contract.ts';
import type { WebPorts } from '../ports.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const ownRulesRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/own-rules',
      operation: 'listOwnRules',
      summary: 'Files of the site’s own rules: on, or off and why.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'All of them.', schema: ownRulesSchema } },
      refusals: [],
    },
    () => ({ files: ports.ownRules() }),
  ),
  route(
    {
      method: 'POST',
      url: '/api/own-rules/switch-on',
      operation: 'switchOwnRulesOn',
      summary: 'Switch a file of the site’s own rules on again, as it is.',
      description:
        'Its rules begin anew. The ledger says who did it. What failed before may fail again: better mend the file and load the site.',
      path: nothing,
      query: nothing,
      body: ownRulesNamed,
      answers: { 200: { description: 'The file.', schema: ownRulesFileSchema } },
      refusals: ['OWN_RULES_UNKNOWN'],
    },
    ({ body, by }) => ports.switchOwnRulesOn(body.file, by),
  ),
];
