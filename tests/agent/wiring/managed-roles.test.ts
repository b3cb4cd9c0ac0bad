/** Who may close a highly managed alarm, and who may take it out of service while it stands. */
import { expect, test } from 'vitest';
import type { AlarmCommand } from '#agent/web/ports.ts';
import { commandAlarm } from '#agent/wiring/command-alarm.ts';
import { freshFolder } from '../store/folders.ts';
import { Works } from './works.ts';

const lines = (managed: boolean) => `
l:
  s:
    kind: custom
    signals:
      t: { topic: t, payload: { kind: plain }, unit: Cel }
    rules:
      hot:
        { kind: band, signal: t, high: 30 Cel, priority: high, latching: true,
          highly_managed: ${managed}, consequence: C., actions: [A.] }
`;
const reason = 'looked at it from outside';

async function asked(agent: Works, command: Partial<AlarmCommand> & Pick<AlarmCommand, 'verb'>) {
  const { core } = agent;
  const occurrence = core.desk.open()[0]?.id ?? 'l/s/hot';
  const answer = commandAlarm(
    core,
    { occurrence, by: 'p1', ...command },
    (id) => core.desk.occurrence(id),
    () => agent.nowMs,
  );
  agent.pass(1_000);
  return answer;
}
const out = { verb: 'remove-from-service', reason, forMs: 3_600_000 } as const;
const standing = (managed = true) => new Works(freshFolder(), lines(managed)).send('t', 31);

test.each(['operator', 'maintenance', 'engineer', null] as const)(
  '%s takes it out only while it does not stand',
  async (role) => {
    expect(await asked(standing(), { ...out, role })).toEqual({
      outcome: 'refused',
      why: 'it is highly managed, so handled with special care, and stands: ehs or an administrator takes it out of service',
    });
    const calm = new Works(freshFolder(), lines(true)).send('t', 20);
    expect(await asked(calm, { ...out, role })).toMatchObject({ outcome: 'accepted' });
    expect(await asked(standing(false), { ...out, role })).toMatchObject({ outcome: 'accepted' });
  },
);

test.each(['ehs', 'administrator'] as const)('%s takes it out, with an end', async (role) => {
  const { forMs: _, ...open } = out;
  expect(await asked(standing(), { ...open, role })).toMatchObject({ outcome: 'refused' });
  expect(await asked(standing(), { ...out, role })).toEqual({
    outcome: 'accepted',
    state: 'out-of-service',
  });
});

test.each([
  ['operator', 'refused'],
  ['ehs', 'accepted'],
] as const)('%s resets it: %s', async (role, outcome) => {
  const agent = standing();
  await asked(agent, { verb: 'acknowledge', role: 'operator' });
  agent.send('t', 20);
  expect(await asked(agent, { verb: 'reset', role: 'ehs' })).toMatchObject({ outcome: 'refused' });
  expect(await asked(agent, { verb: 'reset', role, reason })).toMatchObject({ outcome });
});
