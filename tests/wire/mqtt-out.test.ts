/**
 * What other machines hear of a running agent, by a client of another make (mosquitto_sub): retained
 * alarm topics, the heartbeat, and its end.
 */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { expect, onTestFinished, test } from 'vitest';
import {
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  startAgentProcess,
  type TestDevice,
} from '#tests/agent-process.ts';
import { alarms, commandOf, post, until } from './agent-http.ts';

const site = {
  site: 'works',
  timezone: 'Etc/UTC',
  lines: {
    m: {
      room: {
        kind: 'custom',
        signals: {
          air: { topic: 'm/air', payload: { kind: 'plain' }, unit: 'Cel', resolution: 0.1 },
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

interface Heard {
  readonly topic: string;
  readonly retained: boolean;
  readonly message: Readonly<Record<string, unknown>>;
}

/** Everything under forebond/ as mosquitto_sub hears it. */
function listening(url: string, device: TestDevice): Heard[] {
  const { hostname, port } = new URL(url);
  const words = ['-h', hostname, '-p', port, '-u', device.username, '-P', device.password];
  const child = spawn('mosquitto_sub', [...words, '-t', 'forebond/#', '-q', '1', '-F', '%r %t %p']);
  onTestFinished(() => void child.kill());
  const heard: Heard[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => {
    const [, retained, topic, payload] = /^(\d) (\S+) (.*)$/.exec(line)!;
    heard.push({ topic: topic!, retained: retained === '1', message: JSON.parse(payload!) });
  });
  return heard;
}

const alarmTopic = 'forebond/works/m/room/alarm/hot';
const beatTopic = 'forebond/works/heartbeat';
const of = (heard: readonly Heard[], topic: string): Heard[] =>
  heard.filter((each) => each.topic === topic);

/** Who comes later is told at once. */
async function hearsHowThingsStand(url: string, light: TestDevice): Promise<void> {
  const late = listening(url, light);
  await until(
    async () => of(late, alarmTopic),
    (all) => all.length > 0,
  );
  expect(of(late, alarmTopic)[0]).toMatchObject({
    retained: true,
    message: { state: 'unacknowledged' },
  });
}

test('a stack light sees each alarm come, answered and go; silence of the agent shows', async () => {
  const folder = scratchFolder();
  const sensor = await addDevice(folder, 'oven');
  const light = await addDevice(folder, 'light', {
    publish: ['light/state'],
    read: ['forebond/#'],
  });
  const agent = await startAgentProcess({ site, folder });
  const heard = listening(agent.mqtt, light);
  const beats = await until(
    async () => of(heard, beatTopic),
    (all) => all.length > 0,
  );
  const { alive, at, next_by } = beats[0]!.message;
  expect([alive, beats[0]!.retained]).toEqual([true, true]);
  expect(Date.parse(String(next_by)) - Date.parse(String(at))).toBe(30_000);

  const client = await connectDevice(agent.mqtt, sensor);
  await published(client, 'm/air', '35');
  const states = () => of(heard, alarmTopic).map(({ message }) => message.state);
  await until(
    async () => states(),
    (all) => all.includes('unacknowledged'),
  );
  const [first] = of(heard, alarmTopic);
  expect(first!.message).toMatchObject({
    priority: 'high',
    safety_label: 'NOTICE',
    value: 35,
    limit: 30,
    unit: 'Cel',
    judgeable: true,
  });
  const [standing] = await alarms(agent.page);
  await post(agent.page, commandOf(standing!.occurrence, 'acknowledge'));
  await published(client, 'm/air', '20');
  await until(
    async () => states(),
    (all) => all.at(-1) === 'normal',
  );
  expect(states()).toEqual(['unacknowledged', 'acknowledged', 'normal']);

  await published(client, 'm/air', '40');
  await until(
    async () => states(),
    (all) => all.at(-1) === 'unacknowledged',
  );
  await hearsHowThingsStand(agent.mqtt, light);
  await client.endAsync();
  await agent.stop();
  await until(
    async () => of(heard, beatTopic).at(-1)!.message.alive,
    (isAlive) => isAlive === false,
  );
}, 60_000);

test('what stood before a restart is said again, and no device may say it', async () => {
  const folder = scratchFolder();
  const sensor = await addDevice(folder, 'oven', { publish: ['#'] });
  const light = await addDevice(folder, 'light', {
    publish: ['light/state'],
    read: ['forebond/#'],
  });
  const agent = await startAgentProcess({ site, folder });
  const client = await connectDevice(agent.mqtt, sensor);
  await published(client, 'm/air', '35');
  await until(
    () => alarms(agent.page),
    (all) => all.length === 1,
  );
  await client.endAsync(true);
  await agent.kill();

  const again = await startAgentProcess({ site, folder });
  const heard = listening(again.mqtt, light);
  await until(
    async () => of(heard, alarmTopic),
    (all) => all.length > 0,
  );
  expect(of(heard, alarmTopic)[0]!.message.state).toBe('unacknowledged');
  const forger = await connectDevice(again.mqtt, sensor);
  await forger.publishAsync(beatTopic, '{"alive":true}', { qos: 1, retain: true });
  const later = listening(again.mqtt, light);
  await until(
    async () => of(later, beatTopic),
    (all) => all.length > 0,
  );
  await forger.endAsync();
  for (const { message } of [...of(heard, beatTopic), ...of(later, beatTopic)])
    expect(message.next_by).toBeDefined();
  await again.stop();
}, 60_000);
