/**
 * A week of an agent on a simulated clock: a flood, a sensor that chatters, a person who never
 * answers, a day without network, and a kill every hour, some of them while messages are on their
 * way. Chance comes from one seed, printed where anything fails.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import type { Occurrence } from '#agent/alarms/occurrence.ts';
import type { Sending } from './far-side.ts';
import { monday, Plant, person, sensors } from './plant.ts';

const min = 60_000;
const hour = 60 * min;
const day = 24 * hour;
const tickMs = 30_000;
/** Any will do; one week of chance is not another. */
const seed = 20_261_123;

/** In memory where there is such a place: twenty thousand commits take a disk two minutes. */
function quickFolder(): string {
  const parent = mkdtempSync(
    join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'forebond-week-'),
  );
  onTestFinished(() => rmSync(parent, { recursive: true, force: true }));
  return join(parent, 'data');
}

/** Mulberry32 (public domain, T. Ettinger): numbers in [0, 1) from a seed. */
function chanceOf(start: number): () => number {
  let a = start;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const anna = person('anna', 'maintenance', { email: 'anna@works.example', push: true });
const ben = person('ben', 'maintenance');
const carl = person('carl', 'maintenance');
const erin = person('erin', 'engineer', { email: 'erin@works.example', push: false });

const networkDown = (at: number): boolean => at >= monday + 3 * day && at < monday + 4 * day;

interface Reading {
  readonly at: number;
  readonly sensor: number;
  readonly value: number;
}

/** What the sensors say: quiet hours of minutes, excursions, a flood on Tuesday, chatter on Wednesday. */
function readings(chance: () => number): Reading[] {
  const all: Reading[] = [];
  for (let sensor = 0; sensor < sensors - 1; sensor += 1)
    for (let at = monday; ; ) {
      const from = at + (4 + chance() * 30) * hour;
      const to = from + (3 + chance() * 90) * min;
      if (to >= monday + 7 * day) break;
      all.push({ at: from, sensor, value: 35 }, { at: to, sensor, value: 20 });
      at = to;
    }
  const flood = monday + day + 4 * hour;
  for (let sensor = 0; sensor < sensors; sensor += 1)
    all.push(
      { at: flood + sensor * 8_000, sensor, value: 40 },
      { at: flood + 2 * hour, sensor, value: 20 },
    );
  const chatter = monday + 2 * day + 6 * hour;
  for (let i = 0; i < 60; i += 1)
    all.push({ at: chatter + i * 5_000, sensor: sensors - 1, value: i % 2 === 0 ? 35 : 20 });
  return all.sort((a, b) => a.at - b.at || a.sensor - b.sensor);
}

test('a week: each alarm told, in order, escalated on time, none lost, at most one repeat a kill', async () => {
  const chance = chanceOf(seed);
  const agent = new Plant({
    folder: quickFolder(),
    people: [anna, ben, carl, erin],
    telling: {
      rota: [
        { who: ['anna', 'ben'], from: '06:00', to: '18:00' },
        { who: ['ben', 'carl'], from: '18:00', to: '06:00' },
      ],
      quiet_hours: { from: '22:00', to: '06:00', priorities: ['low'] },
    },
    answer: () =>
      networkDown(agent.nowMs)
        ? { outcome: 'later', afterMs: null, cause: 'There is no network.' }
        : { outcome: 'delivered' },
  });
  const said = readings(chance);
  /** When somebody will acknowledge what they were told. */
  const answers = new Map<string, { readonly at: number; readonly by: string }>();
  const seen = new Set<Sending>();
  let kills = 0;
  let killAt = monday + hour;
  for (let next = 0; agent.nowMs < monday + 7 * day; ) {
    const until = Math.min(agent.nowMs + tickMs, said[next]?.at ?? Number.POSITIVE_INFINITY);
    await agent.tick(Math.max(100, until - agent.nowMs));
    for (; next < said.length && said[next]!.at <= agent.nowMs; next += 1)
      agent.send(said[next]!.sensor, said[next]!.value);
    if (agent.nowMs >= killAt) {
      killAt += hour;
      kills += 1;
      agent.nowMs += 100;
      agent.look(); // what it sends now arrives, and the answer is not heard
      agent.killed();
    }
    for (const sending of [...agent.phones.delivered, ...agent.mail.delivered]) {
      if (seen.has(sending)) continue;
      seen.add(sending);
      const { message, target } = sending;
      const answers_ = target.person === 'anna' || target.person === 'carl';
      if (message.silent || message.occurrence === null || !answers_) continue;
      const at = sending.at + (1 + chance() * 12) * min;
      const known = answers.get(message.occurrence);
      if (known === undefined || known.at > at)
        answers.set(message.occurrence, { at, by: target.person ?? '' });
    }
    for (const [occurrence, { at, by }] of answers) {
      if (at > agent.nowMs) continue;
      answers.delete(occurrence);
      const ids = occurrence.startsWith('flood@')
        ? agent.core.desk.open().map(({ id }) => id)
        : [occurrence];
      for (const id of ids)
        if (agent.core.desk.occurrence(id)?.state === 'unacknowledged')
          await agent.acknowledge(id, by);
    }
  }
  await agent.pass(2 * hour, tickMs);
  check(agent, kills);
}, 240_000);

function check(agent: Plant, kills: number): void {
  const sendings = [...agent.phones.sendings, ...agent.mail.sendings];
  const delivered = [...agent.phones.delivered, ...agent.mail.delivered];
  const transitions = agent.ledger('transition');
  const raised = transitions.filter(
    ({ transition, to }) => transition === 'raised' && to === 'unacknowledged',
  );
  const nuisances = new Set(
    raised.filter(({ nuisance }) => nuisance !== undefined).map(({ occurrence }) => occurrence),
  );
  const ids = [...new Set(raised.map(({ occurrence }) => String(occurrence)))];
  const context = `seed ${seed}`;

  // The week is worth its name.
  expect(ids.length, context).toBeGreaterThan(100);
  expect(kills, context).toBeGreaterThan(160);
  expect(nuisances.size, context).toBeGreaterThan(20);
  expect(
    delivered.filter(({ message }) => message.kind === 'flood').length,
    context,
  ).toBeGreaterThan(0);
  expect(agent.faults).toEqual([]);

  expect(untoldOf(agent, ids, nuisances, delivered), context).toEqual([]);
  onceEach(delivered, kills, context);
  inOrder(delivered, context);
  onTime(sendings, context);
  unanswered(agent, ids, context);
}

/** None is lost: each was told, or told that it is over, or is for the digest. */
function untoldOf(
  agent: Plant,
  ids: readonly string[],
  nuisances: ReadonlySet<unknown>,
  delivered: readonly Sending[],
): string[] {
  const noted = new Set(
    delivered
      .filter(({ message }) => message.kind === 'digest')
      .map(({ message }) => message.sentence),
  );
  return ids.filter((id) => {
    const { told = [], raised: at, returned, priority } = agent.occurrence(id);
    if (told.some(({ outcome }) => outcome === 'delivered')) return false;
    if (nuisances.has(id)) return ![...noted].some((text) => text.includes('chattering'));
    return !(priority === 'low' && quietThrough(at, returned));
  });
}

/** At most one repeat of a message a kill, and it is the very same message. */
function onceEach(delivered: readonly Sending[], kills: number, context: string): void {
  const byKey = Map.groupBy(delivered, ({ message }) => message.key);
  let repeats = 0;
  for (const [key, same] of byKey) {
    repeats += same.length - 1;
    expect(new Set(same.map(({ life }) => life)).size, `${key} twice in one life, ${context}`).toBe(
      same.length,
    );
    for (const { message } of same) expect(message, context).toEqual(same[0]!.message);
  }
  expect(repeats, context).toBeGreaterThan(0);
  expect(repeats, context).toBeLessThanOrEqual(kills);
}

/** To one target no alarm comes before one that was written earlier. */
function inOrder(delivered: readonly Sending[], context: string): void {
  for (const [target, list] of Map.groupBy(
    delivered,
    ({ target: { channel, person: who } }) => `${channel} ${who}`,
  )) {
    const first = list.filter(
      ({ message }, i) => list.findIndex((one) => one.message.key === message.key) === i,
    );
    const alarms = first.filter(
      ({ message }) => message.kind === 'alarm' && message.priority !== 'low',
    );
    const ats = alarms.map(({ message }) => message.at);
    expect(ats, `${target}, ${context}`).toEqual([...ats].sort((a, b) => a - b));
  }
}

/** Where nobody answered, the next step left when it should. */
function onTime(sendings: readonly Sending[], context: string): void {
  const steps = Map.groupBy(
    sendings.filter(
      ({ message, at }) =>
        !message.silent && !message.thread.startsWith('flood') && !networkDown(at),
    ),
    ({ message }) => message.thread,
  );
  const waits = { high: 5 * min, medium: 15 * min, low: hour };
  let escalated = 0;
  for (const [id, list] of steps) {
    const firstOf = (step: number): number | undefined =>
      list.find(({ message }) => message.key.startsWith(`${id}/${step}/`))?.at;
    const [a, b] = [firstOf(0), firstOf(1)];
    if (a === undefined || b === undefined || networkDown(b - hour)) continue;
    escalated += 1;
    const { priority } = list[0]!.message;
    expect(b - a, `${id}, ${context}`).toBeGreaterThanOrEqual(waits[priority] - tickMs);
    expect(b - a, `${id}, ${context}`).toBeLessThanOrEqual(waits[priority] + 2 * tickMs);
  }
  expect(escalated, context).toBeGreaterThan(10);
}

/** What is still raised at the end is still chased. */
function unanswered(agent: Plant, ids: readonly string[], context: string): void {
  const chased = new Map(agent.core.telling!.chases().map((chase) => [chase.occurrence, chase]));
  const open = ids
    .map((id): Occurrence => agent.occurrence(id))
    .filter(({ state, closed }) => closed === null && state === 'unacknowledged');
  for (const { id } of open) {
    const chase = chased.get(id);
    const due = chase?.waits === 'group' ? chased.get(chase.group ?? '')?.dueMs : chase?.dueMs;
    expect(due, `${id}, ${context}`).toEqual(expect.any(Number));
  }
}

/** It came and went within one night of quiet. */
function quietThrough(raised: number, returned: number | null): boolean {
  const hourOf = (at: number): number => new Date(at).getUTCHours();
  const night = (at: number): boolean => hourOf(at) >= 22 || hourOf(at) < 6;
  return night(raised) && returned !== null && returned - raised < 8 * hour && night(returned);
}
