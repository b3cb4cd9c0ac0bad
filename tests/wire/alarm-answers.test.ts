/** What is said with an acknowledgement is kept, also where somebody was quicker; sentences in a reader's units. */
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { commandOf, get, post, until } from './agent-http.ts';
import { ledgerOf } from './ledger-lines.ts';
import { worksSite } from './works-site.ts';

interface Seen {
  readonly alarms: readonly {
    readonly rule: string;
    readonly occurrence: string;
    readonly label: { readonly sentence: string };
    readonly evidence: { readonly value: number | null; readonly unit: string };
    readonly comments: readonly { readonly by: string; readonly text: string }[];
  }[];
}
interface Answered {
  readonly state: string;
  readonly note: string | null;
}

test('a second acknowledgement’s comment; sentences in °F; both after a restart', async () => {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const start = { site: siteFile(parent, worksSite), folder };
  const device = await addDevice(folder, 'room', { publish: ['#'] });
  const agent = await startAgentProcess(start);
  const client = await connectDevice(agent.mqtt, device);
  await published(client, 'bench/7/t', '30.5');
  const seen = async (page: string, query = ''): Promise<Seen['alarms'][number]> => {
    const { body } = await get<Seen>(page, `/api/alarms${query}`);
    return body.alarms.find(({ rule }) => rule === 'a/bench/warm-7')!;
  };
  const alarm = await until(
    () => seen(agent.page),
    (found) => found !== undefined,
  );
  expect(alarm.label.sentence).toContain('30.5 °C');
  const us = await seen(agent.page, '?units=us');
  expect(us.label.sentence).toContain('86.9 °F');
  expect(us.label.sentence).not.toContain('°C');
  expect(us.evidence).toMatchObject({ value: 30.5, unit: 'Cel' });
  expect((await get(agent.page, '/api/alarms?units=furlongs')).status).toBe(400);

  const path = commandOf(alarm.occurrence, 'acknowledge');
  const first = await post<Answered>(agent.page, path, { comment: 'I look at it' });
  expect(first).toMatchObject({ status: 200, body: { state: 'acknowledged', note: null } });
  const second = await post<Answered>(agent.page, path, { comment: 'fan was off' });
  expect(second.status).toBe(200);
  expect(second.body.note).toMatch(/^local acknowledged it already, at .*\. Your comment is kept/);
  const third = await post<Answered>(agent.page, path);
  expect(third.body.note).toMatch(/^local acknowledged it already, at [^ ]+\.$/);
  expect((await seen(agent.page)).comments).toMatchObject([{ by: 'local', text: 'fan was off' }]);
  client.end(true);
  await agent.kill();
  expect(ledgerOf(folder)).toContainEqual(
    expect.objectContaining({ type: 'comment', text: 'fan was off', occurrence: alarm.occurrence }),
  );
  const again = await startAgentProcess(start);
  expect((await seen(again.page)).comments).toMatchObject([{ text: 'fan was off' }]);
  await again.stop();
  expect(ledgerOf(folder).filter(({ type }) => type === 'recovered-differs')).toEqual([]);
});
