import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { afterEach, describe, expect, test } from 'vitest';
import { AgentError } from '#agent/errors.ts';
import { limits } from '#agent/limits.ts';
import { problemSchema } from '#agent/web/contract.ts';
import { startWeb, type Waits, type Web } from '#agent/web/server.ts';
import { alarm, FakePorts } from './fake-ports.ts';
import { type Answer, post, raw, send } from './wire.ts';

// Every failure is a problem (RFC 9457) with a code and a fix, from the socket up to a fault of our own.

let web: Web;
let ports: FakePorts;
const faults: { error: unknown; where: string }[] = [];
async function start(waits: Partial<Waits> = {}): Promise<void> {
  ports = new FakePorts();
  faults.length = 0;
  const onFault = (error: unknown, where: string) => faults.push({ error, where });
  web = await startWeb({ host: '127.0.0.1', port: 0, version: '0', ports, onFault, waits });
}
afterEach(() => web.close());

const acknowledge = `/api/alarms/${encodeURIComponent(alarm().occurrence)}/acknowledge`;
const problemOf = (answer: Answer) => {
  expect(answer.headers['content-type']).toBe('application/problem+json; charset=utf-8');
  const problem = problemSchema.parse(JSON.parse(answer.text));
  expect(problem.status).toBe(answer.status);
  expect(problem.fix).not.toBe('');
  return problem;
};
/** The problem in a raw answer. */
const problemIn = (text: string) => {
  const [head, body] = text.split('\r\n\r\n');
  expect(head).toContain('content-type: application/problem+json');
  const problem = problemSchema.parse(JSON.parse(body!));
  expect(head).toMatch(new RegExp(`^HTTP/1\\.1 ${problem.status} ${problem.title}\r\n`));
  return problem;
};
const head = (lines: string): string => `${lines}\r\nHost: 127.0.0.1:${web.port}\r\n`;

describe('paths and methods', () => {
  test.each([
    '/api',
    '/api/',
    '/api/nothing',
    '/api/health/',
    '/API/health',
    '//api/health',
    '/api/signals/a/b/c/series',
    '/api/../etc/passwd',
    '/favicon.ico',
  ])('%s: 404', async (path) => {
    await start();
    const problem = problemOf(await send(web.port, { path }));
    expect([problem.status, problem.code]).toEqual([404, 'WEB_ROUTE_UNKNOWN']);
    expect(problem.title).toBe('Not Found');
  });

  test.each([
    ['DELETE', '/api/alarms', 'GET, HEAD'],
    ['PUT', '/api/holds', 'GET, POST, HEAD'],
    ['GET', acknowledge, 'POST'],
    ['PATCH', '/metrics', 'GET, HEAD'],
    ['POST', '/api/stream', 'GET'],
    ['OPTIONS', '/api/health', 'GET, HEAD'],
    ['TRACE', '/api/health', 'GET, HEAD'],
  ])('%s %s: 405, allowing %s', async (method, path, allow) => {
    await start();
    const answer = await send(web.port, { method, path });
    expect(problemOf(answer)).toMatchObject({ status: 405, code: 'WEB_METHOD_UNKNOWN' });
    expect(answer.headers.allow).toBe(allow);
  });

  test('HEAD answers as GET without a body, and on the stream it is refused', async () => {
    await start();
    const answer = await send(web.port, { method: 'HEAD', path: '/api/health' });
    expect([answer.status, answer.text]).toEqual([200, '']);
    expect((await send(web.port, { method: 'HEAD', path: '/api/stream' })).status).toBe(405);
  });

  test('a path with a broken escape: 400', async () => {
    await start();
    const problem = problemOf(await send(web.port, { path: '/api/signals/%zz/series' }));
    expect([problem.status, problem.code]).toEqual([400, 'WEB_REQUEST_MALFORMED']);
  });

  test('an id longer than any: 414', async () => {
    await start();
    const longest = 'x'.repeat(limits.idCharsMax);
    const path = (id: string) => `/api/signals/${id}/series`;
    expect((await send(web.port, { path: path(longest) })).status).toBe(404);
    const problem = problemOf(await send(web.port, { path: path(`${longest}x`) }));
    expect([problem.status, problem.code]).toEqual([414, 'WEB_ID_TOO_LONG']);
  });
});

