/**
 * Two sites over a folder with a history: wildcard values found while it ran, sites loaded anew,
 * alarms out of service. What differs comes of the rule that was changed, and of nothing else.
 */
import { expect, test } from 'vitest';
import { replayFolder } from '#agent/wiring/replay-folder.ts';
import { AlarmStories } from '#rules/alarm/alarm-story.ts';
import { compareAlarms } from '#rules/alarm/compare-alarms.ts';
import { freshFolder } from '../store/folders.ts';
import { sourceOf, Works } from './works.ts';

/** Cells found as they speak, each watched for its silence, beside a rule of the site's own. */
const cells = (high: string, floor = '40 Cel'): string => `
l:
  s:
    kind: custom
    signals:
      air: { topic: air, payload: { kind: plain }, unit: Cel, expect_every: 60 s }
    rules:
      warm: { kind: band, signal: air, high: ${high}, on_delay: 0 s, priority: low, consequence: C., actions: [A.] }
      at-floor: { kind: band, signal: air, high: ${floor}, priority: low, consequence: C., actions: [A.] }
  c:
    kind: custom
    signals:
      a: { topic: "cells/+/a", names: [cell], payload: { kind: plain }, unit: Cel, expect_every: 60 s }
    rules:
      hot: { kind: band, signal: a, high: 30 Cel, on_delay: 0 s, priority: low, consequence: C., actions: [A.] }
`;

const storiesOf = (agent: Works, lines: string) => {
  const stories = new AlarmStories();
  const emit = stories.take.bind(stories);
  const end = replayFolder(sourceOf(lines), agent.folder, { wholly: true }, { emit });
  return { stories: stories.list(), untilMs: (end.toMs ?? 0) + 1 };
};

function differenceOf(agent: Works, now: string, other: string) {
  const [one, two] = [storiesOf(agent, now), storiesOf(agent, other)];
  const { same, gained, lost, moved } = compareAlarms(one.stories, two.stories, one.untilMs);
  const rules = [...gained, ...lost, ...moved.map(({ after }) => after)].map(({ rule }) => rule);
  return { same, rules: [...new Set(rules)], told: [one.stories.length, two.stories.length] };
}

function outOfService(
  agent: Works,
  rule: RegExp,
  verb: 'remove-from-service' | 'return-to-service',
) {
  const open = agent.core.desk.open().filter((one) => rule.test(one.rule));
  expect(open.length).toBeGreaterThan(0);
  for (const { id: occurrence } of open)
    void agent.core.live.command({
      kind: 'command',
      ...{ verb, occurrence, by: 'p1', reason: 'sensor is being changed' },
    });
  agent.pass(1_000);
}

/** Each of the cells and the air, once every twenty seconds; `silent` cells say nothing. */
function hours(
  agent: Works,
  n: number,
  values: (i: number) => number,
  silent: readonly string[] = [],
) {
  for (let i = 0; i < n * 60; i += 1) {
    agent.send('air', values(i), 20_000);
    for (const cell of ['one', 'two'].filter((name) => !silent.includes(name)))
      agent.send(`cells/${cell}/a`, 25 + (i % 10), 20_000);
  }
  return agent;
}

const wave = (i: number): number => 20 + (i % 30);

function history(): Works {
  const agent = hours(new Works(freshFolder(), cells('35 Cel', '45 Cel')), 1, wave);
  agent.core.site.change(sourceOf(cells('35 Cel', '42 Cel')), 'p1');
  // One cell falls silent, its alarm is taken out of service, and it comes back.
  hours(agent, 1, wave, ['two']);
  outOfService(agent, /lost-a/, 'remove-from-service');
  hours(agent, 1, wave);
  agent.send('cells/three/a', 33);
  agent.core.site.change(sourceOf(cells('35 Cel')), 'p1');
  hours(agent, 1, wave, ['one', 'two']);
  outOfService(agent, /lost-a/, 'return-to-service');
  agent.restart(20 * 60_000, cells('35 Cel'));
  return hours(agent, 1, wave);
}

test('only the rule that was changed differs, and a site does not differ from itself', () => {
  const agent = history();
  const now = cells('35 Cel');
  const itself = differenceOf(agent, now, now);
  expect(itself).toMatchObject({ rules: [] });
  expect(itself.same).toBeGreaterThan(10);
  const { rules, same, told } = differenceOf(agent, now, cells('50 Cel'));
  expect(rules).toEqual(['l/s/warm']);
  expect(told[0]).toBeGreaterThan(told[1]!);
  expect(same).toBeGreaterThan(10);
  // The site it had first is no less a site like another.
  expect(differenceOf(agent, now, cells('35 Cel', '45 Cel')).rules).toEqual(['l/s/at-floor']);
}, 120_000);
