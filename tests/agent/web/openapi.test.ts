import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ErrorCode, errorCatalogue } from '#agent/errors.ts';
import { pathOf, refusalsOf } from '#agent/web/openapi.ts';
import { problemStatus } from '#agent/web/problem.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { alarm, FakePorts, hold } from './fake-ports.ts';
import { run } from './fake-run.ts';
import { FakeTelling } from './fake-telling.ts';
import { pushRoom } from './push-room.ts';
import { tellingCases } from './telling-cases.ts';
import { type Answer, type Sent, send } from './wire.ts';

interface Operation {
  readonly operationId: string;
  readonly parameters: { name: string; in: string; required: boolean; schema: object }[];
  readonly requestBody?: { content: Record<string, { schema: object }> };
  readonly responses: Record<string, { content: Record<string, { schema: object }> }>;
}
interface Document {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { schemas: Record<string, object> };
}

let web: Web;
let folder: string;
let ports: FakePorts;
let document: Document;
beforeAll(async () => {
  ports = new FakePorts();
  folder = mkdtempSync(join(tmpdir(), 'forebond-openapi-'));
  web = await startWeb({
    ...{ host: '127.0.0.1', port: 0, version: '1.2.3', ports, onFault: () => {} },
    telling: new FakeTelling(),
    push: pushRoom(folder, () => {}).push,
  });
  document = JSON.parse((await send(web.port, { path: '/api/openapi.json' })).text);
});
afterAll(async () => {
  await web.close();
  rmSync(folder, { recursive: true });
});

/** Checks a value against a schema of the document, with a validator that is not the one it was made with. */
function check(schema: object, value: unknown): string[] {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  const bundled = JSON.stringify({ ...schema, $defs: document.components.schemas });
  const validate = ajv.compile(JSON.parse(bundled.replaceAll('#/components/schemas/', '#/$defs/')));
  validate(value);
  return (validate.errors ?? []).map((one) => `${one.instancePath} ${one.message}`);
}

test('is an OpenAPI 3.1 document', async () => {
  expect(document.openapi).toBe('3.1.0');
  const result = await new Validator().validate({ ...structuredClone(document) });
  expect(result.errors ?? []).toEqual([]);
  expect(result.valid).toBe(true);
});

test('the validator of the test refuses a broken document', async () => {
  const broken = structuredClone(document) as { paths: Record<string, unknown> };
  broken.paths['/api/health'] = { get: { responses: 7 } };
  expect((await new Validator().validate({ ...broken })).valid).toBe(false);
});

test('describes every route of the contract, and exactly what is registered', () => {
  const described = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
  );
  expect(described.toSorted()).toEqual(
    web.routes.map(({ spec }) => `${spec.method} ${pathOf(spec.url)}`).toSorted(),
  );
  expect(described.toSorted()).toEqual([
    'DELETE /api/push/subscriptions',
    'GET /api/alarms',
    'GET /api/coverage',
    'GET /api/health',
    'GET /api/holds',
    'GET /api/marks',
    'GET /api/openapi.json',
    'GET /api/own-rules',
    'GET /api/performance',
    'GET /api/push/key',
    'GET /api/put-aside',
    'GET /api/refused',
    'GET /api/rules',
    'GET /api/rules.csv',
    'GET /api/runs',
    'GET /api/runs/{id}',
    'GET /api/signals',
    'GET /api/signals/{id}/series',
    'GET /api/site',
    'GET /api/stream',
    'GET /api/telling',
    'GET /api/telling/outbox',
    'GET /metrics',
    'POST /api/alarms/{occurrence}/acknowledge',
    'POST /api/alarms/{occurrence}/needed',
    'POST /api/alarms/{occurrence}/out-of-service',
    'POST /api/alarms/{occurrence}/pass-on',
    'POST /api/alarms/{occurrence}/reset',
    'POST /api/alarms/{occurrence}/return-to-service',
    'POST /api/alarms/{occurrence}/shelve',
    'POST /api/alarms/{occurrence}/unshelve',
    'POST /api/holds',
    'POST /api/holds/{id}/lift',
    'POST /api/marks',
    'POST /api/own-rules/switch-on',
    'POST /api/push/subscriptions',
    'POST /api/push/test',
    'POST /api/readings',
    'POST /api/site/reload',
    'POST /api/telling/test',
  ]);
});

test('nothing answers that is not described', async () => {
  // Whatever the web library has registered refuses with 405 where it is not in the document.
  for (const path of Object.keys(document.paths)) {
    const real = path.replace(/\{\w+\}/g, 'x');
    for (const method of ['GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS']) {
      if (document.paths[path]?.[method.toLowerCase()] !== undefined) continue;
      expect([method, path, (await send(web.port, { method, path: real })).status]).toEqual([
        method,
        path,
        405,
      ]);
    }
  }
});

