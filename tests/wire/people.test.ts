/**
 * People on a whole agent: from the first link to what the box can do, over a restart and a SIGKILL;
 * and that no secret of theirs is found anywhere afterwards.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { send } from '../agent/web/wire.ts';
import {
  type AgentProcess,
  type AgentStart,
  forebond,
  scratchFolder,
  startAgentProcess,
} from '../agent-process.ts';

const site = {
  site: 'harbour-works',
  timezone: 'Europe/Dublin',
  lines: {
    m: {
      bench: {
        kind: 'custom',
        signals: { t: { topic: 'bench/t', payload: { kind: 'plain' }, unit: 'Cel' } },
        rules: {
          hot: {
            ...{ kind: 'band', signal: 't', high: '30 Cel', on_delay: '0 s', priority: 'low' },
            ...{ consequence: 'Hot.', actions: ['Look.'] },
          },
        },
      },
    },
  },
};
const password = 'purple tractor under ninth bridge';
const other = 'seven wet lanterns on gravel';

interface Asked {
  readonly status: number;
  readonly json: Record<string, unknown>;
  readonly cookie: string;
  readonly text: string;
}

const ask = async (
  agent: AgentProcess,
  path: string,
  headers: Record<string, string> = {},
  body?: object,
): Promise<Asked> => {
  const answer = await send(Number(new URL(agent.page).port), {
    ...{ path, method: body === undefined ? 'GET' : 'POST' },
    headers: body === undefined ? headers : { ...headers, 'content-type': 'application/json' },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const given = [answer.headers['set-cookie'] ?? []].flat()[0] ?? '';
  return {
    status: answer.status,
    json: JSON.parse(answer.text),
    cookie: given.split(';')[0] ?? '',
    text: answer.text,
  };
};
const secretIn = (text: string): string => /invitation\/([\w-]{43})/.exec(text)?.[1] ?? '';

/** Every byte the folder holds, and all that was said. */
const allOf = (folder: string): string =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'ballast')
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'latin1'))
    .join('\n');

/** The ledger whole, no secret anywhere, and nothing of somebody who was removed but an id. */
async function leftBehind(data: string, secrets: readonly string[], said: string): Promise<void> {
  const box = (...words: string[]) => forebond([...words, '--data', data]);
  const verified = await forebond(['ledger', 'verify', '--data', data]);
  expect([verified.code, verified.stdout]).toEqual([0, expect.stringContaining('whole')]);
  const listed = JSON.parse((await box('user', 'list', '--json')).stdout) as { id: string }[];
  expect(listed).toMatchObject([{ name: 'Ann Byrne', role: 'administrator', joined: true }]);
  const everything = allOf(data);
  expect(everything).toContain('"what":"joined"');
  expect(everything).toContain('"what":"token-added"');
  for (const each of secrets) {
    expect(each.length).toBeGreaterThan(10);
    expect(everything.includes(each), 'a secret on disk').toBe(false);
    expect(said.includes(each), 'a secret that was said').toBe(false);
  }
  expect((await box('user', 'remove', 'Ann Byrne')).code).toBe(0);
  expect(allOf(data)).not.toContain('Ann Byrne');
  expect(allOf(data)).toContain(listed[0]!.id);
}

