/**
 * Real input by a real client: a year of hourly temperatures, published by Debian's mosquitto_pub,
 * raises and clears; the ledger, the HTTP interface, a replay of the folder and a replay of the
 * same data from CSV tell the same alarms.
 *
 * Data: seattle-weather-hourly-normals.csv of vega-datasets, hourly normals 1981 to 2010 of NOAA.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { forebond, scratchFolder, siteFile, startAgentProcess } from '#tests/agent-process.ts';
import { ledgerOf } from './ledger-lines.ts';

const file = join(
  import.meta.dirname,
  '../../node_modules/vega-datasets/data/seattle-weather-hourly-normals.csv',
);
const rows = readFileSync(file, 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [date, , temperature] = line.split(',');
    return { atMs: Date.parse(`${date}Z`), value: Number(temperature) };
  });

interface Reading {
  readonly atMs: number;
  readonly value: number;
}

const signal = 'mounts/store-1/wall';
const secret = 'a-secret-for-the-wall-0123456789';

const siteWith = (onDelay: string) => ({
  site: 'works',
  timezone: 'America/Los_Angeles',
  lines: {
    mounts: {
      'store-1': {
        kind: 'adhesive-store',
        signals: {
          wall: {
            topic: signal,
            payload: { kind: 'json', value: '/v', time: '/t' },
            unit: 'Cel',
            resolution: 0.1,
          },
        },
        rules: {
          'cold-adhesive': {
            low: '4 Cel',
            low_low: '2 Cel',
            on_delay: onDelay,
            deadband: '0.1 K',
          },
        },
      },
    },
  },
});

const payloadOf = ({ atMs, value }: Reading): string =>
  `{"v":${value.toFixed(1)},"t":"${new Date(atMs).toISOString()}"}`;

/** mosquitto_pub, a line of its standard input a message; `feed` writes them. */
async function publish(
  mqtt: string,
  feed: (write: (line: string) => void) => Promise<void>,
): Promise<void> {
  const { hostname, port } = new URL(mqtt);
  const words = ['-h', hostname, '-p', port, '-u', 'wall', '-P', secret];
  const child = spawn('mosquitto_pub', [...words, '-t', signal, '-q', '1', '-l'], {
    stdio: ['pipe', 'inherit', 'inherit'],
  });
  const closed = once(child, 'close');
  await feed((line) => child.stdin.write(`${line}\n`));
  child.stdin.end();
  const [code] = await closed;
  expect(code).toBe(0);
}

interface Told {
  readonly occurrence: string;
  readonly transition: string;
  readonly judged: number;
  readonly state: string;
}

const linesOf = (stdout: string): string[] => stdout.trimEnd().split('\n');
/** Transitions of `replay --json`; its last line is the sum. */
const replayed = async (site: string, from: string): Promise<string[]> => {
  const { code, stdout, stderr } = await forebond([
    'replay',
    '--site',
    site,
    '--from',
    from,
    '--json',
  ]);
  expect([code, stderr]).toEqual([0, '']);
  return linesOf(stdout).slice(0, -1);
};

/** A line of `replay --json` as the ledger would have it. */
const ofLedger = (record: Record<string, unknown>): string => {
  const { at, occurrence, rule, signal, transition, evidence, priority, judged, to, severity } =
    record;
  const { value = null, limit = null } = evidence as { value?: number; limit?: number };
  const words = { unit: 'Cel', priority, safety_label: 'NOTICE', judged, state: to, severity };
  return JSON.stringify({ at, occurrence, rule, signal, transition, value, limit, ...words });
};

async function alarmsOf(page: string): Promise<string[]> {
  const answer = await fetch(new URL('/api/alarms?since=0&limit=5000', page));
  const { alarms, truncated } = (await answer.json()) as {
    truncated: boolean;
    alarms: { occurrence: string; transitions: { at: number; transition: string; to: string }[] }[];
  };
  expect(truncated).toBe(false);
  return alarms
    .flatMap(({ occurrence, transitions }) =>
      transitions.map(({ at, transition, to }) => `${at} ${occurrence} ${transition} ${to}`),
    )
    .sort();
}

/** Publishes, stops, and holds all four tellings against each other; gives the transitions. */
async function sameEverywhere(
  readings: readonly Reading[],
  clock: 'wall' | 'samples',
  onDelay: string,
  feed: (write: (line: string) => void) => Promise<void>,
): Promise<Told[]> {
  const folder = scratchFolder();
  const site = siteFile(join(folder, 'works'), siteWith(onDelay));
  const data = join(folder, 'data');
  const csv = join(folder, 'recorded.csv');
  const cells = readings.map(({ atMs, value }) => `${atMs},${signal},${value.toFixed(1)}`);
  writeFileSync(csv, `time,signal,value\n${cells.join('\n')}\n`);
  const words = ['device', 'add', 'wall', '--publish', signal, '--secret-stdin', '--data', data];
  expect((await forebond(words, `${secret}\n`)).code).toBe(0);

  const agent = await startAgentProcess({ site, folder: data, clock });
  await publish(agent.mqtt, feed);
  await sleep(clock === 'wall' ? 2_500 : 1_300);
  const alarms = await alarmsOf(agent.page);
  const ended = await agent.stop();
  expect([ended.code, ended.stderr]).toEqual([0, '']);

  const fromFolder = await replayed(site, data);
  expect(await replayed(site, csv)).toEqual(fromFolder);
  const entered = ledgerOf(data).filter(({ type }) => type === 'transition');
  expect(entered.map(ofLedger)).toEqual(fromFolder);
  const told = fromFolder.map((line): Told => JSON.parse(line));
  const flat = told.map((t) => `${t.judged} ${t.occurrence} ${t.transition} ${t.state}`);
  expect(alarms).toEqual(flat.sort());
  return told;
}

const raises = (told: readonly Told[], transition: string): number =>
  told.filter((each) => each.transition === transition).length;

const allAtOnce = (readings: readonly Reading[]) => async (write: (line: string) => void) => {
  for (const reading of readings) write(payloadOf(reading));
};

test('a year as it is, by its own clock', async () => {
  expect(rows.length).toBe(8_759);
  const told = await sameEverywhere(rows, 'samples', '90 min', allAtOnce(rows));
  expect(raises(told, 'raised')).toBeGreaterThan(10);
  expect(raises(told, 'returned')).toBeGreaterThan(10);
}, 60_000);

test('the year moved to this one', async () => {
  const moved = rows.map(({ atMs, value }) => {
    const date = new Date(atMs);
    return { atMs: date.setUTCFullYear(new Date().getUTCFullYear()), value };
  });
  const told = await sameEverywhere(moved, 'samples', '90 min', allAtOnce(moved));
  expect(raises(told, 'raised')).toBeGreaterThan(10);
  expect(raises(told, 'returned')).toBeGreaterThan(10);
}, 60_000);

test('500 of them now, 20 ms apart, by the wall clock', async () => {
  const readings: Reading[] = rows.slice(0, 500).map(({ value }) => ({ atMs: 0, value }));
  const startMs = Date.now() + 1_500;
  for (const [i, reading] of readings.entries())
    readings[i] = { ...reading, atMs: startMs + i * 20 };
  const told = await sameEverywhere(readings, 'wall', '30 ms', async (write) => {
    for (const reading of readings) {
      await sleep(Math.max(0, reading.atMs - Date.now()));
      write(payloadOf(reading));
    }
  });
  expect(raises(told, 'raised')).toBe(3);
  expect(raises(told, 'returned')).toBe(3);
}, 60_000);
