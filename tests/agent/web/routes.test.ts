import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { AgentError } from '#agent/errors.ts';
import { problemSchema } from '#agent/web/contract.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { alarm, FakePorts, hold, now } from './fake-ports.ts';
import { post, send } from './wire.ts';

// Every route with what it gives and every way it refuses what it is given.

let ports: FakePorts;
let web: Web;
const faults: unknown[] = [];
beforeAll(async () => {
  ports = new FakePorts();
  const handed = new Proxy({} as FakePorts, {
    get: (_, name) => Reflect.get(ports, name),
  });
  web = await startWeb({
    host: '127.0.0.1',
    port: 0,
    version: '0.1.0',
    ports: handed,
    onFault: (error) => faults.push(error),
  });
});
afterAll(() => web.close());
beforeEach(() => {
  ports = new FakePorts();
  faults.length = 0;
});

const get = (path: string) => send(web.port, { path });
const json = (answer: { text: string }) => JSON.parse(answer.text);
const at = (id: string) => encodeURIComponent(id);
const occurrence = alarm().occurrence;

describe('health', () => {
  test('is the worst of its parts and 200 while nothing has failed', async () => {
    ports.parts = {
      ...ports.parts,
      parts: { store: 'maintenance-required', intake: 'out-of-specification', page: 'good' },
      notes: { store: 'the disk is 90 % full' },
    };
    const answer = await get('/api/health');
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe('application/json; charset=utf-8');
    expect(json(answer)).toEqual({ condition: 'out-of-specification', ...ports.parts });
  });

  test('is 503 on failure', async () => {
    ports.parts = { ...ports.parts, parts: { store: 'failure', intake: 'function-check' } };
    const answer = await get('/api/health');
    expect(answer.status).toBe(503);
    expect(json(answer)).toMatchObject({ condition: 'failure' });
  });
});

describe('signals', () => {
  test('lists every signal', async () => {
    const answer = await get('/api/signals');
    expect(answer.status).toBe(200);
    expect(json(answer)).toEqual({ signals: ports.signals() });
  });

  test('gives a series for an id with slashes, encoded', async () => {
    const path = `/api/signals/${at('mounts-2/store-1/wall')}/series`;
    const answer = await get(`${path}?since=2026-01-01T00:00:00%2B01:00&until=${now}&points=17`);
    expect(answer.status).toBe(200);
    expect(json(answer)).toEqual({
      unit: 'Cel',
      points: [
        [now - 3_600_000, 6.1, 6.5, 6.3, 60, 1],
        [now - 1, null, null, null, 0, 3],
      ],
      uncertain: [2, 0],
      damage: [
        {
          from: now - 3_600_000,
          to: now - 3_600_000,
          reason: 'its checksum does not hold',
        },
      ],
    });
    expect(ports.seriesAsked).toEqual([['mounts-2/store-1/wall', now - 3_600_000, now, 17]]);
  });

  test('takes the last day in 1000 points where nothing is said', async () => {
    await get(`/api/signals/${at('mounts-2/store-1/wall')}/series`);
    expect(ports.seriesAsked).toEqual([['mounts-2/store-1/wall', now - 86_400_000, now, 1_000]]);
  });

  test('refuses an unknown signal', async () => {
    const answer = await get(`/api/signals/${at('mounts-2/store-1/nothing')}/series`);
    expect(answer.status).toBe(404);
    expect(json(answer)).toMatchObject({ code: 'WEB_SIGNAL_UNKNOWN' });
  });
});