test('operations have names of their own, and path parameters are those of the path', () => {
  const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.values(methods).map((operation) => ({ path, operation })),
  );
  const names = operations.map(({ operation }) => operation.operationId);
  expect(new Set(names).size).toBe(names.length);
  for (const { path, operation } of operations) {
    const inPath = operation.parameters.filter((one) => one.in === 'path').map((one) => one.name);
    expect(inPath).toEqual([...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]));
  }
});

test('every refusal has a status and stands in the catalogue', () => {
  for (const route of web.routes) {
    const operation = document.paths[pathOf(route.spec.url)]![route.spec.method.toLowerCase()]!;
    for (const code of refusalsOf(route)) {
      expect(errorCatalogue[code].fix).not.toBe('');
      expect(operation.responses[String(problemStatus[code])]?.content).toHaveProperty([
        'application/problem+json',
      ]);
    }
  }
});

test('answers may grow: no schema of an answer forbids further fields', () => {
  for (const [name, schema] of Object.entries(document.components.schemas)) {
    expect([name, JSON.stringify(schema).includes('"additionalProperties":false')]).toEqual([
      name,
      false,
    ]);
  }
});

const runCases: readonly (readonly [string, Sent])[] = [
  ['/api/runs', { path: '/api/runs' }],
  ['/api/runs', { path: `/api/runs?station=${encodeURIComponent('mounts-2/oven-1')}&limit=5` }],
  ['/api/runs', { path: '/api/runs?limit=0' }],
  ['/api/runs/{id}', { path: `/api/runs/${encodeURIComponent(run().id)}` }],
  ['/api/runs/{id}', { path: `/api/runs/${encodeURIComponent(run().id)}?points=10` }],
  ['/api/runs/{id}', { path: '/api/runs/none' }],
];

const json = { 'content-type': 'application/json' };
const posted = (path: string, body: unknown): Sent => ({
  method: 'POST',
  path,
  headers: json,
  body: JSON.stringify(body),
});
const said = { station: 'mounts-2/store-1', mark: 'moved', item: 'D-7' };
const entered = { signal: 'mounts-2/store-1/wall', value: 6.4, unit: 'Cel' };
const writtenCases: (readonly [string, Sent])[] = [
  ['/api/marks', { path: '/api/marks?station=mounts-2%2Fstore-1' }],
  ['/api/marks', posted('/api/marks', said)],
  ['/api/marks', posted('/api/marks', { ...said, at: '2025-12-31T08:10:00Z', note: 'late' })],
  ['/api/marks', posted('/api/marks', { ...said, mark: 'painted' })],
  ['/api/readings', posted('/api/readings', { ...entered, at: 1_767_225_000_000 })],
  ['/api/readings', posted('/api/readings', { ...entered, value: 'warm' })],
];

const at = encodeURIComponent;
const series = `/api/signals/${at('mounts-2/store-1/wall')}/series`;
const commands = `/api/alarms/${at(alarm().occurrence)}`;

const asideCases: (readonly [string, Sent])[] = [
  ['/api/put-aside', { path: '/api/put-aside' }],
  ['/api/alarms/{occurrence}/pass-on', posted(`${commands}/pass-on`, { comment: 'at the press' })],
  [
    '/api/alarms/{occurrence}/shelve',
    posted(`${commands}/shelve`, { minutes: 5, reason: 'moved', one_shot: true }),
  ],
  ['/api/alarms/{occurrence}/out-of-service', posted(`${commands}/out-of-service`, {})],
  [
    '/api/alarms/{occurrence}/out-of-service',
    posted(`${commands}/out-of-service`, { reason: 'new probe' }),
  ],
  ['/api/alarms/{occurrence}/return-to-service', posted(`${commands}/return-to-service`, {})],
];

const siteCases: (readonly [string, Sent])[] = [
  ['/api/own-rules', { path: '/api/own-rules' }],
  ['/api/own-rules/switch-on', posted('/api/own-rules/switch-on', { file: 'rules/creep.ts' })],
  ['/api/own-rules/switch-on', posted('/api/own-rules/switch-on', { file: 'rules/none.ts' })],
  ['/api/site/reload', posted('/api/site/reload', {})],
  ['/api/site/reload', posted('/api/site/reload', { now: true })],
];
const performanceCases: (readonly [string, Sent])[] = [
  ['/api/rules.csv', { path: '/api/rules.csv' }],
  ['/api/performance', { path: '/api/performance?line=m' }],
  ['/api/performance', { path: '/api/performance?since=x' }],
  ['/api/alarms/{occurrence}/needed', posted(`${commands}/needed`, { needed: true })],
  ['/api/alarms/{occurrence}/needed', posted(`${commands}/needed`, {})],
  ...tellingCases,
];

