/** Readings that come too late, and those that are uncertain: kept, and told apart on every way out. */
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  addDevice,
  connectDevice,
  forebond,
  published,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { get, until } from './agent-http.ts';

const site = {
  site: 'works',
  timezone: 'Europe/Dublin',
  lines: {
    a: {
      bench: {
        kind: 'custom',
        signals: {
          t: {
            topic: 'bench/t',
            payload: { kind: 'json', value: '/v', time: '/t', quality: '/q' },
            unit: 'Cel',
            resolution: 0.1,
          },
        },
      },
    },
  },
};

interface Seen {
  readonly signals: { readonly value: number | null; readonly late_at: number | null }[];
}
interface Series {
  readonly points: (readonly (number | null)[])[];
  readonly uncertain: number[];
}

test('a reading of 1970 is never good: not in the export, the series or the API', async () => {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const device = await addDevice(folder, 'hall', { publish: ['bench/#'] });
  const agent = await startAgentProcess({ site: siteFile(parent, site), folder });
  const client = await connectDevice(agent.mqtt, device);
  const begin = Date.now() - 60_000;
  await published(client, 'bench/t', { v: 21, t: new Date(begin).toISOString(), q: 'good' });
  await published(client, 'bench/t', {
    v: 22,
    t: new Date(begin + 1_000).toISOString(),
    q: 'uncertain',
  });
  await published(client, 'bench/t', { v: 20, t: '1970-01-01T00:00:07Z', q: 'good' });
  const { body } = await until(
    () => get<Seen>(agent.page, '/api/signals'),
    (seen) => seen.body.signals[0]?.late_at === 7_000,
  );
  expect(body.signals[0]?.value).toBe(22);
  const id = encodeURIComponent('a/bench/t');
  const of = async (since: number, to: number): Promise<Series> =>
    (await get<Series>(agent.page, `/api/signals/${id}/series?since=${since}&until=${to}&points=1`))
      .body;
  // Drawn where its own time puts it, and counted as in doubt.
  expect((await of(0, 60_000)).points).toEqual([[0, 20, 20, 20, 1, 0]]);
  expect((await of(0, 60_000)).uncertain).toEqual([1]);
  const now = await of(begin - 1_000, begin + 5_000);
  expect([now.points[0]?.[4], now.uncertain]).toEqual([2, [1]]);
  // A reading in time, and the late one is no news any more.
  await published(client, 'bench/t', {
    v: 23,
    t: new Date(begin + 2_000).toISOString(),
    q: 'good',
  });
  await until(
    () => get<Seen>(agent.page, '/api/signals'),
    (seen) => seen.body.signals[0]?.late_at === null,
  );
  client.end(true);
  expect((await agent.stop()).code).toBe(0);
  const { stdout, code } = await forebond(['export', '--data', folder, '--signal', 'a/bench/t']);
  expect(code).toBe(0);
  const rows = stdout.trim().split('\r\n');
  expect(rows[0]).toBe('time,signal,value,unit,quality,cause');
  expect(rows.slice(1).map((row) => row.replace(/^[^,]+,/, ''))).toEqual([
    'a/bench/t,20,Cel,uncertain,late: kept and not judged',
    'a/bench/t,21,Cel,good,',
    'a/bench/t,22,Cel,uncertain,the sensor marked it uncertain',
    'a/bench/t,23,Cel,good,',
  ]);
});
