/** GET /metrics: the agent's own figures, for a monitoring system that scrapes. */
import { openMetrics, openMetricsType } from '../metrics.ts';
import type { Figure } from '../ports.ts';
import { nothing } from '../requests.ts';
import { type Route, route } from '../route.ts';

export const metricsRoutes = (figures: () => Figure[]): Route[] => [
  route(
    {
      method: 'GET',
      url: '/metrics',
      operation: 'readMetrics',
      summary: 'The agent’s own figures as OpenMetrics 1.0.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'OpenMetrics text.', contentType: openMetricsType } },
      refusals: [],
    },
    async ({ reply }) => {
      const text = await openMetrics(figures());
      reply.type(openMetricsType);
      return text;
    },
  ),
];