describe('real answers are as described', () => {
  const cases: (readonly [string, Sent])[] = [
    ['/api/health', { path: '/api/health' }],
    ['/api/signals', { path: '/api/signals' }],
    ['/api/site', { path: '/api/site' }],
    ['/api/signals/{id}/series', { path: `${series}?points=5` }],
    ['/api/signals/{id}/series', { path: '/api/signals/x/series' }],
    ['/api/signals/{id}/series', { path: `${series}?points=x` }],
    ['/api/alarms', { path: '/api/alarms' }],
    ['/api/alarms', { path: '/api/alarms?state=x' }],
    ['/api/alarms', { path: '/api/alarms', headers: { host: 'evil.example' } }],
    ['/api/alarms/{occurrence}/acknowledge', posted(`${commands}/acknowledge`, { comment: 'yes' })],
    ['/api/alarms/{occurrence}/acknowledge', posted('/api/alarms/x/acknowledge', {})],
    [
      '/api/alarms/{occurrence}/acknowledge',
      { ...posted(`${commands}/acknowledge`, {}), headers: { 'content-type': 'text/plain' } },
    ],
    [
      '/api/alarms/{occurrence}/acknowledge',
      { ...posted(`${commands}/acknowledge`, {}), body: '{' },
    ],
    [
      '/api/alarms/{occurrence}/shelve',
      posted(`${commands}/shelve`, { minutes: 5, reason: 'moved' }),
    ],
    ['/api/alarms/{occurrence}/unshelve', posted(`${commands}/unshelve`, {})],
    ['/api/alarms/{occurrence}/reset', posted(`${commands}/reset`, {})],
    ['/api/holds', { path: '/api/holds' }],
    ['/api/holds', posted('/api/holds', { what: 'lot', item: 'K-77', reason: 'dull film' })],
    [
      '/api/holds/{id}/lift',
      posted(`/api/holds/${at(hold().id)}/lift`, { disposition: 'reworked', reason: 'recoated' }),
    ],
    [
      '/api/holds/{id}/lift',
      posted('/api/holds/x/lift', { disposition: 'reworked', reason: 'recoated' }),
    ],
    ...writtenCases,
    ...asideCases,
    ...siteCases,
    ...runCases,
    ['/api/coverage', { path: '/api/coverage' }],
    ['/api/refused', { path: '/api/refused' }],
    ['/api/rules', { path: '/api/rules' }],
    ...performanceCases,
    ['/api/openapi.json', { path: '/api/openapi.json' }],
    ['/metrics', { path: '/metrics' }],
  ];

  function compare(path: string, sent: Sent, answer: Answer): void {
    const operation = document.paths[path]![(sent.method ?? 'GET').toLowerCase()]!;
    const response = operation.responses[String(answer.status)];
    expect(response, `${path} answered ${answer.status}: ${answer.text}`).toBeDefined();
    const type = String(answer.headers['content-type']);
    const described = Object.entries(response!.content).find(([one]) => type.startsWith(one));
    expect(described, `${path} ${answer.status} as ${type}`).toBeDefined();
    if (!type.includes('json')) return;
    const body = JSON.parse(answer.text);
    expect(check(described![1].schema, body)).toEqual([]);
    expect(undescribed(body, described![1].schema)).toEqual([]);
    if (sent.body === undefined || answer.status >= 300) return;
    const request = operation.requestBody!.content['application/json']!.schema;
    expect(check(request, JSON.parse(String(sent.body)))).toEqual([]);
  }

  /** Fields of a real answer that the document does not know, found by closing every schema. */
  function undescribed(body: unknown, schema: object): string[] {
    const closed = JSON.stringify({ ...schema, $defs: document.components.schemas })
      .replaceAll('#/components/schemas/', '#/$defs/')
      .replaceAll(
        '"type":"object","properties"',
        '"type":"object","additionalProperties":false,"properties"',
      );
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(closed));
    validate(body);
    return (validate.errors ?? [])
      .filter((one) => one.keyword === 'additionalProperties')
      .map((one) => `${one.instancePath} ${JSON.stringify(one.params)}`);
  }

  test.each(cases)('%s %j', async (path, sent) => {
    compare(path, sent, await send(web.port, sent));
  });

  test('health in failure, a refusal and a full disk', async () => {
    ports.parts = { ...ports.parts, parts: { store: 'failure' } };
    compare('/api/health', { path: '/' }, await send(web.port, { path: '/api/health' }));
    ports.alarmAnswer = () => ({ outcome: 'refused', why: 'it is acknowledged already' });
    const sent = posted(`${commands}/acknowledge`, {});
    compare('/api/alarms/{occurrence}/acknowledge', sent, await send(web.port, sent));
  });

  test('every GET route of the document is among them', () => {
    const tried = new Set(cases.map(([path]) => path));
    expect(Object.keys(document.paths).filter((path) => !tried.has(path))).toEqual(['/api/stream']);
  });
});

test('codes outside the catalogue do not compile, and each of the web’s own is used', () => {
  const used = new Set(Object.keys(problemStatus));
  const starting: ErrorCode[] = ['WEB_NOT_LOOPBACK', 'WEB_NAMES_UNUSABLE', 'WEB_ADDRESS_UNUSABLE'];
  const own = Object.keys(errorCatalogue).filter((code) => code.startsWith('WEB_'));
  expect(own.filter((code) => !used.has(code))).toEqual(starting);
});
