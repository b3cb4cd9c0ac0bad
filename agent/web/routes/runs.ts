/** GET /api/runs and one of them with its profile: loads through an oven. */
import { AgentError } from '../../errors.ts';
import type { RunQuery, WebPorts } from '../ports.ts';
import { defaults, nothing, runPath, runQuery, runsQuery } from '../requests.ts';
import { type Route, route } from '../route.ts';
import { runProfileSchema, runsSchema } from '../run-contract.ts';

export const runRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/runs',
      operation: 'listRuns',
      summary: 'Oven runs: loads from entry to exit, and what they were.',
      path: nothing,
      query: runsQuery,
      answers: { 200: { description: 'Newest first.', schema: runsSchema } },
      refusals: [],
    },
    ({ query }) => {
      const limit = query.limit ?? defaults.answerRows;
      const wanted: RunQuery = {
        limit: limit + 1,
        sinceMs: query.since ?? 0,
        untilMs: query.until ?? Number.MAX_SAFE_INTEGER,
        station: query.station ?? null,
      };
      const runs = ports.runs(wanted);
      return { runs: runs.slice(0, limit), truncated: runs.length > limit };
    },
  ),
  route(
    {
      method: 'GET',
      url: '/api/runs/:id',
      operation: 'readRun',
      summary: 'An oven run with its profile: metal first, then the air of the zones.',
      path: runPath,
      query: runQuery,
      answers: { 200: { description: 'The run and its profile.', schema: runProfileSchema } },
      refusals: ['WEB_RUN_UNKNOWN', 'STORE_DISK_FAILED'],
    },
    async ({ path, query }) => {
      const run = await ports.run(path.id, query.points ?? defaults.seriesPoints);
      if (run === null) throw new AgentError('WEB_RUN_UNKNOWN', { id: path.id });
      return run;
    },
  ),
];
