/** Telling in the agent: from a reading to a phone, through kills, refusing disks and dead networks. */
import { describe, expect, test } from 'vitest';
import { AgentError } from '#agent/errors.ts';
import { limits } from '#agent/limits.ts';
import { freshFolder } from '../store/folders.ts';
import { monday, Plant, person } from './plant.ts';

const min = 60_000;
const anna = person('anna', 'maintenance');
const ben = person('ben', 'maintenance');
const people = [anna, ben, person('carl', 'maintenance')];
const rota = [{ who: ['anna', 'ben'] }];
const plant = (more: Partial<ConstructorParameters<typeof Plant>[0]> = {}): Plant =>
  new Plant({ folder: freshFolder(), people, telling: { rota }, ...more });
const occurrenceOf = (agent: Plant): string => agent.core.desk.open()[0]!.id;

test('an alarm goes to whoever is on call, then to the next, then to everyone; an answer closes it', async () => {
  const agent = plant();
  agent.send(0, 35);
  await agent.pass(12 * min);
  const id = occurrenceOf(agent);
  await agent.acknowledge(id, 'ben');
  await agent.pass(60 * min);
  expect(agent.phones.story(monday)).toEqual([
    '0.2 alarm anna l/s/r0',
    '5.2 again ben l/s/r0',
    '10.2 again anna l/s/r0',
    '10.2 again ben l/s/r0',
    '10.2 again carl l/s/r0',
    '12 answered anna l/s/r0',
    '12 answered ben l/s/r0',
    '12 answered carl l/s/r0',
  ]);
  const { told } = agent.occurrence(id);
  expect(told?.map(({ person: who, kind, outcome }) => `${who} ${kind} ${outcome}`)).toHaveLength(
    8,
  );
  expect(agent.ledger('told')).toHaveLength(8);
  expect(
    agent.core.store.read.waitingOutbox().filter(({ channel }) => channel !== 'chase'),
  ).toEqual([]);
});

test('a message is complete in itself', async () => {
  const agent = plant();
  agent.send(0, 35);
  await agent.pass(min);
  const { message } = agent.phones.sendings[0]!;
  expect(message).toMatchObject({
    key: `${occurrenceOf(agent)}/0/push/anna`,
    kind: 'alarm',
    silent: false,
    priority: 'high',
    station: 'l/s',
    limitText: 'high limit 30.00 °C',
    steps: ['A.'],
    consequence: 'C.',
    count: 1,
  });
  expect(message.sentence).toMatch(/35\.00 °C/);
  expect(Buffer.byteLength(JSON.stringify(message))).toBeLessThan(4_000);
});

test('with no people nobody is told, and nothing is written', async () => {
  const agent = plant({ people: [] });
  agent.send(0, 35);
  await agent.pass(20 * min);
  expect(agent.phones.sendings).toEqual([]);
  expect(agent.core.store.read.waitingOutbox()).toEqual([]);
});

test('what stands when the first person is added is told at once, and once', async () => {
  const staff: ReturnType<typeof person>[] = [];
  const agent = plant({ people: staff, telling: {} });
  agent.send(0, 35);
  agent.send(7, 35);
  agent.send(8, 35);
  await agent.pass(10 * min);
  expect(agent.phones.sendings).toEqual([]);
  const answered = agent.core.desk.open().find(({ rule }) => rule === 'l/s/r8')!;
  await agent.acknowledge(answered.id, 'local');
  staff.push(anna);
  await agent.pass(min);
  const alarms = agent.phones.story(monday).filter((each) => each.includes(' alarm '));
  expect(alarms.map((each) => each.split(' ').slice(1).join(' ')).sort()).toEqual([
    'alarm anna l/s/r0',
    'alarm anna l/s/r7',
  ]);
  staff.push(ben);
  await agent.pass(min);
  expect(agent.phones.story(monday).filter((each) => each.includes(' alarm '))).toHaveLength(2);
});

test('what chatters or is fleeting goes to the engineer’s mailbox once a day; what is highly managed to the phone too', async () => {
  const erin = person('erin', 'engineer', { email: 'erin@works.example', push: true });
  const agent = plant({
    people: [anna, erin],
    telling: { rota: [{ who: ['anna'] }] },
    managed: [7],
  });
  for (let i = 0; i < 6; i += 1) {
    for (const value of [35, 20]) {
      // 6 and 7 chatter; 8 goes by itself within a minute, again and again.
      for (const sensor of [6, 7]) agent.send(sensor, value);
      await agent.pass(5_000, 500);
    }
    agent.send(8, 35);
    await agent.pass(20_000, 500);
    agent.send(8, 20);
    await agent.pass(10_000);
    for (const rest of [0, 1])
      for (const value of [35, 20]) {
        for (const sensor of [6, 7]) agent.send(sensor, value);
        await agent.pass(5_000 + rest, 500);
      }
    await agent.pass(5 * min);
  }
  const raised = (rule: string, nuisance?: string) =>
    agent
      .ledger('transition')
      .filter((each) => each.transition === 'raised' && each.rule === `l/s/${rule}`)
      .filter((each) => nuisance === undefined || each.nuisance === nuisance).length;
  expect(raised('r6', 'chattering')).toBeGreaterThan(5);
  expect(raised('r8', 'fleeting')).toBe(3);
  expect(raised('r7', 'chattering')).toBe(0);
  const called = (rule: string): number =>
    agent.phones.delivered.filter(
      ({ message }) => !message.silent && message.occurrence?.startsWith(`l/s/${rule}@`),
    ).length;
  const [r6, r7] = [raised('r6'), raised('r7')];
  expect(called('r7')).toBe(r7);
  expect(called('r6')).toBe(r6 - raised('r6', 'chattering') - raised('r6', 'fleeting'));
  expect(called('r8')).toBe(3);

  await agent.pass(26 * 60 * min, min);
  const digests = agent.mail.delivered.filter(({ message }) => message.kind === 'digest');
  expect(digests.map(({ target }) => target.person)).toEqual(['erin']);
  const { sentence } = digests[0]!.message;
  expect(sentence).toContain(`l/s/r6 ${raised('r6', 'chattering')} × chattering`);
  expect(sentence).toContain('l/s/r8 3 × over within a minute');
  expect(sentence).toMatch(/l\/s\/r7 \d+ × chattering, told each time/);
  expect(agent.phones.delivered.filter(({ message }) => message.kind === 'digest')).toEqual([]);
});