describe('alarms', () => {
  test('lists occurrences with label and evidence', async () => {
    const answer = await get('/api/alarms');
    expect(answer.status).toBe(200);
    expect(json(answer)).toEqual({ alarms: [alarm()], truncated: false });
  });

  test('asks for states, span and number', async () => {
    await get(`/api/alarms?state=shelved,unacknowledged&state=normal&since=1&until=2&limit=5`);
    expect(ports.alarmQueries).toEqual([
      { states: ['shelved', 'unacknowledged', 'normal'], sinceMs: 1, untilMs: 2, limit: 6 },
    ]);
  });

  test('says when there are more than asked for', async () => {
    ports.allAlarms = [alarm(), alarm(), alarm()];
    expect(json(await get('/api/alarms?limit=2'))).toMatchObject({
      alarms: [{}, {}],
      truncated: true,
    });
    expect(json(await get('/api/alarms?limit=3'))).toMatchObject({ truncated: false });
  });

  test.each([
    ['acknowledge', undefined, {}],
    ['acknowledge', {}, {}],
    ['acknowledge', { comment: ' On my way ' }, { reason: 'On my way' }],
    [
      'shelve',
      { minutes: 30, reason: 'sensor moved' },
      { reason: 'sensor moved', forMs: 1_800_000 },
    ],
    [
      'shelve',
      { minutes: 30, reason: 'sensor moved', one_shot: true },
      { reason: 'sensor moved', forMs: 1_800_000, oneShot: true },
    ],
    ['unshelve', undefined, {}],
    ['reset', {}, {}],
    ['reset', { reason: 'looked at it' }, { reason: 'looked at it' }],
    ['pass-on', {}, {}],
    ['pass-on', { comment: 'at the press' }, { reason: 'at the press' }],
    ['out-of-service', { reason: 'new probe' }, { reason: 'new probe' }],
    [
      'out-of-service',
      { reason: 'new probe', minutes: 60 },
      { reason: 'new probe', forMs: 3_600_000 },
    ],
    ['return-to-service', {}, {}],
  ] as const)('%s %j reaches the desk', async (ending, body, details) => {
    const verb = ending === 'out-of-service' ? 'remove-from-service' : ending;
    const answer = await post(web.port, `/api/alarms/${at(occurrence)}/${ending}`, body);
    expect(answer.status).toBe(200);
    expect(json(answer)).toEqual({ occurrence, state: 'acknowledged', note: null });
    const who = { by: 'local', role: 'administrator' };
    expect(ports.alarmCommands).toEqual([{ verb, occurrence, ...who, ...details }]);
  });

  test('passes on why a command is refused', async () => {
    ports.alarmAnswer = () => ({ outcome: 'refused', why: 'it is already acknowledged' });
    const answer = await post(web.port, `/api/alarms/${at(occurrence)}/acknowledge`);
    expect(answer.status).toBe(409);
    expect(json(answer)).toMatchObject({
      code: 'WEB_COMMAND_REFUSED',
      detail: 'Nothing was changed: it is already acknowledged.',
    });
  });

  test('knows when there is no such occurrence', async () => {
    const answer = await post(web.port, `/api/alarms/${at('a/b/c@1')}/reset`);
    expect(answer.status).toBe(404);
    expect(json(answer)).toMatchObject({ code: 'WEB_OCCURRENCE_UNKNOWN' });
  });
});

