/** Where judging begins anew, nothing from before stands without anybody who follows it. */
import { expect, test } from 'vitest';
import { replayFolder } from '#agent/wiring/replay-folder.ts';
import type { Effect } from '#rules/input.ts';
import { freshFolder } from '../store/folders.ts';
import { sourceOf, Works, works } from './works.ts';

/** The first row, which names the site, is gone, and so is what the site was. */
const siteLost = `UPDATE input SET crc = crc + 1 WHERE seq = (SELECT min(seq) FROM input);
  DELETE FROM site_revision`;

function cold(): Works {
  const agent = new Works(freshFolder());
  for (let i = 0; i < 15; i += 1) agent.send('wall', 3, 60_000);
  expect(agent.core.desk.open().map(({ rule }) => rule)).toContain('l/s/cold-adhesive');
  return agent;
}

const hold = (agent: Works, item: string): string => {
  const words = { what: 'container', item, by: 'p1', reason: 'it smells' } as const;
  void agent.core.live.command({ kind: 'command', verb: 'hold', ...words });
  agent.pass(1_000);
  return agent.core.desk.heldNow().find((held) => held.item === item)!.id;
};
const lift = (agent: Works, id: string): void => {
  const words = { hold: id, disposition: 'released', by: 'p2', reason: 'tested' } as const;
  void agent.core.live.command({ kind: 'command', verb: 'lift', ...words });
  agent.pass(1_000);
};

test('an alarm that stood is closed in the ledger, with its reason', () => {
  const agent = cold();
  const [stood] = agent.core.desk.open();
  agent.tampered(siteLost);
  expect(agent.core.begunAnew).toBe(true);
  expect(agent.core.desk.open()).toEqual([]);
  expect(agent.core.store.read.openOccurrences()).toEqual([]);
  expect(agent.ledger('closed-unfollowed')).toEqual([
    {
      id: expect.any(Number),
      type: 'closed-unfollowed',
      at: agent.nowMs,
      occurrence: stood!.id,
      rule: 'l/s/cold-adhesive',
      from: 'unacknowledged',
      reason: 'judging began anew',
    },
  ]);
  const kept = agent.core.desk.occurrence(stood!.id)!;
  expect(kept).toMatchObject({ state: 'normal', closed: agent.nowMs });
  expect(kept.steps.at(-1)).toMatchObject({ transition: 'removed', reason: 'judging began anew' });
  // It still holds: it is raised again, as one of its own.
  for (let i = 0; i < 15; i += 1) agent.send('wall', 3, 60_000);
  const [again] = agent.core.desk.open();
  expect(again!.rule).toBe('l/s/cold-adhesive');
  expect(again!.id).not.toBe(stood!.id);
  agent.restart();
  agent.killed();
  expect(agent.core.desk.open().map(({ id }) => id)).toEqual([again!.id]);
  expect(agent.ledger('closed-unfollowed')).toHaveLength(1);
});

test('where what is judged again no longer raises it, it is closed too', () => {
  const agent = cold();
  const [stood] = agent.core.desk.open();
  // All the readings by which it was raised.
  agent.tampered('UPDATE input SET crc = crc + 1 WHERE kind = 3');
  expect(agent.core.begunAnew).toBe(false);
  expect(agent.core.desk.open().map(({ id }) => id)).not.toContain(stood!.id);
  expect(agent.ledger('closed-unfollowed')).toMatchObject([
    { occurrence: stood!.id, reason: 'judged again from the record, it does not stand' },
  ]);
});

test('what stood on hold stands on, under its own id, and can be lifted', () => {
  const agent = cold();
  const first = hold(agent, 'drum-1');
  lift(agent, first);
  const stands = hold(agent, 'drum-2');
  const since = agent.core.desk.keptHold(stands)!.since;
  agent.tampered(siteLost).pass(2_000);
  expect(agent.core.begunAnew).toBe(true);
  const held = (): string[] => agent.core.desk.heldNow().map(({ item }) => item);
  expect(held()).toContain('drum-2');
  expect(agent.core.desk.keptHold(stands)).toMatchObject({ since, by: 'p1', reason: 'it smells' });
  // A new one does not take the place of an old one.
  const fresh = hold(agent, 'drum-9');
  expect([first, stands]).not.toContain(fresh);
  agent.restart();
  expect(held()).toEqual(expect.arrayContaining(['drum-2', 'drum-9']));
  expect(agent.ledger('recovered-differs')).toEqual([]);
  lift(agent, stands);
  expect(held()).not.toContain('drum-2');
  const rows = agent.core.store.read.holds();
  expect(rows.find(({ id }) => id === stands)).toMatchObject({ item: 'drum-2', since });
  expect(rows.find(({ id }) => id === first)).toMatchObject({ item: 'drum-1' });
});

test('a rule that a new site drops closes its alarm, in the ledger and in a replay', () => {
  const agent = cold();
  const [stood] = agent.core.desk.open();
  const without = works('cold-adhesive: { off: true, reason: "a test" }');
  agent.restart(0, without);
  expect(agent.ledger('transition').at(-1)).toMatchObject({
    occurrence: stood!.id,
    transition: 'removed',
    to: 'normal',
  });
  expect(agent.ledger('closed-unfollowed')).toEqual([]);
  const effects: Effect[] = [];
  const source = sourceOf(without);
  replayFolder(source, agent.folder, {}, { emit: (effect) => effects.push(effect) });
  expect(effects.at(-1)).toMatchObject({ occurrence: stood!.id, transition: 'removed' });
});
