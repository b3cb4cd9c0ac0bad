/** GET /api/signals and a signal's series: what is measured, now and over time. */
import { AgentError } from '../../errors.ts';
import { seriesSchema, signalsSchema } from '../contract.ts';
import type { WebPorts } from '../ports.ts';
import { ParameterError } from '../problem.ts';
import { defaults, nothing, seriesQuery, signalPath } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const signalRoutes = (ports: WebPorts): Route[] => [
  route(
    {
      method: 'GET',
      url: '/api/signals',
      operation: 'listSignals',
      summary: 'Every signal: id, kind, unit, latest value, time, quality, limits.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'All signals.', schema: signalsSchema } },
      refusals: [],
    },
    () => ({ signals: ports.signals() }),
  ),
  route(
    {
      method: 'GET',
      url: '/api/signals/:id/series',
      operation: 'readSeries',
      summary: 'A signal over time, at most so many points.',
      path: signalPath,
      query: seriesQuery,
      answers: { 200: { description: 'Points in order of time.', schema: seriesSchema } },
      refusals: ['WEB_SIGNAL_UNKNOWN', 'STORE_DISK_FAILED'],
    },
    async ({ path, query }) => {
      const untilMs = query.until ?? ports.nowMs();
      const sinceMs = query.since ?? Math.max(0, untilMs - defaults.seriesSpanMs);
      if (sinceMs >= untilMs) {
        const problem = 'must lie before until, which is now where it is not given';
        throw new ParameterError([{ in: 'query', name: 'since', problem }]);
      }
      const series = await ports.series(
        path.id,
        sinceMs,
        untilMs,
        query.points ?? defaults.seriesPoints,
      );
      if (series === null) throw new AgentError('WEB_SIGNAL_UNKNOWN', { id: path.id });
      return series;
    },
  ),
];