describe('a kill', () => {
  test('before anything was sent: the next run sends it once', async () => {
    const agent = plant();
    agent.send(0, 35);
    agent.nowMs += 100;
    agent.core.live.tick();
    const before = agent.phones.sendings.length;
    agent.killed();
    await agent.pass(min);
    const keys = agent.phones.sendings.map(({ message }) => message.key);
    expect(keys.length).toBeGreaterThan(0);
    expect(keys.length - before).toBe(1);
    expect(new Set(keys).size).toBe(1);
  });
  test('while one is on its way: it is repeated once, with an equal key and the same words', async () => {
    const agent = plant();
    agent.send(0, 35);
    agent.nowMs += 100;
    agent.look(); // sent, and the answer not heard
    expect(agent.phones.sendings).toHaveLength(1);
    agent.killed();
    await agent.pass(min);
    expect(agent.phones.sendings).toHaveLength(2);
    expect(agent.phones.sendings[1]!.message).toEqual(agent.phones.sendings[0]!.message);
  });
  test('between two steps: the next comes on time, and is not told to those who had it', async () => {
    const agent = plant();
    agent.send(0, 35);
    await agent.pass(3 * min);
    agent.killed();
    await agent.pass(3 * min);
    expect(agent.phones.story(monday)).toEqual(['0.2 alarm anna l/s/r0', '5 again ben l/s/r0']);
  });
});

test('while the disk refuses people are told first, and the record says so', async () => {
  const agent = plant();
  await agent.pass(min);
  const { store } = agent.core;
  const commit = store.commit.bind(store);
  store.commit = () => {
    throw new AgentError('STORE_DISK_FULL', { path: 'data' });
  };
  agent.send(0, 35);
  await agent.pass(min);
  expect(agent.phones.story(monday)).toEqual(['1.2 alarm anna l/s/r0']);
  store.commit = commit;
  await agent.pass(min);
  expect(agent.ledger('transition')[0]).toMatchObject({ told_before_kept: true });
  expect(agent.ledger('told')).toHaveLength(1);
});

describe('who cannot be reached', () => {
  test('is passed over at once where the target is no more, and the cause stands with the alarm', async () => {
    const agent = plant({
      answer: (_, { person: who }) =>
        who === 'anna'
          ? { outcome: 'gone', cause: 'This phone is signed off.' }
          : { outcome: 'delivered' },
    });
    agent.send(6, 35); // medium: by phone alone
    await agent.pass(min);
    expect(agent.phones.story(monday)).toEqual(['0.3 again ben l/s/r6']);
    expect(agent.occurrence(occurrenceOf(agent)).told?.[0]).toMatchObject({
      person: 'anna',
      outcome: 'gone',
      cause: 'This phone is signed off.',
    });
  });
  test('is passed over after a while where tries fail, and is told when they no longer do', async () => {
    let down = true;
    const agent = plant({
      answer: (_, { person: who }) =>
        down && who === 'anna'
          ? { outcome: 'later', afterMs: null, cause: 'No network.' }
          : { outcome: 'delivered' },
    });
    agent.send(6, 35);
    await agent.pass(limits.outboxUnreachableMs + min);
    expect(agent.phones.story(monday)).toEqual(['2.2 again ben l/s/r6']);
    down = false;
    await agent.pass(15 * min);
    expect(agent.phones.story(monday)[1]).toMatch(/alarm anna l\/s\/r6/);
  });
  test('gets what Retry-After asks for, and no try before', async () => {
    const afterMs = 7 * min;
    let tries = 0;
    const agent = plant({
      people: [anna],
      answer: () => {
        tries += 1;
        return tries === 1
          ? { outcome: 'later', afterMs, cause: 'Too many messages.' }
          : { outcome: 'delivered' };
      },
    });
    agent.send(6, 35);
    await agent.pass(10 * min);
    const [first, second] = agent.phones.sendings;
    expect(second!.at - first!.at).toBeGreaterThanOrEqual(afterMs);
    expect(second!.at - first!.at).toBeLessThanOrEqual(afterMs + 10_000);
  });
  test('a channel that fails inside is tried again, and the fault is told', async () => {
    let fails = 1;
    const agent = plant({
      people: [anna],
      answer: () => {
        fails -= 1;
        if (fails >= 0) throw new Error('a fault');
        return { outcome: 'delivered' };
      },
    });
    agent.send(0, 35);
    await agent.pass(min);
    expect(agent.phones.story(monday)).toHaveLength(1);
    expect(agent.faults).toHaveLength(1);
  });
});