test('from the first link on, over restarts, and no secret left anywhere', async () => {
  const folder = scratchFolder();
  const start: AgentStart = { site, folder: join(folder, 'data'), words: ['--people'] };
  const data = start.folder;
  const secrets: string[] = [password, other];
  const said: string[] = [];

  let agent = await startAgentProcess(start);
  expect((await ask(agent, '/api/alarms')).status).toBe(401);
  await agent.stop().then(({ stdout, stderr }) => {
    secrets.push(secretIn(stdout));
    expect(secretIn(stdout)).not.toBe('');
    said.push(stderr);
  });
  // Its link went with the process; the box lets the first one in as well.
  agent = await startAgentProcess(start);
  const gone = await ask(agent, '/api/invitation', {}, { secret: secrets.at(-1) });
  expect(gone.json.code).toBe('PEOPLE_INVITATION_UNUSABLE');
  const box = (...words: string[]) => forebond([...words, '--data', data]);
  const added = await box('user', 'add', 'Ann Byrne', '--role', 'administrator');
  expect([added.code, added.stderr]).toEqual([0, '']);
  expect(added.stdout).toContain(`link ${agent.page}/#/invitation/`);
  expect(added.stdout).toContain('no phone reaches it');
  expect(added.stdout).toContain(`--http 0.0.0.0:${new URL(agent.page).port} --people --name NAME`);
  const secret = secretIn(added.stdout);
  secrets.push(secret);
  const accepted = await ask(agent, '/api/invitation/accept', {}, { secret, password });
  expect(accepted.status, accepted.text).toBe(200);
  const value = accepted.cookie.split('=')[1]!;
  secrets.push(value);
  said.push((await agent.kill()).stderr);

  agent = await startAgentProcess({ ...start, words: [] });
  // A cookie is named after the port, which the test has chosen anew.
  const ann = { cookie: `forebond-${new URL(agent.page).port}=${value}` };
  expect((await ask(agent, '/api/me', ann)).json).toMatchObject({ person: { name: 'Ann Byrne' } });
  // Nobody named --people this time: who is there is asked for all the same.
  expect((await ask(agent, '/api/alarms')).status).toBe(401);
  const token = await box('token', 'add', 'wall', '--role', 'reader', '--days', '3');
  const bearer = /token (\S+)/.exec(token.stdout)?.[1] ?? '';
  secrets.push(bearer);
  const authorization = `Bearer ${bearer}`;
  expect((await ask(agent, '/api/alarms', { authorization })).status).toBe(200);
  for (const wrong of ['planted-wrong-password-1', 'planted-wrong-password-2']) {
    secrets.push(wrong);
    const refused = await ask(agent, '/api/session', {}, { name: 'Ann Byrne', password: wrong });
    expect(refused.status).toBe(401);
    said.push(refused.text);
  }
  const given = await forebond(
    [...['user', 'reset', 'Ann Byrne', '--password-stdin'], '--data', data],
    `${other}\n`,
  );
  expect(given.code).toBe(0);
  said.push(given.stdout, given.stderr);
  expect((await ask(agent, '/api/alarms', ann)).status).toBe(401);
  const again = await ask(agent, '/api/session', {}, { name: 'ann byrne', password: other });
  expect(again.status).toBe(200);
  secrets.push(again.cookie.split('=')[1]!);
  said.push((await agent.stop()).stderr);

  await leftBehind(data, secrets, said.join('\n'));
}, 90_000);

test('the box says what is wrong in one line', async () => {
  const folder = join(scratchFolder(), 'data');
  const agent = await startAgentProcess({ site, folder });
  const box = async (input: string, ...words: string[]) => {
    const { code, stderr } = await forebond([...words, '--data', folder], input);
    return [code, stderr.trim()];
  };
  expect(await box('', 'user', 'remove', 'Nobody')).toEqual([
    1,
    'There is nobody "Nobody". forebond user list, or the page, shows who is there.',
  ]);
  const stdin = ['user', 'add', 'Bob', '--role', 'operator', '--password-stdin'] as const;
  expect(await box('short\n', ...stdin)).toEqual([1, expect.stringMatching(/^The password has 5/)]);
  expect(await box('', ...stdin)).toEqual([1, expect.stringMatching(/^No password came/)]);
  expect((await box('', 'user', 'add', 'Bob', '--role', 'boss'))[0]).toBe(2);
  expect((await box('', 'token', 'add', 'x', '--role', 'reader', '--days', '9999'))[0]).toBe(2);
  expect(await box('', 'token', 'remove', 't-x')).toEqual([
    1,
    expect.stringMatching(/^There is no token "t-x"/),
  ]);
  const far = await forebond([
    ...['run', '--site', join(`${folder}.site`, 'site.yaml'), '--data', `${folder}2`],
    ...['--http', '0.0.0.0:0', '--mqtt', '127.0.0.1:0'],
  ]);
  expect([far.code, far.stderr]).toEqual([1, expect.stringMatching(/start with --people/)]);
  await agent.stop();
});
