/** The site loaded twice while a reading waits for its moment: live, restart and replay agree. */
import { expect, test } from 'vitest';
import { ledgerBody } from '#agent/alarms/desk.ts';
import { canonicalJson } from '#agent/store/canonical.ts';
import { replayFolder } from '#agent/wiring/replay-folder.ts';
import { freshFolder } from '../store/folders.ts';
import { sourceOf, Works, works } from './works.ts';

const limit = (low: number): string =>
  works(`cold-adhesive: { low: ${low} Cel, low_low: ${low - 2} Cel, on_delay: 1 min }`);
/** Without the wildcard station and the air's humidity: other indices. */
const fewer = limit(8)
  .replace(/^.*humidity:.*\n/m, '')
  .split('\n  c:')[0]!;

const reading = (agent: Works, v: number): string => JSON.stringify({ v, t: agent.nowMs });
const pendingOf = (agent: Works): { signal: string; value: number }[] =>
  (agent.state as { pending: { signal: string; value: number }[] }).pending;

function replayed(agent: Works, lines: string): string[] {
  const effects: string[] = [];
  replayFolder(
    sourceOf(lines),
    agent.folder,
    {},
    {
      emit: (effect) => effects.push(canonicalJson(ledgerBody(effect))),
    },
  );
  return effects;
}
const inLedger = (agent: Works): string[] =>
  ['transition', 'judgeable', 'hold', 'run'].flatMap((type) =>
    agent.ledger(type).map(({ id: _, ...body }) => canonicalJson(body)),
  );

test.each([
  ['two limits', limit(8), limit(9)],
  ['signals that go and come back', fewer, limit(9)],
  ['and back again', limit(8), works()],
])('%s', async (_, first, second) => {
  const agent = new Works(freshFolder());
  for (let i = 0; i < 10; i += 1)
    agent
      .send('wall', 8.5, 30_000)
      .send('humidity', 50, 15_000)
      .send('bottom', reading(agent, 8.5), 15_000);
  agent.send('bottom', reading(agent, 3), 300);
  expect(pendingOf(agent)).toMatchObject([{ signal: 'l/s/bottom', value: 3 }]);
  agent.core.site.change(sourceOf(first), 'p1');
  agent.send('wall', 8.4, 300);
  agent.core.site.change(sourceOf(second), 'p2');
  agent.send('wall', 8.3, 300);
  expect(pendingOf(agent)).toMatchObject([{ signal: 'l/s/bottom', value: 3 }]);
  // Killed while it waits, it waits still.
  agent.core.live.settle();
  const { state, open } = agent;
  agent.killed(0, second);
  expect(agent.state).toEqual(state);
  expect(agent.open).toEqual(open);
  agent.pass(3_000);
  expect(pendingOf(agent)).toEqual([]);
  const bottom = agent.open['l/s/bottom']!;
  expect(bottom.filter(({ value }) => value === 3)).toHaveLength(1);
  for (let i = 0; i < 10; i += 1)
    agent.send('wall', 5, 30_000).send('bottom', reading(agent, 4), 30_000);
  expect(agent.ledger('site-changed')).toHaveLength(2);
  expect(agent.ledger('recovered-differs')).toEqual([]);
  expect(agent.ledger('transition').length).toBeGreaterThan(0);
  expect(replayed(agent, second).sort()).toEqual(inLedger(agent).sort());
  await agent.core.sealIfDue(true);
  expect(replayed(agent, second).sort()).toEqual(inLedger(agent).sort());
});

test('twice in one moment', () => {
  const agent = new Works(freshFolder());
  agent.send('wall', 8.5, 30_000).send('bottom', reading(agent, 3), 300);
  agent.core.site.change(sourceOf(fewer), 'p1');
  agent.core.site.change(sourceOf(limit(9)), 'p2');
  expect(pendingOf(agent)).toHaveLength(1);
  agent.core.live.settle();
  const { state, open } = agent;
  agent.killed(0, limit(9));
  expect(agent.state).toEqual(state);
  expect(agent.open).toEqual(open);
  for (let i = 0; i < 5; i += 1) agent.send('wall', 5, 30_000);
  expect(agent.ledger('transition').length).toBeGreaterThan(0);
  expect(replayed(agent, limit(9)).sort()).toEqual(inLedger(agent).sort());
});
