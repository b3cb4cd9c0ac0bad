/** Alarm performance of a running agent: three hot hours by the samples' clock, one of them answered. */
import { expect, test } from 'vitest';
import {
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { alarms, commandOf, get, post, until } from './agent-http.ts';
import { ledgerOf } from './ledger-lines.ts';

const site = {
  site: 'works',
  timezone: 'Etc/UTC',
  shifts: ['06:00', '18:00'],
  lines: {
    m: {
      room: {
        kind: 'custom',
        signals: {
          air: {
            topic: 'm/air',
            payload: { kind: 'json', value: '/v', time: '/t' },
            unit: 'Cel',
            resolution: 0.1,
            hold: '0 s',
          },
        },
        rules: {
          hot: {
            kind: 'band',
            signal: 'air',
            high: '30 Cel',
            on_delay: '0 s',
            priority: 'high',
            consequence: 'It is hot.',
            actions: ['Cool it.'],
          },
        },
      },
    },
  },
};
const hour = 3_600_000;
const day = Date.UTC(2026, 0, 5);

interface Load {
  readonly figures: {
    readonly told: number;
    readonly per_hour: number;
    readonly per_day: number;
    readonly top_ten: readonly { readonly rule: string; readonly count: number }[];
    readonly by_priority: {
      readonly high: { readonly answered: number; readonly unanswered: number };
    };
  };
  readonly counted_from: number;
  readonly shifts: readonly {
    readonly begins_min: number;
    readonly told: number;
    readonly hours: number;
    readonly per_hour: number;
  }[];
  readonly needed: readonly object[];
  readonly enough: boolean;
}

test('counts what people heard, by shift, and what they said of it', async () => {
  const folder = scratchFolder();
  const device = await addDevice(folder, 'oven');
  const agent = await startAgentProcess({ site, folder, clock: 'samples' });
  const client = await connectDevice(agent.mqtt, device);
  const say = (atMs: number, v: number) =>
    published(client, 'm/air', { v, t: new Date(atMs).toISOString() });
  // Hot for half an hour at 07:00, 08:00 and 19:00.
  for (const at of [7, 8, 19]) {
    await say(day + at * hour, 35);
    await say(day + (at + 0.5) * hour, 20);
    if (at === 8) {
      const found = await until(
        () => alarms(agent.page),
        (all) => all.some(({ state }) => state === 'returned-unacknowledged'),
      );
      await post(agent.page, commandOf(found[0]!.occurrence, 'acknowledge'));
    }
  }
  await say(day + 20 * hour, 20);
  const span = `since=${day}&until=${day + 24 * hour}`;
  const { body } = await until(
    () => get<Load>(agent.page, `/api/performance?${span}`),
    (answer) => answer.body.figures.told === 3,
  );
  expect(body.figures.top_ten).toEqual([{ rule: 'm/room/hot', count: 3, share: 1 }]);
  expect(body.figures.by_priority.high).toMatchObject({ answered: 1, unanswered: 2 });
  expect(body.shifts.map(({ begins_min, told }) => [begins_min, told])).toEqual([
    [360, 2],
    [1080, 1],
  ]);
  expect(body.enough).toBe(false);
  expect(
    (await get<Load>(agent.page, `/api/performance?${span}&line=other`)).body.figures.told,
  ).toBe(0);

  const last = (await alarms(agent.page))[0]!;
  expect(
    (await post(agent.page, commandOf(last.occurrence, 'needed'), { needed: false })).status,
  ).toBe(200);
  expect((await get<Load>(agent.page, `/api/performance?${span}`)).body.needed).toEqual([
    { rule: 'm/room/hot', yes: 0, no: 1 },
  ]);
  // Of what still holds nobody can say yet.
  await say(day + 21 * hour, 35);
  await say(day + 22 * hour, 35);
  const standing = await until(
    () => alarms(agent.page, '?state=unacknowledged'),
    (all) => all.length === 1,
  );
  const early = await post(agent.page, commandOf(standing[0]!.occurrence, 'needed'), {
    needed: true,
  });
  expect(early.status).toBe(409);
  await client.endAsync();
  await agent.stop();
  expect(ledgerOf(folder).filter(({ type }) => type === 'needed')).toMatchObject([
    { rule: 'm/room/hot', needed: false, by: 'local' },
  ]);
}, 60_000);

test('three hours of record count as three hours, of whatever span', async () => {
  const folder = scratchFolder();
  const device = await addDevice(folder, 'oven');
  const agent = await startAgentProcess({ site, folder, clock: 'samples' });
  const client = await connectDevice(agent.mqtt, device);
  const say = (atMs: number, v: number) =>
    published(client, 'm/air', { v, t: new Date(atMs).toISOString() });
  // From 16:00 to 19:00, across the change of shifts at 18:00; hot at 16:30, 17:00 and 18:30.
  await say(day + 16 * hour, 20);
  for (const at of [16.5, 17, 18.5]) {
    await say(day + at * hour, 35);
    await say(day + (at + 0.25) * hour, 20);
  }
  await say(day + 19 * hour, 20);
  await say(day + 19.5 * hour, 20);
  const span = `since=${day - 29 * 24 * hour}&until=${day + 19 * hour}`;
  const { body } = await until(
    () => get<Load>(agent.page, `/api/performance?${span}`),
    (answer) => answer.body.figures.told === 3,
  );
  // The record begins with the site, a moment before the first reading.
  expect(Math.abs(body.counted_from - (day + 16 * hour))).toBeLessThanOrEqual(1);
  expect(body.enough).toBe(false);
  expect(body.figures.per_hour).toBeCloseTo(1, 5);
  expect(body.figures.per_day).toBeCloseTo(24, 4);
  const about = (value: number) => expect.closeTo(value, 5);
  expect(body.shifts).toEqual([
    { begins_min: 360, told: 2, hours: about(2), per_hour: about(1) },
    { begins_min: 1080, told: 1, hours: about(1), per_hour: about(1) },
  ]);
  await client.endAsync();
  await agent.stop();
}, 120_000);
