/** From the disk back to where the agent was. */

import { describe, expect, test } from 'vitest';
import { DamageBook } from '#agent/wiring/damage-book.ts';
import { recordWords } from '#agent/wiring/finding-words.ts';
import { freshFolder } from '../store/folders.ts';
import { start, Works, works } from './works.ts';

/** Cold enough for alarms, with a dew point computed now and then. */
function aDay(agent: Works, minutes = 30): Works {
  for (let i = 0; i < minutes; i += 1)
    agent
      .send('wall', 8 - i * 0.1, 15_000)
      .send('air', 20 + (i % 3), 15_000)
      .send('humidity', 50 + (i % 5), 15_000)
      .send('bottom', JSON.stringify({ v: 9, t: agent.nowMs }), 15_000);
  return agent;
}
const begun = (): Works => new Works(freshFolder());

/** Restarts without downtime and expects everything to be as it was. */
function sameAfter(agent: Works, restart: (agent: Works) => Works): void {
  // A kill loses the last idle seconds, which nobody observed; here it comes right after a commit.
  agent.core.live.settle();
  const { state, open } = agent;
  restart(agent);
  expect(agent.ledger('recovered-differs')).toEqual([]);
  expect(agent.state).toEqual(state);
  expect(agent.open).toEqual(open);
}

describe('a restart finds all as it was', () => {
  test('from the log alone, derived samples among it', () => {
    const agent = aDay(begun());
    expect(agent.core.desk.open().length).toBeGreaterThan(0);
    expect(agent.open['l/s/air-dew-point']!.length).toBeGreaterThan(20);
    sameAfter(agent, (each) => each.restart());
    sameAfter(agent, (each) => each.killed());
    aDay(agent, 3);
    sameAfter(agent, (each) => each.restart());
  });
  test('from a snapshot and the log since then', async () => {
    const agent = aDay(begun());
    await agent.core.sealIfDue(true);
    expect(agent.open).toEqual({});
    aDay(agent, 10);
    sameAfter(agent, (each) => each.restart());
    sameAfter(agent, (each) => each.killed());
  });
  test('from the older snapshot where the newest is damaged', async () => {
    const agent = aDay(begun());
    await agent.core.sealIfDue(true);
    aDay(agent, 10);
    await agent.core.sealIfDue(true);
    aDay(agent, 10);
    const newest = 'SELECT max(seq) FROM snapshot';
    sameAfter(agent, (each) =>
      each.tampered(`UPDATE snapshot SET state = x'00' WHERE seq = (${newest})`),
    );
    expect(
      agent.ledger('finding').map(({ finding }) => (finding as { kind: string }).kind),
    ).toContain('damaged-snapshot');
  });
  test('from the sealed record where no snapshot is left', async () => {
    const agent = aDay(begun());
    await agent.core.sealIfDue(true);
    aDay(agent, 10);
    sameAfter(agent, (each) => each.tampered("UPDATE snapshot SET state = x'00'"));
  });
  test('what was held at the end is judged after the restart, in its turn', () => {
    const agent = aDay(begun(), 2);
    agent.send('bottom', JSON.stringify({ v: 3, t: agent.nowMs }), 500);
    const saved = agent.state as { pending: unknown[] };
    expect(saved.pending).toHaveLength(1);
    sameAfter(agent, (each) => each.restart());
    agent.pass(5_000);
    expect((agent.state as { pending: unknown[] }).pending).toEqual([]);
  });
});

test('without its snapshot, what was held still waits, and what a dropped signal said is kept', async () => {
  const agent = aDay(begun(), 5);
  await agent.core.sealIfDue(true);
  aDay(agent, 3);
  // Without the wildcard station and the humidity: its readings of this hour are open still.
  agent.restart(
    0,
    works()
      .replace(/^.*humidity:.*\n/m, '')
      .split('\n  c:')[0],
  );
  expect(agent.core.signalIndex('l/s/humidity')).toBe(-1);
  expect(agent.open['l/s/humidity']!.length).toBe(3);
  agent.send('bottom', JSON.stringify({ v: 3, t: agent.nowMs }), 500);
  expect((agent.state as { pending: unknown[] }).pending).toHaveLength(1);
  sameAfter(agent, (each) => each.restart());
  sameAfter(agent, (each) => each.tampered("UPDATE snapshot SET state = x'00'"));
});

