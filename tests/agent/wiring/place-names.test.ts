/** A place of a wildcard belongs to the topic that took its name first: over restarts, kills and reloads. */
import { describe, expect, test } from 'vitest';
import { sourceOfText } from '#agent/site/revision.ts';
import { canonicalJson } from '#agent/store/canonical.ts';
import { replayFolder } from '#agent/wiring/replay-folder.ts';
import { coverageNow } from '#agent/wiring/watching.ts';
import { freshFolder } from '../store/folders.ts';
import { sourceOf, Works } from './works.ts';

const site = (filter = 'r/+/t', high = 92): string => `
l:
  o:
    kind: custom
    signals:
      t: { topic: "${filter}", names: [place], payload: { kind: plain }, unit: Cel }
    rules:
      hot: { kind: band, signal: t, high: ${high} Cel, on_delay: 0 s, priority: high,
        consequence: It burns., actions: [Leave.] }
`;
const burning = (): Works =>
  new Works(freshFolder(), site()).send('r/Heck_A/t', 108).send('r/heck-a/t', 40);
const collisions = (agent: Works) => agent.core.intake.counters.causes['instance-collision'];
const standing = (agent: Works) => agent.core.desk.open().map(({ rule, state }) => [rule, state]);
const alarm = [['l/o/hot-heck-a', 'unacknowledged']];
const topics = (agent: Works) => sourceOfText(agent.core.plans.now.text).topics;

describe('the topic that took a name first keeps it', () => {
  test('an alarm does not end because another sensor speaks first after a kill', () => {
    const agent = burning();
    expect(standing(agent)).toEqual(alarm);
    expect(collisions(agent)).toBe(1);
    agent.core.live.settle();
    agent.killed().send('r/heck-a/t', 40);
    expect(collisions(agent)).toBe(1);
    expect(standing(agent)).toEqual(alarm);
    agent.send('r/Heck_A/t', 109);
    expect(collisions(agent)).toBe(1);
    expect(topics(agent)).toEqual({ 'l/o/t': { 'heck-a': 'r/Heck_A/t' } });
  });
  test('nor after a restart in order, a seal, and another site file', async () => {
    const agent = burning();
    await agent.core.sealIfDue(true);
    agent.restart(0, site('r/+/t', 93)).send('r/heck-a/t', 40);
    expect(collisions(agent)).toBe(1);
    agent.core.site.change(sourceOf(site('r/+/t', 94)), 'p1' as never);
    agent.send('r/heck-a/t', 40);
    expect(collisions(agent)).toBe(2);
    expect(standing(agent).at(-1)).toEqual(alarm[0]);
  });
  test('another filter, which its topic does not meet, gives the name free', () => {
    const agent = burning();
    agent.core.site.change(sourceOf(site('q/+/t')), 'p1' as never);
    agent.send('q/heck-a/t', 40);
    expect(collisions(agent)).toBe(1);
    expect(topics(agent)).toEqual({ 'l/o/t': { 'heck-a': 'q/heck-a/t' } });
    agent.restart(0, site('q/+/t')).send('q/Heck_A/t', 40);
    expect(collisions(agent)).toBe(1);
  });
  test('a site that was changed and changed back says whose the name is, after a restart too', async () => {
    const agent = burning();
    agent.core.site.change(sourceOf(site('q/+/t')), 'p1' as never);
    agent.core.site.change(sourceOf(site()), 'p1' as never);
    agent.send('r/Heck_A/t', 108).send('r/heck-a/t', 40);
    expect(collisions(agent)).toBe(2);
    agent.restart().send('r/heck-a/t', 40);
    expect(collisions(agent)).toBe(1);
    await agent.core.sealIfDue(true);
    agent.restart().send('r/heck-a/t', 40);
    expect(collisions(agent)).toBe(1);
  });
  test('a record that does not say the topic is read as before, and says it from then on', () => {
    const agent = burning();
    agent.core.live.settle();
    const sql = "UPDATE site_revision SET text = json_remove(text, '$.topics')";
    agent.tampered(sql).send('r/heck-a/t', 40).send('r/Heck_A/t', 108);
    expect(topics(agent)).toEqual({ 'l/o/t': { 'heck-a': 'r/heck-a/t' } });
    expect(collisions(agent)).toBe(1);
    agent.core.live.settle();
    agent.killed().send('r/Heck_A/t', 108);
    expect(collisions(agent)).toBe(1);
  });
  test('what is replayed agrees with what was judged', () => {
    const agent = burning();
    agent.restart().send('r/heck-a/t', 40).send('r/Heck_A/t', 20);
    agent.core.live.settle();
    const told: string[] = [];
    replayFolder(
      sourceOf(site()),
      agent.folder,
      {},
      {
        emit: (effect) => told.push(canonicalJson(effect)),
      },
    );
    expect(told.filter((each) => each.includes('hot-heck-a')).length).toBeGreaterThan(1);
  });
});

describe('a place whose name is taken is not watched', () => {
  test('and coverage says so, with its topic and that of the other', () => {
    const agent = burning();
    const view = coverageNow(agent.core, agent.nowMs);
    expect(view.name_taken).toMatchObject([
      { topic: 'r/heck-a/t', owner: 'r/Heck_A/t', signal: 'l/o/t-heck-a' },
    ]);
    expect(view.name_taken![0]!.rules).toContain('l/o/hot-heck-a');
    const hazard = view.stations[0]!.hazards.find(({ rules }) => rules.includes('l/o/hot-heck-a'))!;
    expect(hazard.name_taken).toEqual(['r/heck-a/t']);
    expect(hazard.why).toContain('sends on r/heck-a/t is not watched');
    agent.core.site.change(sourceOf(site('r/+/t', 95)), 'p1' as never);
    expect(coverageNow(agent.core, agent.nowMs).name_taken).toHaveLength(1);
  });
});

describe('places without a usable reading', () => {
  test('keep their hazard from being counted as watched, and are named', () => {
    const agent = new Works(freshFolder(), site()).send('r/a/t', 40).send('r/b/t', 40);
    const seen = () => coverageNow(agent.core, agent.nowMs);
    const hazard = () =>
      seen().stations[0]!.hazards.find(({ rules }) => rules.includes('l/o/hot-a'))!;
    expect(hazard()).toMatchObject({ state: 'watched', unread: [] });
    agent.send('r/b/t', 'broken');
    expect(hazard()).toMatchObject({
      state: 'unjudged',
      unread: [{ rule: 'l/o/hot-b', signals: ['l/o/t-b'] }],
      why: 'l/o/hot-b is not judged now: no usable reading of l/o/t-b.',
    });
    expect(seen()).toMatchObject({ watched: 0, unjudged: 1 });
    agent.send('r/b/t', 40);
    expect(hazard()).toMatchObject({ state: 'watched', why: null });
  });
});
