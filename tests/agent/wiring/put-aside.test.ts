/** Putting aside, passing on and coming back, through the agent: ledger, list, stream, restart. */
import { expect, test } from 'vitest';
import { asideEventSchema, asideSchema } from '#agent/web/aside-contract.ts';
import type { AlarmCommand, ToldEvent } from '#agent/web/ports.ts';
import { asideViews } from '#agent/wiring/aside-views.ts';
import { commandAlarm } from '#agent/wiring/command-alarm.ts';
import { CorePorts } from '#agent/wiring/web-ports.ts';
import { freshFolder } from '../store/folders.ts';
import { Works } from './works.ts';

const lines = (speed = '') => `
l:
  s:
    kind: custom
    signals:
      t: { topic: t, payload: { kind: plain }, unit: Cel }
      speed: { topic: v, payload: { kind: plain }, unit: m/min }
    ${speed}
    rules:
      warm: { kind: band, signal: t, high: 30 Cel, priority: low, respond: 10 min, consequence: C., actions: [A.] }
`;
const suppress =
  'suppress_while: { signal: speed, high: 0.1 m/min, because: the line stands, settle: 1 min }';
const rule = 'l/s/warm';

/** Answered once it is on disk; the clock goes on meanwhile. */
async function asked(agent: Works, command: Partial<AlarmCommand> & Pick<AlarmCommand, 'verb'>) {
  const { core } = agent;
  const answer = commandAlarm(
    core,
    { occurrence: rule, by: 'p1', ...command },
    (id) => core.desk.occurrence(id),
    () => agent.nowMs,
  );
  agent.pass(1_000);
  return answer;
}
const current = (agent: Works): string => agent.core.desk.open()[0]!.id;

test('passed on: who and when in the ledger, the alarm still waits for somebody', async () => {
  const agent = new Works(freshFolder(), lines()).send('t', 31);
  const occurrence = current(agent);
  const answer = await asked(agent, { verb: 'pass-on', occurrence, reason: 'at the press' });
  // No people, no rota, no way to tell anybody.
  expect(answer).toEqual({
    outcome: 'accepted',
    state: 'unacknowledged',
    note: 'Nobody can be told. Go and fetch somebody.',
    asked: { people: [], canBeTold: false },
  });
  expect(agent.ledger('transition').at(-1)).toMatchObject({
    transition: 'passed-on',
    occurrence,
    by: 'p1',
    reason: 'at the press',
  });
  expect(agent.core.desk.occurrence(occurrence)!.steps.at(-1)).toMatchObject({
    transition: 'passed-on',
    by: 'p1',
  });
});

test('a rule without an alarm goes out of service by its own name, and comes back after a restart', async () => {
  const agent = new Works(freshFolder(), lines()).send('t', 20);
  const out = await asked(agent, { verb: 'remove-from-service', reason: 'new probe' });
  expect(out).toEqual({ outcome: 'accepted', state: 'out-of-service' });
  agent.restart(60_000);
  const [view] = asideViews(agent.core);
  expect(asideSchema.parse(view)).toMatchObject({
    rule,
    state: 'out-of-service',
    stands: false,
    occurrence: null,
    until: null,
    by: 'p1',
    reason: 'new probe',
  });
  agent.send('t', 31);
  expect(asideViews(agent.core)[0]).toMatchObject({ stands: true, occurrence: current(agent) });
  const back = await asked(agent, { verb: 'return-to-service' });
  expect(back).toEqual({ outcome: 'accepted', state: 'unacknowledged' });
  expect(asideViews(agent.core)).toEqual([]);
});

test('what cannot be is refused with its reason, and what there is not is unknown', async () => {
  const agent = new Works(freshFolder(), lines()).send('t', 31);
  const shelve = { verb: 'shelve', reason: 'sun on it' } as const;
  expect(await asked(agent, { ...shelve, forMs: 86_400_000 })).toMatchObject({
    outcome: 'accepted',
    state: 'shelved',
  });
  expect(await asked(agent, { ...shelve, forMs: 86_400_001 + 1_000 })).toEqual({
    outcome: 'refused',
    why: 'an alarm of low priority may be shelved for at most 1440 min',
  });
  expect(await asked(agent, { verb: 'remove-from-service' })).toMatchObject({ outcome: 'refused' });
  expect(await asked(agent, { verb: 'unshelve', occurrence: 'l/s/none' })).toEqual({
    outcome: 'unknown',
  });
});

test('the kill of a process leaves a shelf with its end', async () => {
  const agent = new Works(freshFolder(), lines()).send('t', 31);
  await asked(agent, { verb: 'shelve', reason: 'sun on it', forMs: 600_000, oneShot: true });
  const before = asideViews(agent.core);
  agent.killed(30_000).pass(1_000);
  expect(asideViews(agent.core)).toEqual(before);
  expect(before[0]).toMatchObject({ state: 'shelved', one_shot: true, until: expect.any(Number) });
  agent.send('t', 20);
  expect(asideViews(agent.core)).toEqual([]);
  expect(agent.core.desk.open()[0]).toMatchObject({ state: 'returned-unacknowledged' });
});

test('while the line stands nobody is told, listeners see it go aside and come back', () => {
  const agent = new Works(freshFolder(), lines(suppress));
  const told: ToldEvent[] = [];
  const ports = new CorePorts({
    core: agent.core,
    charts: null as never,
    damaged: () => undefined,
    health: () => {
      throw new Error('nobody asks');
    },
    siteDesk: null,
    figures: () => [],
  });
  ports.subscribe((event) => told.push(event));
  agent.send('v', 0).send('t', 31);
  expect(ports.aside()).toMatchObject([
    { rule, state: 'suppressed-by-design', by: null, reason: 'the line stands', stands: true },
  ]);
  for (const effect of agent.ledger('transition'))
    ports.tell({ effects: [{ kind: 'transition', ...effect } as never], kept: true });
  const aside = told.filter(({ event }) => event === 'aside');
  expect(aside.length).toBe(2);
  for (const { data } of aside) expect(asideEventSchema.safeParse(data).success).toBe(true);
  agent.send('v', 5).pass(58_000);
  expect(ports.aside()).toMatchObject([{ until: expect.any(Number) }]);
  agent.pass(3_000);
  expect(ports.aside()).toEqual([]);
  expect(agent.core.desk.open()[0]!.state).toBe('unacknowledged');
});

test('told again after its time to respond: the history says which time', () => {
  const agent = new Works(freshFolder(), lines()).send('t', 31).pass(601_000);
  const [occurrence] = agent.core.desk.open();
  expect(occurrence!.steps.map(({ transition, again }) => [transition, again])).toEqual([
    ['raised', undefined],
    ['realarmed', 1],
  ]);
  expect(agent.restart().core.desk.open()[0]).toEqual(occurrence);
});
