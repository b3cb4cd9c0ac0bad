/**
 * Twenty SIGKILLs of a whole agent while it tells a webhook of alarms: each alarm arrives, and what
 * arrives twice carries the same key and the same words.
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import {
  addDevice,
  connectDevice,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { ledgerOf } from './afterwards.ts';
import { seededInteger } from './chance.ts';

const kills = 20;
const perLife = 4;
const sensors = Array.from({ length: kills * perLife }, (_, i) => i);

const siteOf = (url: string) => ({
  site: 'fault-works',
  timezone: 'Europe/Dublin',
  telling: { webhooks: { board: { url } } },
  lines: {
    hall: {
      bench: {
        kind: 'custom',
        signals: Object.fromEntries(
          sensors.map((i) => [
            `t-${i}`,
            { topic: `hall/${i}`, payload: { kind: 'plain' }, unit: 'Cel' },
          ]),
        ),
        // Highly managed, so that none is grouped.
        rules: Object.fromEntries(
          sensors.map((i) => [
            `warm-${i}`,
            {
              kind: 'band',
              signal: `t-${i}`,
              high: '30 Cel',
              on_delay: '0 s',
              priority: 'high',
              highly_managed: true,
              consequence: 'The test pieces leave the range they are compared in.',
              actions: ['Shade the bench.'],
            },
          ]),
        ),
      },
    },
  },
});

interface Arrived {
  readonly id: string;
  readonly type: string;
  readonly body: string;
  readonly life: number;
}

async function board(answerMs: () => number) {
  const arrived: Arrived[] = [];
  const state = { life: 0 };
  const server = createServer((request, reply) => {
    let text = '';
    request.on('data', (part) => {
      text += String(part);
    });
    request.on('end', () => {
      const { id, type } = JSON.parse(text) as { id: string; type: string };
      arrived.push({ id, type, body: text, life: state.life });
      setTimeout(() => reply.end(), answerMs());
    });
  });
  server.listen(0, '127.0.0.1');
  await new Promise((done) => server.once('listening', done));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return { arrived, state, url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
}

test('20 kills while it tells: none lost, repeats carry equal keys', { timeout: 300_000 }, async ({
  annotate,
}) => {
  const seed = 20_261_127;
  await annotate(`seed ${seed}`);
  const until = seededInteger(seed, 20, 400);
  const answer = seededInteger(seed + 1, 0, 120);
  const { arrived, state, url } = await board(answer);
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const site = siteFile(parent, siteOf(url));
  const device = await addDevice(folder, 'hall', { publish: ['hall/#'] });
  for (let life = 0; life < kills; life += 1) {
    state.life = life;
    const agent = await startAgentProcess({ site, folder });
    const client = await connectDevice(agent.mqtt, device);
    client.on('error', () => undefined);
    const mine = sensors.slice(life * perLife, (life + 1) * perLife);
    // Taken by the agent, whatever becomes of the telling.
    await Promise.all(mine.map((i) => client.publishAsync(`hall/${i}`, '35', { qos: 1 })));
    await wait(until());
    await agent.kill();
    client.end(true);
  }
  state.life = kills;
  const last = await startAgentProcess({ site, folder });
  const alarms = (): Set<string> =>
    new Set(
      arrived
        .filter(({ type }) => type === 'forebond.telling.alarm')
        .map(({ id }) => id.split('/').slice(0, 3).join('/')),
    );
  for (let i = 0; i < 200 && alarms().size < sensors.length; i += 1) await wait(100);
  const waiting = await fetch(`${last.page}/api/telling/outbox`);
  expect(waiting.status).toBe(200);
  expect((await last.stop()).code).toBe(0);

  const raised = ledgerOf(folder).filter(
    ({ type, transition }) => type === 'transition' && transition === 'raised',
  );
  expect(raised).toHaveLength(sensors.length);
  const told = alarms();
  const lost = raised.map(({ occurrence }) => String(occurrence)).filter((id) => !told.has(id));
  expect(lost, `seed ${seed}`).toEqual([]);
  let repeats = 0;
  for (const [id, same] of Map.groupBy(arrived, (one) => one.id)) {
    repeats += same.length - 1;
    expect(new Set(same.map(({ life }) => life)).size, `${id} twice in one life`).toBe(same.length);
    // The address of the page is another in each life; all else is the same.
    const words = same.map(({ body }) => body.replaceAll(/127\.0\.0\.1:\d+/g, 'page'));
    expect(new Set(words).size, id).toBe(1);
  }
  expect(repeats, `seed ${seed}`).toBeGreaterThan(0);
  expect(repeats, `seed ${seed}`).toBeLessThanOrEqual(kills);
});
