/** Who could not be told of an alarm, and why, on the alarm's page. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import {
  addDevice,
  connectDevice,
  scratchFolder,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { get, until } from '../wire/agent-http.ts';
import { launch, open } from './chromium.ts';

const siteOf = (url: string) => ({
  site: 'works',
  timezone: 'Etc/UTC',
  telling: { webhooks: { board: { url } } },
  lines: {
    m: {
      room: {
        kind: 'custom',
        signals: { air: { topic: 'm/air', payload: { kind: 'plain' }, unit: 'Cel' } },
        rules: {
          hot: {
            ...{ kind: 'band', signal: 'air', high: '30 Cel', on_delay: '0 s', priority: 'high' },
            ...{ consequence: 'It is hot.', actions: ['Cool it.'] },
          },
        },
      },
    },
  },
});

/** A program that takes no message, once it is let answer. */
async function refusing(may: Promise<void>): Promise<string> {
  const server = createServer((request, reply) => {
    request.resume();
    void may.then(() => reply.writeHead(400).end());
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  onTestFinished(() => void server.close());
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
}

interface Seen {
  readonly occurrence: string;
  readonly told: readonly { readonly outcome: string; readonly cause: string }[];
}

test('a message that nobody took stands with its cause, in front of whoever looks', {
  timeout: 120_000,
}, async () => {
  const may = Promise.withResolvers<void>();
  const folder = scratchFolder();
  const device = await addDevice(folder, 'oven');
  const agent = await startAgentProcess({ site: siteOf(await refusing(may.promise)), folder });
  const client = await connectDevice(agent.mqtt, device);
  await client.publishAsync('m/air', '35', { qos: 1 });
  const seen = async () => (await get<{ alarms: Seen[] }>(agent.page, '/api/alarms')).body.alarms;
  const [alarm] = await until(seen, (all) => all.length > 0, 30_000);
  const browser = await launch();
  onTestFinished(() => browser.close());
  const url = `${agent.page}/#/alarm/${encodeURIComponent(alarm!.occurrence)}`;
  const { page, complaints } = await open(browser, url, { size: 'phone' });
  await page.getByText('What happened, and who answered').waitFor();
  const told = page.locator('section', { hasText: 'Who was told' });
  may.resolve();
  await told.getByText('board, by webhook: not taken there.').waitFor();
  const [after] = await until(seen, (all) => (all[0]?.told.length ?? 0) > 0, 30_000);
  await told.getByText(after!.told[0]!.cause).waitFor();
  expect(complaints).toEqual([]);
  await client.endAsync();
  await agent.stop();
});