const firstRowDamaged = 'UPDATE input SET crc = crc + 1 WHERE seq = (SELECT min(seq) FROM input)';

test('where the first row is damaged, which names the site, it is known all the same, and that is told', async () => {
  const agent = aDay(begun(), 5);
  agent.core.live.settle();
  sameAfter(agent, (each) => each.tampered(firstRowDamaged));
  expect(agent.core.begunAnew).toBe(false);
  expect(agent.ledger('begun-anew')).toEqual([]);
  expect(agent.ledger('site-assumed')).toMatchObject([
    { seq: 1, revision: agent.core.plans.now.plan.revision },
  ]);
  expect(agent.warnings.join()).toContain('Record 1 of the input log, which named the site');
  const words = recordWords(agent.core.store, new DamageBook(() => undefined), null).join(' ');
  expect(words).toContain('Record 1 of the input log is damaged and was skipped');
  // The seal names the site anew: nothing is assumed any more.
  await agent.core.sealIfDue(true);
  agent.core.store.deleteDead();
  aDay(agent, 5);
  sameAfter(agent, (each) => each.restart());
  expect(agent.ledger('site-assumed')).toHaveLength(1);
  const [site] = [...agent.core.store.read.commandsAfter(0)];
  expect(JSON.parse(site!.body)).toMatchObject({ kind: 'site' });
});

test('and where a later row names another site, nothing before it is passed over', () => {
  const agent = aDay(begun(), 5);
  const other = works('cold-adhesive: { low: 6 Cel, low_low: 4 Cel }');
  aDay(agent.restart(0, other), 5);
  agent.core.live.settle();
  expect(agent.open['l/s/wall']).toHaveLength(10);
  sameAfter(agent, (each) => each.tampered(firstRowDamaged));
  expect(agent.open['l/s/wall']).toHaveLength(10);
  expect(agent.ledger('site-assumed')).toHaveLength(1);
});

test('where nobody knows which site it was, judging begins anew, and that is told', () => {
  const agent = aDay(begun(), 5);
  expect(agent.core.begunAnew).toBe(false);
  agent.restart();
  expect(agent.ledger('begun-anew')).toEqual([]);
  agent.tampered(`${firstRowDamaged}; DELETE FROM site_revision`);
  expect(agent.core.begunAnew).toBe(true);
  expect(agent.ledger('begun-anew')).toHaveLength(1);
  expect(agent.warnings.join()).toContain('judging began anew');
  const words = recordWords(agent.core.store, new DamageBook(() => undefined), null, true).join(
    ' ',
  );
  expect(words).toContain('is damaged and was skipped');
  expect(words).toContain('An alarm from before is no longer followed');
});

describe('downtime', () => {
  test('is entered as a gap; alarms stay; nothing is lost at once', () => {
    const agent = aDay(begun());
    const before = agent.core.desk.open().map(({ id }) => id);
    agent.restart(3_600_000);
    expect(agent.core.desk.open().map(({ id }) => id)).toEqual(before);
    agent.pass(179_000);
    expect(agent.core.desk.open().map(({ rule }) => rule)).not.toContain('l/s/lost-wall');
    agent.pass(2_000);
    expect(agent.core.desk.open().map(({ rule }) => rule)).toContain('l/s/lost-wall');
    sameAfter(agent, (each) => each.restart());
  });
});

