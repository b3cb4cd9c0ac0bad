/**
 * The agent's own figures as OpenMetrics 1.0, made afresh from plain numbers at each reading.
 *
 * Source: OpenMetrics 1.0 (prometheus/OpenMetrics, specification/OpenMetrics.md): counters end in
 * `_total`, the text ends with `# EOF`.
 */
import { Counter, Gauge, type OpenMetricsContentType, Registry } from 'prom-client';
import type { Figure } from './ports.ts';

export const openMetricsType = Registry.OPENMETRICS_CONTENT_TYPE;

/** Throws where a name, label or value cannot stand in the format. */
export async function openMetrics(figures: Iterable<Figure>): Promise<string> {
  const registry = new Registry<OpenMetricsContentType>();
  registry.setContentType(openMetricsType);
  for (const figure of figures) add(registry, figure);
  return registry.metrics();
}

function add(registry: Registry<OpenMetricsContentType>, figure: Figure): void {
  if (!/^forebond_[a-z0-9]+(_[a-z0-9]+)*$/.test(figure.name)) {
    throw new RangeError(`"${figure.name}" is no name for a figure`);
  }
  if ((figure.kind === 'counter') !== figure.name.endsWith('_total')) {
    throw new RangeError(`${figure.name}: a counter, and only a counter, ends in _total`);
  }
  const labelNames = [...(figure.labels ?? [])];
  const options = { name: figure.name, help: figure.help, labelNames, registers: [registry] };
  const metric = figure.kind === 'counter' ? new Counter(options) : new Gauge(options);
  for (const row of figure.rows) {
    if (!Number.isFinite(row.value)) throw new RangeError(`${figure.name} is not finite`);
    const values = row.labels ?? [];
    if (values.length !== labelNames.length) {
      throw new RangeError(`${figure.name} has ${labelNames.length} labels, not ${values.length}`);
    }
    metric.inc(Object.fromEntries(labelNames.map((name, i) => [name, values[i]!])), row.value);
  }
}
