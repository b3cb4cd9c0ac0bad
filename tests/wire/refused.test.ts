/** What devices send that cannot be used, through a whole agent: told at /api/refused, in the log and in health. */
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { get, type HealthSeen, until } from './agent-http.ts';
import { prepSite } from './prep-site.ts';

interface Refused {
  readonly topics: readonly {
    readonly topic: string;
    readonly count: number;
    readonly standing: boolean;
    readonly messages: readonly Readonly<Record<string, unknown>>[];
  }[];
}

const loggedBy = (stderr: string) =>
  stderr
    .split('\n')
    .filter((line) => line.includes('a message was refused'))
    .map((line) => JSON.parse(line) as { topic: string; reason: string; from: string });

test('marks of a scanner and readings of a sensor: who sent what, what was looked for, what was found', async () => {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  const device = await addDevice(data, 'scanner');
  const agent = await startAgentProcess({ site: prepSite(60_000), folder: data });
  const client = await connectDevice(agent.mqtt, device);
  const begun = Date.now();
  await published(client, 'prep/blasted', '  ');
  await published(client, 'prep/coated', { rak: 'R-12', t: begun });
  await published(client, 'prep/coated', { rak: 'R-13', t: begun });
  await published(client, 'prep/coated', 'R-12');
  const aheadMs = 1_132 * 86_400_000 + 12_345_678;
  await published(client, 'prep/coated', { rack: 'R-12', t: begun + aheadMs });
  await published(client, 'prep/air', '21,5 °C');
  const { body } = await until(
    () => get<Refused>(agent.page, '/api/refused'),
    (seen) => seen.body.topics.reduce((sum, { count }) => sum + count, 0) === 6,
  );
  const of = (topic: string) => body.topics.find((each) => each.topic === topic);
  expect(of('prep/blasted')).toMatchObject({ standing: true, count: 1 });
  expect(of('prep/blasted')!.messages).toMatchObject([
    { signal: 'm/prep/blasted', reason: 'no-item', from: 'scanner', begins: '  ', bytes: 2 },
  ]);
  const coated = of('prep/coated')!.messages;
  expect(coated).toMatchObject([
    { reason: 'no-item', looked_for: '/rack', found: 'nothing; there is /rak, /t' },
    { reason: 'no-item', begins: `{"rak":"R-13","t":${begun}}` },
    { reason: 'not-json', looked_for: '/rack', found: 'no JSON' },
    { reason: 'mark-refused', from: 'scanner', why: expect.stringMatching(/1132 days ahead/) },
  ]);
  for (const { at, why, fix } of coated) {
    expect(at).toBeGreaterThanOrEqual(begun - 1_000);
    expect(why).toMatch(/\w{3}.*\.$/);
    expect(fix).toMatch(/\w{3}.*\.$/);
  }
  expect(of('prep/air')!.messages).toMatchObject([
    { reason: 'not-a-number', from: 'scanner', looked_for: null, found: 'the text "21,5 °C"' },
  ]);
  const health = await get<HealthSeen>(agent.page, '/api/health');
  expect(health.body.notes.sensors).toMatch(/prep\/coated/);

  // One of use settles it.
  await published(client, 'prep/coated', { rack: 'R-12', t: Date.now() });
  await until(
    () => get<Refused>(agent.page, '/api/refused'),
    (seen) => seen.body.topics.some(({ topic, standing }) => topic === 'prep/coated' && !standing),
  );
  client.end(true);
  await agent.stop();
  // Once per topic and cause, however often it comes.
  const logged = loggedBy(agent.stderr());
  expect(logged.map(({ topic, reason }) => `${topic} ${reason}`)).toEqual([
    'prep/blasted no-item',
    'prep/coated no-item',
    'prep/coated not-json',
    'prep/coated mark-refused',
    'prep/air not-a-number',
  ]);
  expect(logged.every(({ from }) => from === 'scanner')).toBe(true);
});