describe('a site that changed', () => {
  test('is adopted at the start: a rule that went closes its alarm, and says so', () => {
    const agent = aDay(begun());
    const open = () => agent.core.desk.open().map(({ rule }) => rule);
    expect(open()).toContain('l/s/cold-adhesive');
    const other = works('cold-adhesive: { off: true, reason: "a test" }');
    agent.restart(0, other);
    expect(open()).not.toContain('l/s/cold-adhesive');
    const last = agent.ledger('transition').at(-1);
    expect(last).toMatchObject({ rule: 'l/s/cold-adhesive', transition: 'removed', to: 'normal' });
    sameAfter(agent, (each) => each.restart());
    aDay(agent, 5);
    sameAfter(agent, (each) => each.killed());
    agent.restart(0, works());
    aDay(agent, 25);
    expect(open()).toContain('l/s/cold-adhesive');
    sameAfter(agent, (each) => each.restart());
  });
  test('and a snapshot from before it, with the newest damaged, lead to the same', async () => {
    const agent = aDay(begun());
    await agent.core.sealIfDue(true);
    aDay(agent, 5);
    agent.restart(0, works('cold-adhesive: { low: 6 Cel, low_low: 4 Cel }'));
    aDay(agent, 5);
    await agent.core.sealIfDue(true);
    aDay(agent, 5);
    agent.restart(0, works('warm-store: { off: true, reason: "a test" }'));
    aDay(agent, 5);
    const newest = 'SELECT max(seq) FROM snapshot';
    sameAfter(agent, (each) =>
      each.tampered(`UPDATE snapshot SET state = x'00' WHERE seq = (${newest})`),
    );
  });
});

describe('a value that a wildcard took', () => {
  test('is a signal of the site after a restart, with its rules and their memory', () => {
    const agent = aDay(begun(), 3);
    agent.send('cells/seven/a', 31).send('cells/eight/a', 20).send('cells/seven/a', 32);
    expect(agent.core.desk.open().map(({ rule }) => rule)).toContain('l/c/high-seven');
    expect(agent.open['l/c/a-seven']!.map(({ value }) => value)).toEqual([31, 32]);
    sameAfter(agent, (each) => each.restart());
    agent.send('cells/eight/a', 33);
    expect(agent.core.desk.open().map(({ rule }) => rule)).toContain('l/c/high-eight');
    sameAfter(agent, (each) => each.killed());
  });
  test('comes between a reading and what is computed from it: each stays with its own signal', () => {
    const agent = begun();
    agent.send('air', 20).send('humidity', 50);
    const dew = () => agent.open['l/s/air-dew-point']!.length;
    const before = dew();
    // The dew point of this reading is due when the wildcard's first value lays out a new plan.
    agent.send('air', 25, 60);
    agent.nowMs += 2_000;
    agent.send('cells/a-first-one/a', 20);
    expect(dew()).toBe(before + 1);
    expect(agent.open['l/c/a-a-first-one']).toMatchObject([{ value: 20 }]);
    sameAfter(agent, (each) => each.restart());
  });
});

describe('duplicates', () => {
  test('are remembered across a restart, equal ones and others', () => {
    const agent = begun();
    const at = agent.nowMs;
    const reading = (v: number) => JSON.stringify({ v, t: at });
    agent.send('bottom', reading(9)).restart();
    agent.send('bottom', reading(9)).send('bottom', reading(8));
    expect(agent.open['l/s/bottom']!.map(({ value }) => value)).toEqual([9, 8]);
    expect(agent.acknowledged).toBe(3);
    agent.pass(5_000);
    const { latest } = agent.state as { latest: Record<string, { value: number }> };
    expect(latest['l/s/bottom']!.value).toBe(9);
  });
});

test('duplicates are remembered across a seal and a restart as well', async () => {
  const agent = begun();
  const at = agent.nowMs;
  const reading = (v: number) => JSON.stringify({ v, t: at });
  agent.send('bottom', reading(9)).pass(3_000);
  await agent.core.sealIfDue(true);
  expect(agent.open['l/s/bottom'] ?? []).toEqual([]);
  agent.restart();
  agent.send('bottom', reading(9)).send('bottom', reading(8));
  expect(agent.open['l/s/bottom']!.map(({ value }) => value)).toEqual([8]);
});

test('every acknowledged message is there after a kill', () => {
  const agent = aDay(begun(), 5);
  const { acknowledged } = agent;
  agent.killed();
  const sent = /^l\/s\/(wall|air|humidity|bottom)$|^l\/c\//;
  const kept = Object.entries(agent.open).filter(([name]) => sent.test(name));
  expect(kept.reduce((sum, [, samples]) => sum + samples.length, 0)).toBe(acknowledged);
  expect(agent.nowMs).toBeGreaterThan(start);
});