test('an expectation nobody knows: 417', async () => {
  await start();
  const answer = await send(web.port, { path: '/api/health', headers: { expect: 'tea' } });
  expect(problemOf(answer)).toMatchObject({ status: 417, code: 'WEB_EXPECTATION_UNKNOWN' });
});

describe('bodies', () => {
  const json = { 'content-type': 'application/json' };
  test.each([
    ['', 'nothing'],
    ['{', 'half an object'],
    ['{"comment":"a"}{}', 'two values'],
    ["{'comment':'a'}", 'no JSON'],
    ['{"comment":NaN}', 'NaN'],
    ['{"__proto__":{"comment":"a"}}', 'a name that means something'],
    ['{"constructor":{"prototype":{"comment":"a"}}}', 'another'],
    ['\ufeff{"comment":"a"', 'a mark and half an object'],
  ])('%j: 400', async (body) => {
    await start();
    const problem = problemOf(
      await send(web.port, { method: 'POST', path: acknowledge, headers: json, body }),
    );
    expect([problem.status, problem.code]).toEqual([400, 'WEB_BODY_UNREADABLE']);
    expect(ports.alarmCommands).toEqual([]);
  });

  test('too large, said beforehand or found out: 413', async () => {
    await start();
    const body = JSON.stringify({ comment: 'x'.repeat(limits.requestBytesMax) });
    const said = await send(web.port, { method: 'POST', path: acknowledge, headers: json, body });
    expect(problemOf(said)).toMatchObject({ status: 413, code: 'WEB_BODY_TOO_LARGE' });
    const chunked = { ...json, 'transfer-encoding': 'chunked' };
    const found = await send(web.port, {
      method: 'POST',
      path: acknowledge,
      headers: chunked,
      body,
    });
    expect(problemOf(found)).toMatchObject({ status: 413, code: 'WEB_BODY_TOO_LARGE' });
  });

  test('deep nesting within the size is only a wrong parameter', async () => {
    await start();
    const body = `{"comment":${'['.repeat(30_000)}${']'.repeat(30_000)}}`;
    const answer = await send(web.port, { method: 'POST', path: acknowledge, headers: json, body });
    expect(problemOf(answer)).toMatchObject({ status: 400, code: 'WEB_PARAMETER_WRONG' });
  });
});

describe('below HTTP', () => {
  test.each([
    ['GARBAGE\r\n\r\n', 400, 'WEB_REQUEST_MALFORMED'],
    ['\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03', 400, 'WEB_REQUEST_MALFORMED'],
    ['GET /api/health HTTP/9.9\r\n\r\n', 400, 'WEB_REQUEST_MALFORMED'],
    [`GET /api/health HTTP/1.1\r\nX: ${'x'.repeat(70_000)}\r\n\r\n`, 431, 'WEB_HEADERS_TOO_LARGE'],
    [
      'POST /api/holds HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n',
      400,
      'WEB_REQUEST_MALFORMED',
    ],
  ])('%j', async (bytes, status, code) => {
    await start();
    expect(problemIn(await raw(web.port, Buffer.from(bytes, 'latin1')))).toMatchObject({
      status,
      code,
    });
  });

  test('a request that does not end is answered 408 and closed', async () => {
    await start({ requestMs: 400, requestHeadersMs: 200 });
    const slowHeaders = raw(web.port, head('GET /api/health HTTP/1.1'));
    const slowBody = raw(
      web.port,
      `${head(`POST ${acknowledge} HTTP/1.1`)}Content-Type: application/json\r\nContent-Length: 50\r\n\r\n{`,
    );
    for (const text of await Promise.all([slowHeaders, slowBody])) {
      expect(problemIn(text)).toMatchObject({ status: 408, code: 'WEB_REQUEST_SLOW' });
    }
    expect(ports.alarmCommands).toEqual([]);
  });

  test('connections beyond the limit are closed, and those within it go on', async () => {
    await start();
    const open: Socket[] = [];
    try {
      for (let i = 0; i < limits.webConnectionsMax; i += 1) {
        const socket = connect(web.port, '127.0.0.1');
        open.push(socket);
        await once(socket, 'connect');
      }
      await expect(send(web.port, { path: '/api/health' })).rejects.toThrow();
      open.pop()!.destroy();
      await expect
        .poll(async () => {
          const answer = await send(web.port, { path: '/api/health' }).catch(() => null);
          return answer?.status;
        })
        .toBe(200);
    } finally {
      for (const socket of open) socket.destroy();
    }
  });
});