describe('what people write down', () => {
  const said = { station: 'mounts-2/store-1', mark: 'moved', item: 'D-7' };
  const entered = { signal: 'mounts-2/store-1/wall', value: 6.4, unit: 'Cel' };

  test('lists marks and clocks, of all stations or of one', async () => {
    expect(json(await get('/api/marks'))).toMatchObject({
      at: now,
      marks: [{ mark: 'moved', what: 'container', last: { item: 'D-7' } }],
      clocks: [{ item: 'D-7', severity: 0 }],
    });
    const other = await get(`/api/marks?station=${at('mounts-2/other')}`);
    expect(json(other).marks).toEqual([]);
  });

  test('a mark is said now, or at a time in either writing', async () => {
    const answer = await post(web.port, '/api/marks', said);
    expect(answer.status).toBe(201);
    expect(json(answer)).toMatchObject({ mark: 'moved', item: 'D-7', at: now, by: 'local' });
    await post(web.port, '/api/marks', { ...said, at: now - 5, note: 'from the list' });
    await post(web.port, '/api/marks', { ...said, at: '2025-12-31T08:10:00Z' });
    expect(ports.said).toEqual([
      { ...said, by: 'local' },
      { ...said, at: now - 5, note: 'from the list', by: 'local' },
      { ...said, at: Date.UTC(2025, 11, 31, 8, 10), by: 'local' },
    ]);
  });

  test('a mark that is unknown, or that nothing takes, says why', async () => {
    const unknown = await post(web.port, '/api/marks', { ...said, mark: 'painted' });
    expect(unknown.status).toBe(404);
    expect(json(unknown)).toMatchObject({ code: 'WEB_MARK_UNKNOWN' });
    ports.markRefusal = 'it happens to a container; say which';
    const refused = await post(web.port, '/api/marks', said);
    expect(refused.status).toBe(409);
    expect(json(refused).detail).toBe('Nothing was changed: it happens to a container; say which.');
  });

  test('a reading is entered, and answered as it was kept', async () => {
    const answer = await post(web.port, '/api/readings', { ...entered, at: now - 60_000 });
    expect(answer.status).toBe(201);
    expect(json(answer)).toMatchObject({ value: 6.4, at: now - 60_000, judged: true });
    expect(ports.entered).toEqual([{ ...entered, at: now - 60_000, by: 'local' }]);
  });

  test('a reading that cannot be says why, and what to do', async () => {
    ports.readingRefusal = new AgentError('WEB_READING_UNIT', {
      id: 'a/b/c',
      unit: 'bar',
      own: 'Cel',
    });
    const answer = await post(web.port, '/api/readings', { ...entered, unit: 'bar' });
    expect(answer.status).toBe(400);
    expect(json(answer)).toMatchObject({
      code: 'WEB_READING_UNIT',
      fix: 'Write the value in Cel, or in another unit of the same quantity.',
    });
  });

  test.each([
    ['/api/marks', { ...said, item: 'a\nb' }, 'item'],
    ['/api/marks', { ...said, at: 'yesterday' }, 'at'],
    ['/api/marks', { ...said, at: -1 }, 'at'],
    ['/api/marks', { mark: 'moved' }, 'station'],
    ['/api/readings', { ...entered, value: '6.4' }, 'value'],
    ['/api/readings', { ...entered, unit: '' }, 'unit'],
    ['/api/readings', { ...entered, by: 'anna' }, 'by'],
  ])('%s refuses %j', async (path, body, name) => {
    const answer = await post(web.port, path, body);
    expect(answer.status).toBe(400);
    expect(problemSchema.parse(json(answer)).parameters!.map((one) => one.name)).toContain(name);
    expect([ports.said, ports.entered]).toEqual([[], []]);
  });
});

describe('holds', () => {
  test('lists them', async () => {
    expect(json(await get('/api/holds'))).toEqual({ holds: [hold()], truncated: false });
    await get('/api/holds?standing=true&what=rack&item=41&limit=9');
    expect(ports.holdQueries[1]).toEqual({
      standingOnly: true,
      what: 'rack',
      item: '41',
      limit: 10,
    });
  });

  test('sets one', async () => {
    const body = { what: 'rack', item: 'rack 41', reason: 'foam seen' };
    const answer = await post(web.port, '/api/holds', body);
    expect(answer.status).toBe(201);
    expect(json(answer)).toMatchObject({ ...body, by: 'local', lifted: null });
    expect(ports.holdCommands).toEqual([{ verb: 'hold', by: 'local', ...body }]);
  });

  test('lifts one whose id has slashes and an @', async () => {
    const body = { disposition: 'scrapped', reason: 'lumps found' };
    const answer = await post(web.port, `/api/holds/${at(hold().id)}/lift`, body);
    expect(answer.status).toBe(200);
    expect(json(answer).lifted).toEqual({ at: now, by: 'local', ...body });
    expect(ports.holdCommands).toEqual([{ verb: 'lift', hold: hold().id, by: 'local', ...body }]);
  });

  test('knows when there is none, and passes on a refusal', async () => {
    const body = { disposition: 'released', reason: 'tested' };
    const none = await post(web.port, `/api/holds/${at('lot/x@1')}/lift`, body);
    expect([none.status, json(none).code]).toEqual([404, 'WEB_HOLD_UNKNOWN']);
    ports.holdAnswer = () => ({ outcome: 'refused', why: 'it is lifted already' });
    const refused = await post(web.port, `/api/holds/${at(hold().id)}/lift`, body);
    expect([refused.status, json(refused).code]).toEqual([409, 'WEB_COMMAND_REFUSED']);
  });
});

