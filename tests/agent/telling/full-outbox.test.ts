/**
 * A whole agent whose phones never answer, on a clock that the test sets forward: its outbox at its
 * bound, the next person told all the same, and what is given up said in the record, by HTTP and on
 * the alarm.
 */
import { pino } from 'pino';
import { expect, onTestFinished, test, vi } from 'vitest';
import { startAgent } from '#agent/compose.ts';
import { limits } from '#agent/limits.ts';
import { PushDevices } from '#agent/notify/channels/push-devices.ts';
import type { Channel } from '#agent/notify/contract.ts';
import type { Agent } from '#agent/wiring/agent-options.ts';
import { addDevice, connectDevice, published, scratchFolder } from '#tests/agent-process.ts';
import { get, until } from '../../wire/agent-http.ts';
import { ledgerOf } from '../../wire/ledger-lines.ts';
import { sourceOf } from '../../wire/simulated-agent.ts';
import { aPhone } from '../notify/open-push.ts';
import { type AheadClock, systemHeld } from './ahead-clock.ts';
import { FarSide } from './far-side.ts';
import { person } from './plant.ts';

const min = 60_000;
/** On call together, each with a phone that never answers. */
const crew = Array.from({ length: 50 }, (_, i) => person(`m${i}`, 'maintenance'));
const erin = person('erin', 'engineer', { email: 'erin@works.example', push: false });
/** So many that the crew's messages alone are more than may wait. */
const alarms = Math.ceil(limits.outboxWaitingMessagesMax / crew.length) + 1;
const names = Array.from({ length: alarms }, (_, i) => `t${i}`);

const site = {
  site: 'works',
  timezone: 'Etc/UTC',
  telling: {
    rota: [{ who: ['maintenance', 'erin'] }],
    email: { server: 'localhost', security: 'none', from: 'alarms@works.example' },
  },
  lines: {
    l: {
      s: {
        kind: 'custom',
        signals: Object.fromEntries(
          names.map((name) => [
            name,
            { topic: `l/${name}`, payload: { kind: 'plain' }, unit: 'Cel' },
          ]),
        ),
        // Highly managed, so that none is grouped, and none is less urgent than another.
        rules: Object.fromEntries(
          names.map((name) => [
            `hot-${name}`,
            {
              ...{ kind: 'band', signal: name, high: '30 Cel', on_delay: '0 s', priority: 'high' },
              ...{ highly_managed: true, consequence: 'C.', actions: ['A.'] },
            },
          ]),
        ),
      },
    },
  },
};

interface Told {
  readonly person: string | null;
  readonly outcome: string;
  readonly cause: string | null;
}
interface Seen {
  readonly occurrence: string;
  readonly told: readonly Told[];
}
interface Waiting {
  readonly waiting: readonly { readonly person: string; readonly cause: string | null }[];
}

interface Begun {
  readonly agent: Agent;
  readonly clock: AheadClock;
  readonly mail: FarSide;
  readonly folder: string;
}

/** Everything is hot. */
async function begun(): Promise<Begun> {
  // A try ends soon: thirty seconds of silence are not waited for.
  const real = AbortSignal.timeout.bind(AbortSignal);
  const soon = vi.spyOn(AbortSignal, 'timeout');
  soon.mockImplementation((ms) => real(ms === limits.outboxTryMsMax ? 20 : ms));
  onTestFinished(() => soon.mockRestore());
  const clock = systemHeld();
  const silent: Channel = { name: 'push', send: () => new Promise(() => undefined) };
  const mail = new FarSide('email', clock.wallMs);
  const folder = scratchFolder();
  const device = await addDevice(folder, 'hall');
  const phones = new PushDevices(folder);
  for (const { id } of crew) {
    const { p256dh, auth } = aPhone();
    phones.add(id, { endpoint: `https://push.example/${id}`, keys: { p256dh, auth } }, 0);
  }
  const agent = await startAgent({
    ...{ source: await sourceOf(site), folder, mode: 'wall', clock, ballastBytes: 0 },
    ...{ http: { host: '127.0.0.1', port: 0 }, mqtt: { host: '127.0.0.1', port: 0 } },
    ...{ channels: [silent, mail], tellAlso: [...crew, erin], log: pino({ level: 'silent' }) },
  });
  const client = await connectDevice(agent.mqtt, device);
  await Promise.all(names.map((name) => published(client, `l/${name}`, '35')));
  await client.endAsync();
  return { agent, clock, mail, folder };
}

test('phones that never answer, and more messages than may wait: the next is told, and all of it is said', {
  timeout: 300_000,
}, async () => {
  const { agent, clock, mail, folder } = await begun();
  let running = true;
  const stop = async (): Promise<void> => {
    if (running) await agent.stop();
    running = false;
  };
  onTestFinished(stop);
  const outbox = () => get<Waiting>(agent.page, '/api/telling/outbox');
  const full = await until(
    outbox,
    ({ body }) =>
      body.waiting.filter(({ cause }) => cause === 'No answer came in time.').length > 20,
    60_000,
  );
  // What goes to erin at once, as nobody else of its step found room, leaves again.
  expect(full.body.waiting.length).toBeLessThanOrEqual(limits.outboxWaitingMessagesMax);
  expect(full.body.waiting.length).toBeGreaterThan(limits.outboxWaitingMessagesMax - alarms);

  clock.forward(limits.outboxUnreachableMs + min);
  const told = await until(
    async () => new Set(mail.delivered.map(({ message }) => message.occurrence)),
    (occurrences) => occurrences.size === alarms,
    60_000,
  );
  expect(told.size).toBe(alarms);
  expect((await outbox()).body.waiting.length).toBeLessThanOrEqual(limits.outboxWaitingMessagesMax);

  clock.forward(limits.outboxTryMs);
  const seen = await until(
    async () => (await get<{ alarms: Seen[] }>(agent.page, '/api/alarms')).body.alarms,
    (all) => all.some((each) => each.told.some(({ outcome }) => outcome === 'given-up')),
    60_000,
  );
  const tellings = seen.flatMap((each) => each.told);
  expect(tellings.find(({ outcome }) => outcome === 'given-up')).toMatchObject({
    person: expect.stringMatching(/^m\d+$/),
    cause: 'No answer came in time.',
  });
  expect(
    tellings.some(({ person: who, outcome }) => who === 'erin' && outcome === 'delivered'),
  ).toBe(true);
  await stop();

  const entered = ledgerOf(folder).filter(({ type }) => type === 'told');
  const of = (outcome: string) => entered.filter((each) => each.outcome === outcome);
  expect(of('full').length).toBeGreaterThanOrEqual(crew.length);
  for (const { cause } of of('full'))
    expect(cause).toMatch(/^(Too many messages wait already|It made room for)/);
  expect(of('full').map(({ person: who }) => who)).not.toContain('erin');
  expect(of('given-up')[0]).toMatchObject({ cause: 'No answer came in time.', channel: 'push' });
});
