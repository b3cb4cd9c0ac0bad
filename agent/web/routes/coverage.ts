/** GET /api/coverage and /api/rules: what is watched and by which rule, what is not and why. */
import { coverageSchema } from '../contract.ts';
import type { WebPorts } from '../ports.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';
import { rulesSchema } from '../rule-contract.ts';
import { ruleSheetCsv, ruleSheetType } from '../rule-sheet.ts';

export const coverageRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/coverage',
      operation: 'readCoverage',
      summary: 'Per station: hazards watched and not watched, rules not armed and what they need.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'All stations.', schema: coverageSchema } },
      refusals: [],
    },
    () => ports.coverage(),
  ),
  route(
    {
      method: 'GET',
      url: '/api/rules',
      operation: 'listRules',
      summary: 'Every rule: what it judges, its settings, its rationalisation and readiness.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'All rules.', schema: rulesSchema } },
      refusals: [],
    },
    () => ({ rules: ports.rules() }),
  ),
  route(
    {
      method: 'GET',
      url: '/api/rules.csv',
      operation: 'readRuleSheet',
      summary: 'The rule sheet: every rule with its rationalisation, one a row, to print and keep.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'CSV (RFC 4180) in UTF-8.', contentType: ruleSheetType } },
      refusals: [],
    },
    ({ reply }) => {
      reply.type(ruleSheetType);
      reply.header('content-disposition', 'attachment; filename="rule-sheet.csv"');
      return ruleSheetCsv(ports.rules());
    },
  ),
];