test('coverage and rules', async () => {
  expect(json(await get('/api/coverage'))).toEqual(ports.coverage());
  expect(json(await get('/api/rules'))).toEqual({ rules: ports.rules() });
});

describe('parameters that cannot be used are named, all of them', () => {
  const series = `/api/signals/${at('mounts-2/store-1/wall')}/series`;
  test.each([
    [`${series}?since=yesterday&points=0`, ['query since', 'query points']],
    [`${series}?since=5&until=5`, ['query since']],
    [`${series}?since=${now}`, ['query since']],
    [`${series}?points=5001`, ['query points']],
    [`${series}?points=1e3`, ['query points']],
    [`${series}?since=1&since=2`, ['query since']],
    [`${series}?since=2026-02-30T25:00:00Z`, ['query since']],
    [`${series}?since=-1`, ['query since']],
    [`${series}?sinse=1`, ['query sinse']],
    ['/api/alarms?state=angry', ['query state/0']],
    ['/api/alarms?state=', ['query state/0']],
    ['/api/alarms?since=2&until=1&limit=x', ['query limit', 'query since']],
    ['/api/holds?what=person&standing=maybe', ['query standing', 'query what']],
    ['/api/health?x=1&y=2', ['query x', 'query y']],
  ])('GET %s', async (path, wrong) => {
    const answer = await get(path);
    expect(answer.status).toBe(400);
    const problem = problemSchema.parse(json(answer));
    expect(problem.code).toBe('WEB_PARAMETER_WRONG');
    expect(problem.parameters?.map((one) => `${one.in} ${one.name}`)).toEqual(wrong);
  });

  const acknowledge = `/api/alarms/${at(occurrence)}/acknowledge`;
  const shelve = `/api/alarms/${at(occurrence)}/shelve`;
  const lift = `/api/holds/${at(hold().id)}/lift`;
  test.each([
    [acknowledge, { comment: 7 }, ['body comment']],
    [acknowledge, { comment: 'two\nlines' }, ['body comment']],
    [acknowledge, { comment: '\ud800' }, ['body comment']],
    [acknowledge, { comment: 'x'.repeat(501) }, ['body comment']],
    [acknowledge, { coment: 'x' }, ['body coment']],
    [acknowledge, [], ['body body']],
    [acknowledge, null, ['body body']],
    [shelve, undefined, ['body body']],
    [shelve, {}, ['body minutes', 'body reason']],
    [shelve, { minutes: 0, reason: 'why not' }, ['body minutes']],
    [shelve, { minutes: 10_081, reason: 'why not' }, ['body minutes']],
    [shelve, { minutes: 5, reason: 'why not', one_shot: 1 }, ['body one_shot']],
    [`/api/alarms/${at(occurrence)}/out-of-service`, {}, ['body reason']],
    [shelve, { minutes: 1.5, reason: 'why not' }, ['body minutes']],
    [shelve, { minutes: 30, reason: '    ' }, ['body reason']],
    [
      '/api/holds',
      { what: 'drum', item: '', reason: 'x' },
      ['body what', 'body item', 'body reason'],
    ],
    [lift, { disposition: 'eaten', reason: 'tested' }, ['body disposition']],
  ])('POST %s %j', async (path, body, wrong) => {
    const answer = await post(web.port, path, body);
    expect(answer.status).toBe(400);
    const problem = problemSchema.parse(json(answer));
    expect(problem.parameters?.map((one) => `${one.in} ${one.name}`)).toEqual(wrong);
    expect([...ports.alarmCommands, ...ports.holdCommands]).toEqual([]);
  });
});