describe('faults', () => {
  test('what a port throws is logged, and nothing of it leaves', async () => {
    await start();
    const secret = new Error('ENOENT /var/data/secret');
    ports.health = () => {
      throw secret;
    };
    const answer = await send(web.port, { path: '/api/health' });
    expect(problemOf(answer)).toMatchObject({ status: 500, code: 'WEB_FAULT' });
    expect(answer.text).not.toContain('secret');
    expect(faults).toEqual([{ error: secret, where: 'GET /api/health' }]);
    expect((await send(web.port, { path: '/api/alarms' })).status).toBe(200);
  });

  test('something thrown that is no error is a fault too', async () => {
    await start();
    ports.alarmAnswer = () => {
      throw 'a string';
    };
    expect(problemOf(await post(web.port, acknowledge))).toMatchObject({ code: 'WEB_FAULT' });
    expect(faults).toEqual([
      { error: 'a string', where: 'POST /api/alarms/:occurrence/acknowledge' },
    ]);
  });

  test('a full disk is said with its fix: 503', async () => {
    await start();
    ports.alarmAnswer = () => {
      throw new AgentError('STORE_DISK_FULL', { path: 'data' });
    };
    const problem = problemOf(await post(web.port, acknowledge));
    expect([problem.status, problem.code]).toEqual([503, 'STORE_DISK_FULL']);
    expect(faults).toEqual([]);
  });

  test('an error that is none of the web’s says nothing of itself', async () => {
    await start();
    ports.health = () => {
      throw new AgentError('STORE_LOCKED', { path: '/var/secret' });
    };
    const answer = await send(web.port, { path: '/api/health' });
    expect(problemOf(answer).code).toBe('WEB_FAULT');
    expect(answer.text).not.toContain('secret');
    expect(faults.length).toBe(1);
  });

  test('an answer that does not come is said to be late: 503', async () => {
    await start({ answerMs: 100 });
    ports.alarmAnswer = () => new Promise(() => {});
    ports.series = () => new Promise(() => {});
    expect(problemOf(await post(web.port, acknowledge))).toMatchObject({
      status: 503,
      code: 'WEB_ANSWER_LATE',
    });
    const series = `/api/signals/${encodeURIComponent('mounts-2/store-1/wall')}/series`;
    expect(problemOf(await send(web.port, { path: series })).code).toBe('WEB_ANSWER_LATE');
  });

  test('one that fails after it was late disturbs nobody and is logged', async () => {
    await start({ answerMs: 50 });
    let fail: (error: Error) => void = () => {};
    ports.alarmAnswer = () =>
      new Promise((_, reject) => {
        fail = reject;
      });
    expect(problemOf(await post(web.port, acknowledge)).code).toBe('WEB_ANSWER_LATE');
    const later = new Error('much later');
    fail(later);
    expect((await send(web.port, { path: '/api/health' })).status).toBe(200);
    const where = 'POST /api/alarms/:occurrence/acknowledge, after its time';
    expect(faults).toEqual([{ error: later, where }]);
  });
});

test('one who hangs up in the middle of a body is no fault of the agent', async () => {
  await start();
  const socket = connect(web.port, '127.0.0.1');
  await once(socket, 'connect');
  const lines = 'Content-Type: application/json\r\nContent-Length: 50\r\n\r\n{';
  socket.write(`${head(`POST ${acknowledge} HTTP/1.1`)}${lines}`);
  await new Promise((resolve) => setTimeout(resolve, 50));
  socket.resetAndDestroy();
  await expect
    .poll(async () => (await send(web.port, { path: '/metrics' })).text)
    .toContain('forebond_web_problems_total{code="WEB_REQUEST_MALFORMED"} 1');
  expect(faults).toEqual([]);
  expect(ports.alarmCommands).toEqual([]);
});

test('a body that goes on after a refusal cannot become the next request', async () => {
  await start();
  const smuggled = `GET /api/alarms HTTP/1.1\r\nHost: 127.0.0.1:${web.port}\r\n\r\n`;
  const text = await raw(
    web.port,
    `${head('POST /api/holds HTTP/1.1')}Content-Type: text/plain\r\nContent-Length: ${smuggled.length}\r\nConnection: close\r\n\r\n${smuggled}`,
  );
  expect(text.match(/HTTP\/1\.1 /g)?.length).toBe(1);
  expect(text).toContain('WEB_BODY_NOT_JSON');
});
