/**
 * Own rules that fail in each way there is, in a real agent: they are named and switched off, the
 * rest goes on telling, and a replay of the folder gives what the ledger holds.
 */
import { join } from 'node:path';
import { connectAsync, type MqttClient } from 'mqtt';
import { expect, onTestFinished, test } from 'vitest';
import {
  type AgentProcess,
  forebond,
  scratchFolder,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { alarms, get, type HealthSeen, post, until } from './agent-http.ts';
import { ledgerOf } from './ledger-lines.ts';
import { ownKind, ownSite, sound, writeOwn } from './own-rules-site.ts';

interface Scene {
  readonly site: string;
  readonly agent: AgentProcess;
  readonly client: MqttClient;
  readonly say: (name: 'a' | 'b', value: number) => Promise<unknown>;
}

async function scene(text: string): Promise<Scene> {
  const folder = scratchFolder();
  const site = ownSite(folder, text);
  const agent = await startAgentProcess({ site, folder: join(folder, 'data') });
  const client = await connectAsync(agent.mqtt);
  onTestFinished(() => void client.end(true));
  const say = (name: string, v: number) =>
    client.publishAsync(`m/${name}`, JSON.stringify({ v }), { qos: 1 });
  return { site, agent, client, say };
}

const stateOf = async (page: string, rule: string): Promise<string | null> =>
  (await alarms(page)).find((alarm) => alarm.rule === `m/bench/${rule}`)?.state ?? null;

const raised = (page: string, rule: string): Promise<unknown> =>
  until(
    () => stateOf(page, rule),
    (state) => state === 'unacknowledged',
  );

const health = async (page: string): Promise<HealthSeen> =>
  (await get<HealthSeen>(page, '/api/health')).body;

/** It is off, and everybody says so: health, coverage, ledger. */
async function saysOff(
  { agent }: { readonly agent: Pick<AgentProcess, 'page' | 'folder'> },
  why: RegExp,
): Promise<void> {
  const { notes, parts } = await until(
    () => health(agent.page),
    ({ parts: { rules } }) => rules !== 'good',
  );
  expect(parts.rules).toBe('out-of-specification');
  expect(notes.rules).toMatch(/^rules\/own\.ts is off: /);
  expect(notes.rules).toMatch(why);
  const { body } = await get<{ stations: { hazards: object[] }[] }>(agent.page, '/api/coverage');
  expect(body.stations[0]!.hazards).toContainEqual(
    expect.objectContaining({
      state: 'not-watched',
      why: expect.stringMatching(/^m\/bench\/own is not judged: rules\/own\.ts is off: /),
    }),
  );
  const off = ledgerOf(agent.folder).filter(({ type }) => type === 'extension');
  expect(off).toHaveLength(1);
  expect(off[0]!.extension).toMatch(/^rules\/own\.ts@[0-9a-f]{16}$/);
  expect(off[0]!.off).toMatch(why);
}

const told = (folder: string): unknown[] =>
  ledgerOf(folder)
    .filter(({ type }) => type === 'transition')
    .map(({ rule, transition, judged }) => [rule, transition, judged]);

/** What was judged live is what a replay of the folder judges. */
async function replaysAsTold(site: string, folder: string): Promise<void> {
  const replayed = await forebond(['replay', '--site', site, '--from', folder, '--json']);
  expect(replayed.stderr).toBe('');
  const seen = replayed.stdout
    .trimEnd()
    .split('\n')
    .map((text) => JSON.parse(text))
    .filter((each) => each.transition !== undefined)
    .map(({ rule, transition, judged }) => [rule, transition, judged]);
  expect(seen).toEqual(told(folder));
  expect(ledgerOf(folder).filter(({ type }) => type === 'recovered-differs')).toEqual([]);
}

/** It judged before it failed; the rules of everybody judge on; a restart keeps it off. */
async function failsAlone(failing: string, why: RegExp): Promise<void> {
  const { site, agent, say, client } = await scene(failing);
  await say('a', 35);
  await raised(agent.page, 'own');
  for (let i = 0; i < 4; i += 1) await say('a', 90 + i);
  await saysOff({ agent }, why);
  await raised(agent.page, 'plain');
  await say('b', 45);
  await raised(agent.page, 'far');
  // What it told before stands, and nobody says that it is over.
  await say('a', 20);
  await until(
    () => stateOf(agent.page, 'plain'),
    (state) => state === 'returned-unacknowledged',
  );
  expect(await stateOf(agent.page, 'own')).toBe('unacknowledged');
  await client.endAsync();
  await agent.stop();
  await replaysAsTold(site, agent.folder);

  const again = await startAgentProcess({ site, folder: agent.folder });
  await saysOff({ agent: again }, why);
  await again.stop();
  await replaysAsTold(site, agent.folder);
}

const over = (what: string): string =>
  ownKind(`if (reading.value >= 90) { ${what} } return reading.value > limit ? 1 : 0;`);

test('it throws: off after three times, with the line', async () => {
  await failsAlone(
    over('throw new Error("no such probe");'),
    /failed 3 times.*own\.sample: line \d+: no such probe/,
  );
}, 60_000);

test('it answers nonsense: off after three times, with what it answered', async () => {
  await failsAlone(over('return 7;'), /failed 3 times.*own\.sample: answered 7, not 0, 1 or 2/);
}, 60_000);

test('it takes a second: off at once', async () => {
  // A little more than a second: the two clocks that measure it may differ by a millisecond.
  const busy = 'const until = Date.now() + 1_050; while (Date.now() < until) {}';
  await failsAlone(over(busy), /one call took \d{4,} ms/);
}, 60_000);

test('it never comes back: the agent ends, starts again without it, and tells the rest', async () => {
  const { site, agent, say, client } = await scene(over('for (;;) {}'));
  await say('a', 35);
  await raised(agent.page, 'own');
  // Acknowledged or not: the last publishes may find nobody.
  client.publish('m/a', JSON.stringify({ v: 95 }), { qos: 0 });
  const ready = await agent.readyAgain();
  await saysOff({ agent: ready }, /did not come back within 5 s/);
  expect(await stateOf(ready.page, 'own')).toBe('unacknowledged');
  const after = await connectAsync(ready.mqtt);
  onTestFinished(() => void after.end(true));
  await after.publishAsync('m/a', '{"v":92}', { qos: 1 });
  await raised(ready.page, 'plain');
  await after.publishAsync('m/b', '{"v":45}', { qos: 1 });
  await raised(ready.page, 'far');
  await after.endAsync();
  const end = await agent.stop();
  expect(end.code).toBe(0);
  expect(end.stderr).toMatch(/own rules did not come back/);
  await replaysAsTold(site, agent.folder);
}, 90_000);

test('what was on disk when it stood still is judged by the others, and replayed so', async () => {
  const { site, agent, client } = await scene(over('for (;;) {}'));
  // One beat holds them all; the reading that never ends stands in the middle of it.
  const payload = (v: number): string => JSON.stringify({ v });
  // Whether each of them is acknowledged is the restart's to say: nobody waits for it.
  void Promise.allSettled([
    client.publishAsync('m/b', payload(45), { qos: 1 }),
    client.publishAsync('m/a', payload(35), { qos: 1 }),
    client.publishAsync('m/a', payload(95), { qos: 1 }),
    client.publishAsync('m/b', payload(46), { qos: 1 }),
  ]);
  const ready = await agent.readyAgain();
  await saysOff({ agent: ready }, /did not come back/);
  client.end(true);
  await agent.stop();
  await replaysAsTold(site, agent.folder);
}, 90_000);

test('the agent ends with the process that looks after it', async () => {
  const { agent, client } = await scene(sound);
  await client.endAsync();
  await agent.kill();
  await until(
    () =>
      fetch(agent.page).then(
        () => true,
        () => false,
      ),
    (answers) => !answers,
  );
}, 60_000);

test('a mended file is taken by loading the site; an unmended one by switching it on', async () => {
  const { site, agent, say, client } = await scene(over('throw new Error("no");'));
  const ownRules = async (): Promise<unknown> =>
    (await get<{ files: unknown[] }>(agent.page, '/api/own-rules')).body.files[0];
  for (let i = 0; i < 4; i += 1) await say('a', 90 + i);
  await saysOff({ agent }, /failed 3 times/);

  // As it is, it fails again, and is off again.
  const on = await post<object>(agent.page, '/api/own-rules/switch-on', { file: 'rules/own.ts' });
  expect([on.status, on.body]).toEqual([200, expect.objectContaining({ state: 'on', why: null })]);
  expect((await health(agent.page)).parts.rules).toBe('good');
  const none = await post<object>(agent.page, '/api/own-rules/switch-on', { file: 'rules/no.ts' });
  expect([none.status, none.body]).toEqual([
    404,
    expect.objectContaining({ code: 'OWN_RULES_UNKNOWN' }),
  ]);
  for (let i = 0; i < 4; i += 1) await say('a', 90 + i);
  await until(ownRules, (file) => JSON.stringify(file).includes('"off"'));

  // A broken text is refused with its line, and what runs goes on.
  writeOwn(site, `${sound}\nenum Broken { A }`);
  const wrong = await post<{ problems: string[] }>(agent.page, '/api/site/reload');
  expect(wrong.status).toBe(422);
  expect(wrong.body.problems[0]).toMatch(
    /rules\/own\.ts:\d+:1 extensions\.0: TypeScript enum is not supported/,
  );

  writeOwn(site, sound);
  const mended = await post<{ changes: object[] }>(agent.page, '/api/site/reload');
  expect(mended.body.changes).toEqual([
    { path: 'extension_texts.rules/own.ts', before: expect.any(String), after: expect.any(String) },
  ]);
  await say('a', 95);
  await raised(agent.page, 'own');
  expect(await ownRules()).toMatchObject({ state: 'on', rules: ['m/bench/own'] });
  expect((await health(agent.page)).parts.rules).toBe('good');

  const switched = ledgerOf(agent.folder).filter(({ type }) => type === 'extension');
  expect(switched.map(({ off, by }) => [off === null, by])).toEqual([
    [false, undefined],
    [true, 'local'],
    [false, undefined],
  ]);
  await client.endAsync();
  await agent.stop();
  await replaysAsTold(site, agent.folder);
}, 90_000);

test('check names what is broken with its line, and says whose rights own rules have', async () => {
  const site = ownSite(scratchFolder(), sound);
  const good = await forebond(['check', site]);
  expect([good.code, good.stdout]).toEqual([
    0,
    expect.stringContaining('rules/own.ts runs with the agent’s rights; check it like a program'),
  ]);
  const broken: readonly (readonly [text: string, says: RegExp])[] = [
    ['\n\nenum A { B }\nexport default () => ({});', /own\.ts:3:1 .*enum is not supported/],
    ['import fs from "node:fs";\nexport default () => ({});', /own\.ts:1:1 .*it imports something/],
    ['export default () => {\n  throw new Error("no");\n};', /own\.ts:2:9 .*: no\./],
    ['export default () => (', /own\.ts:1:\d+ .*it cannot be read/],
    ['process.exit(0);', /own\.ts:1:1 .*it ends the process/],
    ['for (;;) {}', /own\.ts:1:1 .*it does not come back: over 5 s/],
    [sound.replace("read.limit('high')", 'read.limit().no'), /own\.compile: line \d+: /],
    [sound.replace('version: 1', 'version: 0'), /own: version is 0/],
    [sound.replace("name: 'own'", "name: 'band'"), /own\.ts:6:7 .*there is a kind band already/],
  ];
  for (const [text, says] of broken) {
    writeOwn(site, text);
    const { code, stdout } = await forebond(['check', site]);
    expect([code, stdout]).toEqual([1, expect.stringMatching(says)]);
  }
}, 120_000);
