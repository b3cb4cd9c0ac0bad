/** `replay --compare` as a person runs it: two site files over one recording. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { connectAsync } from 'mqtt';
import { expect, test } from 'vitest';
import {
  forebond,
  published,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';

const plain = { kind: 'plain' };

const site = (rules: object, payload: object = plain): object => ({
  site: 'works',
  timezone: 'Etc/UTC',
  lines: {
    m: {
      room: {
        kind: 'custom',
        signals: {
          air: { topic: 'm/air', payload, unit: 'Cel', resolution: 0.1 },
        },
        rules,
      },
    },
  },
});
const hot = (high: string, more: object = {}): object => ({
  kind: 'band',
  signal: 'air',
  high,
  on_delay: '0 s',
  priority: 'low',
  consequence: 'It is hot.',
  actions: ['Cool it.'],
  ...more,
});

/** One reading a minute: 20 °C, with a peak of 30 °C at 01:00 to 01:30 and one of 40 °C from 03:00 on. */
const recording = (): string => {
  const lines = ['time,signal,value'];
  for (let minute = 0; minute < 240; minute += 1) {
    const value = minute >= 180 ? 40 : minute >= 60 && minute < 90 ? 30 : 20;
    const at = new Date(Date.UTC(2026, 0, 5, 0, minute)).toISOString();
    lines.push(`${at},m/room/air,${value}`);
  }
  return `${lines.join('\n')}\n`;
};

function scene() {
  const folder = scratchFolder();
  const csv = join(folder, 'recorded.csv');
  writeFileSync(csv, recording());
  const now = siteFile(join(folder, 'now'), site({ hot: hot('25 Cel'), gone: hot('35 Cel') }));
  const other = siteFile(
    join(folder, 'other'),
    site({ hot: hot('35 Cel', { on_delay: '10 min' }), fresh: hot('28 Cel') }),
  );
  return { csv, now, other };
}

test('alarms gained, lost and moved, and what people would hear', async () => {
  const { csv, now, other } = scene();
  const words = ['replay', '--site', now, '--from', csv, '--compare', other];
  const { code, stdout } = await forebond(words);
  expect(code).toBe(0);
  const lines = stdout.split('\n');
  const of = (word: string): string[] =>
    lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.replace(/ +/g, ' '));
  expect(of('gained')).toEqual([
    'gained 2026-01-05T01:00:00.000Z m/room/fresh 30 Cel 28 Cel',
    'gained 2026-01-05T03:00:00.000Z m/room/fresh 40 Cel 28 Cel',
  ]);
  expect(of('lost')).toEqual([
    'lost 2026-01-05T01:00:00.000Z m/room/hot 30 Cel 25 Cel',
    'lost 2026-01-05T03:00:00.000Z m/room/gone 40 Cel 35 Cel',
  ]);
  expect(of('moved')).toEqual([
    'moved 2026-01-05T03:10:00.000Z m/room/hot 40 Cel 35 Cel 10 min later',
  ]);
  expect(lines).toContain('2 gained, 2 lost, 1 moved, 0 the same');
  expect(lines).toContain('no such rule in the other: m/room/gone');
  expect(lines).toContain('a rule of the other alone: m/room/fresh');
  expect(of('alarms')).toEqual(['alarms told 3 3']);
});

test('as one JSON object a line', async () => {
  const { csv, now, other } = scene();
  const words = ['replay', '--site', now, '--from', csv, '--compare', other, '--json'];
  const { stdout } = await forebond(words);
  const lines = stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(lines.map(({ difference }) => difference)).toEqual([
    'gained',
    'gained',
    'lost',
    'lost',
    'moved',
    undefined,
  ]);
  expect(lines[4]).toMatchObject({ rule: 'm/room/hot', later_ms: 600_000, limit: 35, unit: 'Cel' });
  expect(lines[5]).toMatchObject({ same: 0, gained: 2, lost: 2, moved: 1, samples: 240 });
});

test('a site does not differ from itself', async () => {
  const { csv, now } = scene();
  const { stdout } = await forebond(['replay', '--site', now, '--from', csv, '--compare', now]);
  expect(stdout).toMatch(/^0 gained, 0 lost, 0 moved, 3 the same$/m);
});

test('what cannot be read is said once, with exit code 1', async () => {
  const { now, other } = scene();
  const words = ['replay', '--site', now, '--from', '/nowhere/at/all.csv', '--compare', other];
  const { code, stderr } = await forebond(words);
  expect([code, stderr.trimEnd().split('\n').length]).toEqual([1, 1]);
  const broken = join(scratchFolder(), 'broken.yaml');
  writeFileSync(broken, 'site: Works\n');
  const bad = await forebond(['replay', '--site', now, '--from', now, '--compare', broken]);
  expect(bad.code).toBe(1);
  expect(bad.stderr).toContain(`${broken}:1:`);
});

test('a data folder that had both sites: each side wholly under its own', async () => {
  const folder = scratchFolder();
  const data = join(folder, 'data');
  const payload = { kind: 'json', value: '/v', time: '/t' };
  const before = siteFile(join(folder, 'before'), site({ hot: hot('25 Cel') }, payload));
  const now = siteFile(join(folder, 'now'), site({ hot: hot('35 Cel') }, payload));
  let t = Date.UTC(2026, 0, 5);
  for (const file of [before, now]) {
    const agent = await startAgentProcess({ site: file, folder: data, clock: 'samples' });
    const client = await connectAsync(agent.mqtt, { reconnectPeriod: 0 });
    for (const v of [30, 20, 20]) {
      t += 60_000;
      await published(client, 'm/air', { v, t });
    }
    await client.endAsync();
    expect((await agent.stop()).code).toBe(0);
  }
  const words = ['replay', '--site', now, '--from', data, '--compare', before];
  const { stdout } = await forebond(words);
  const told = stdout.split('\n').find((line) => line.startsWith('alarms told'));
  expect(told?.replace(/ +/g, ' ')).toBe('alarms told 0 2');
  // And without it, a site the folder once had is no less the one that is asked for.
  const once = await forebond(['replay', '--site', before, '--from', data]);
  expect(once.stdout.match(/raised/g)).toHaveLength(2);
  const last = await forebond(['replay', '--site', now, '--from', data]);
  expect(last.stdout.match(/raised/g)).toHaveLength(1);
}, 120_000);

test('a record of minutes has no rate a day', async () => {
  const { now, other } = scene();
  const short = join(scratchFolder(), 'short.csv');
  const rows = [20, 40, 20, 40].map(
    (value, i) =>
      `${new Date(Date.UTC(2026, 0, 5, 0, 0, 20 * i)).toISOString()},m/room/air,${value}`,
  );
  writeFileSync(short, `time,signal,value\n${rows.join('\n')}\n`);
  const words = ['replay', '--site', now, '--from', short, '--compare', other];
  const { stdout } = await forebond(words);
  expect(stdout).toMatch(/^a day +too short for a rate$/m);
  expect(stdout).toMatch(/^alarms told +[1-9]/m);
  const json = await forebond([...words, '--json']);
  const { load } = JSON.parse(json.stdout.trimEnd().split('\n').at(-1)!);
  expect(load[0]).toMatchObject({ perDay: null, perHour: null, perTenMinutes: null });
});
