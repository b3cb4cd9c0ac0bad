import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openMetrics } from '#agent/web/metrics.ts';
import type { Figure } from '#agent/web/ports.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { FakePorts } from './fake-ports.ts';
import { parseOpenMetrics } from './open-metrics.ts';
import { send } from './wire.ts';

const figure = (over: Partial<Figure> = {}): Figure => ({
  name: 'forebond_intake_samples_total',
  kind: 'counter',
  help: 'Samples judged.',
  rows: [{ value: 7 }],
  ...over,
});

describe('the reader of the test itself refuses', () => {
  test.each([
    ['no end', '# TYPE a gauge\na 1\n'],
    ['something after the end', '# TYPE a gauge\na 1\n# EOF\nb 1\n'],
    ['an empty line', '# TYPE a gauge\n\na 1\n# EOF\n'],
    ['a counter without _total', '# TYPE a counter\na 1\n# EOF\n'],
    ['a sample twice', '# TYPE a gauge\na 1\na 2\n# EOF\n'],
    ['a family in two pieces', '# TYPE a gauge\na 1\n# TYPE b gauge\n# TYPE a gauge\n# EOF\n'],
    ['a bare quote in a label', '# TYPE a gauge\na{x="""} 1\n# EOF\n'],
    ['a number that is none', '# TYPE a gauge\na one\n# EOF\n'],
  ])('%s', (_, text) => {
    expect(() => parseOpenMetrics(text)).toThrow();
  });
});

describe('figures as text', () => {
  test('counters, gauges and labels', async () => {
    const text = await openMetrics([
      figure(),
      figure({
        name: 'forebond_store_size_bytes',
        kind: 'gauge',
        help: 'Size of the store.',
        rows: [{ value: -1.5e9 }],
      }),
      figure({
        name: 'forebond_intake_refused_total',
        labels: ['reason', 'topic'],
        rows: [
          { labels: ['not "JSON"\n', 'a\\b'], value: 2 },
          { labels: ['wrong unit', 'c'], value: 0 },
        ],
      }),
    ]);
    const families = parseOpenMetrics(text);
    expect(families.get('forebond_intake_samples')).toEqual({
      type: 'counter',
      help: 'Samples judged.',
      samples: [{ name: 'forebond_intake_samples_total', labels: '', value: 7 }],
    });
    expect(families.get('forebond_store_size_bytes')?.samples[0]?.value).toBe(-1.5e9);
    expect(families.get('forebond_intake_refused')?.samples).toEqual([
      {
        name: 'forebond_intake_refused_total',
        labels: '{reason="not \\"JSON\\"\\n",topic="a\\\\b"}',
        value: 2,
      },
      {
        name: 'forebond_intake_refused_total',
        labels: '{reason="wrong unit",topic="c"}',
        value: 0,
      },
    ]);
  });

  test.each([
    ['another name', figure({ name: 'samples_total' })],
    ['a capital letter', figure({ name: 'forebond_Samples_total' })],
    ['a counter without _total', figure({ name: 'forebond_samples' })],
    ['a gauge with _total', figure({ kind: 'gauge' })],
    ['NaN', figure({ rows: [{ value: Number.NaN }] })],
    ['a negative counter', figure({ rows: [{ value: -1 }] })],
    ['a missing label', figure({ labels: ['a'], rows: [{ value: 1 }] })],
    ['a label too many', figure({ rows: [{ labels: ['a'], value: 1 }] })],
  ])('%s is a fault, not a wrong line', async (_, wrong) => {
    await expect(openMetrics([wrong])).rejects.toThrow();
  });

  test('the same name twice is a fault', async () => {
    await expect(openMetrics([figure(), figure()])).rejects.toThrow();
  });
});

describe('/metrics', () => {
  let web: Web;
  beforeAll(async () => {
    const ports = new FakePorts();
    web = await startWeb({ host: '127.0.0.1', port: 0, version: '0', ports, onFault: () => {} });
  });
  afterAll(() => web.close());

  test('is OpenMetrics with the agent’s figures and the web’s own', async () => {
    await send(web.port, { path: '/nothing' });
    const answer = await send(web.port, { path: '/metrics' });
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe(
      'application/openmetrics-text; version=1.0.0; charset=utf-8',
    );
    const families = parseOpenMetrics(answer.text);
    expect(families.get('forebond_intake_samples')?.samples[0]?.value).toBe(7);
    expect(families.get('forebond_web_problems')?.samples).toEqual([
      { name: 'forebond_web_problems_total', labels: '{code="WEB_ROUTE_UNKNOWN"}', value: 1 },
    ]);
    expect(families.get('forebond_web_answers')?.samples).toContainEqual({
      name: 'forebond_web_answers_total',
      labels: '{status="4xx"}',
      value: 1,
    });
    for (const [name, { type, help }] of families) {
      expect(name).toMatch(/^forebond_[a-z0-9_]+$/);
      expect(['counter', 'gauge']).toContain(type);
      expect(help).not.toBe('');
    }
  });

  test('counters never fall between two readings', async () => {
    const read = async () => parseOpenMetrics((await send(web.port, { path: '/metrics' })).text);
    const first = await read();
    const second = await read();
    for (const [name, family] of first) {
      if (family.type !== 'counter') continue;
      for (const sample of family.samples) {
        const later = second.get(name)?.samples.find((one) => one.labels === sample.labels);
        expect(later!.value).toBeGreaterThanOrEqual(sample.value);
      }
    }
  });
});
