/** Oven runs through the agent: ledger, store, restart, replay and the wire. */
import { describe, expect, test } from 'vitest';
import { ledgerBody } from '#agent/alarms/desk.ts';
import { canonicalJson } from '#agent/store/canonical.ts';
import { runProfileSchema, runsSchema } from '#agent/web/run-contract.ts';
import { replayFolder } from '#agent/wiring/replay-folder.ts';
import { runProfile, runViews } from '#agent/wiring/run-views.ts';
import { freshFolder } from '../store/folders.ts';
import { sourceOf, start, Works } from './works.ts';

const oven = `
l:
  o:
    kind: drying-oven
    signals:
      metal: { topic: metal, payload: { kind: plain }, unit: Cel }
      loaded: { topic: loaded, payload: { kind: plain }, unit: "1" }
      zone-1-air: { topic: air, payload: { kind: plain }, unit: Cel }
    rules:
      under-dried: { above: 65 Cel, above_for: 10 min, dwell: 25 min }
      over-baked: { peak: 100 Cel }
`;
const minute = 60_000;
const everything = { sinceMs: 0, untilMs: Number.MAX_SAFE_INTEGER, limit: 10, station: null };

/** A load of so many minutes, heated from 20 by `perMin`. */
function load(agent: Works, minutes: number, perMin: number, empties = true): Works {
  agent.send('loaded', 1);
  for (let m = 0; m < minutes; m += 1)
    agent.send('metal', Math.min(80, 20 + m * perMin), 30_000).send('air', 85, 30_000);
  return empties ? agent.send('loaded', 0) : agent;
}
const runs = (agent: Works) => runViews(agent.core, everything);
const runRecords = (agent: Works) => agent.ledger('run').map(({ id: _, ...rest }) => rest);

test('a load is entered in the ledger, kept, and found again', () => {
  const agent = load(new Works(freshFolder(), oven), 25, 5);
  agent.core.live.settle();
  expect(runRecords(agent).map(({ action, run }) => `${action} ${run}`)).toEqual([
    expect.stringMatching(/^opened l\/o@\d+$/),
    expect.stringMatching(/^closed l\/o@\d+$/),
  ]);
  const [run] = runs(agent);
  expect(runsSchema.parse({ runs: runs(agent), truncated: false }).runs).toEqual([run]);
  expect(run).toMatchObject({
    line: 'l',
    station: 'o',
    why: 'unloaded',
    peak: 80,
    under: false,
    over: false,
    limits: { above: 65, above_for_ms: 10 * minute, peak: 100 },
  });
  expect(run!.closed! - run!.opened).toBeGreaterThan(24 * minute);
});

describe('a restart', () => {
  test.each(['restart', 'killed'] as const)('%s in the middle of a load goes on with it', (how) => {
    const agent = load(new Works(freshFolder(), oven), 10, 5, false);
    agent.core.live.settle();
    const [open] = runs(agent);
    expect(open).toMatchObject({ closed: null, peak: null, under: null });
    agent[how](5 * minute);
    expect(agent.ledger('recovered-differs')).toEqual([]);
    for (let m = 0; m < 8; m += 1) agent.send('metal', 80, 60_000);
    agent.send('loaded', 0);
    agent.core.live.settle();
    expect(runs(agent)).toHaveLength(1);
    expect(runs(agent)[0]).toMatchObject({ id: open!.id, opened: open!.opened, why: 'unloaded' });
    expect(runs(agent)[0]!.unobserved_ms).toBeGreaterThanOrEqual(5 * minute);
    expect(runRecords(agent)).toHaveLength(2);
  });
  test('finds a run in the ledger that its rows lack, and mends the rows', () => {
    const agent = load(new Works(freshFolder(), oven), 25, 5);
    agent.core.live.settle();
    const before = runs(agent);
    agent.tampered('UPDATE ledger SET record = replace(record, \'"peak":80\', \'"peak":81\')');
    expect(agent.ledger('recovered-differs')).toHaveLength(1);
    expect(runs(agent)).toEqual(before);
  });
});

test('a replay of the folder gives the same runs as the ledger holds', async () => {
  const agent = load(new Works(freshFolder(), oven), 25, 5);
  load(agent.pass(10 * minute), 25, 1);
  await agent.core.sealIfDue(true);
  load(agent.restart(30 * minute).pass(minute), 12, 5);
  agent.core.live.settle();
  const replayed: string[] = [];
  replayFolder(
    sourceOf(oven),
    agent.folder,
    {},
    {
      emit: (effect) => {
        if (effect.kind === 'run') replayed.push(canonicalJson(ledgerBody(effect)));
      },
    },
  );
  expect(replayed).toHaveLength(6);
  expect(replayed).toEqual(runRecords(agent).map((record) => canonicalJson(record as never)));
  expect(runs(agent).map(({ under }) => under)).toEqual([true, true, false]);
});

test('the profile is the metal, then the air, of the run’s own time', async () => {
  const agent = load(new Works(freshFolder(), oven), 25, 5);
  agent.core.live.settle();
  const [run] = runs(agent);
  const asked: unknown[] = [];
  const read = async (id: string, sinceMs: number, untilMs: number, points: number) => {
    asked.push([id, sinceMs, untilMs, points]);
    return { unit: 'Cel', points: [], uncertain: [], damage: [] };
  };
  const profile = await runProfile(agent.core, run!.id, 200, agent.nowMs, read);
  runProfileSchema.parse(profile);
  expect(asked).toEqual([
    ['l/o/metal', run!.opened, run!.closed! + 1, 200],
    ['l/o/zone-1-air', run!.opened, run!.closed! + 1, 200],
  ]);
  expect(await runProfile(agent.core, 'l/o@1', 200, agent.nowMs, read)).toBeNull();
  expect(start).toBeLessThan(run!.opened);
});
