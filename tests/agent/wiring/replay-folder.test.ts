/** A data folder judged again: under its own site to the byte, under another wholly by that. */
import { describe, expect, test } from 'vitest';
import { ledgerBody } from '#agent/alarms/desk.ts';
import { canonicalJson } from '#agent/store/canonical.ts';
import { type FolderSpan, replayFolder } from '#agent/wiring/replay-folder.ts';
import type { Effect } from '#rules/input.ts';
import { freshFolder } from '../store/folders.ts';
import { sourceOf, start, Works, works } from './works.ts';

const minute = 60_000;
const other = works('cold-adhesive: { low: 9 Cel, low_low: 4 Cel, on_delay: 1 min }');

const again = (agent: Works, lines: string, span: FolderSpan = {}, wholly = false) => {
  const effects: Effect[] = [];
  const sinks = { emit: (effect: Effect) => effects.push(effect) };
  const end = replayFolder(sourceOf(lines), agent.folder, { ...span, wholly }, sinks);
  return { effects: effects.map((effect) => canonicalJson(ledgerBody(effect))), end };
};

const inLedger = (agent: Works): string[] =>
  [...agent.core.store.read.ledgerAfter(0)].flatMap(({ record }) => {
    const { id: _, told_before_kept: __, ...body } = JSON.parse(record) as Record<string, unknown>;
    const kinds = ['transition', 'judgeable', 'hold', 'run', 'refused'];
    return kinds.includes(String(body.type)) ? [canonicalJson(body)] : [];
  });

function anHour(agent: Works, from: number): Works {
  for (let i = 0; i < 60; i += 1)
    agent
      .send('wall', Math.round((from - i * 0.15) * 10) / 10, 20_000)
      .send('air', 20 + (i % 3), 20_000)
      .send('bottom', JSON.stringify({ v: 9, t: agent.nowMs - 1_500 }), 20_000);
  return agent;
}
const say = (agent: Works, verb: 'acknowledge' | 'shelve'): void => {
  const [open] = agent.core.desk.open();
  void agent.core.live.command({
    kind: 'command',
    verb,
    occurrence: open!.id,
    by: 'p1',
    reason: 'because',
    untilMs: agent.nowMs + 10 * minute,
  });
  agent.pass(1_000);
};

describe('under its own site', () => {
  test('it gives the effects its ledger holds: open and sealed, over restarts, commands and wildcards', async () => {
    const agent = anHour(new Works(freshFolder()), 10);
    say(agent, 'acknowledge');
    agent.send('cells/one/a', 31).send('cells/two/a', 31);
    expect(again(agent, works()).effects).toEqual(inLedger(agent));
    await agent.core.sealIfDue(true);
    expect(again(agent, works()).effects).toEqual(inLedger(agent));
    agent.restart(45 * minute);
    say(agent, 'shelve');
    anHour(agent, 12)
      .killed(2 * minute)
      .pass(6_000);
    expect(inLedger(agent).length).toBeGreaterThan(10);
    expect(again(agent, works()).effects).toEqual(inLedger(agent));
  });
  test('and under each of the sites it had, in turn', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    agent.restart(0, other);
    anHour(agent, 12);
    expect(again(agent, other).effects).toEqual(inLedger(agent));
  });
  test('what was taken and still waits is not judged', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    agent.send('bottom', JSON.stringify({ v: 0, t: agent.nowMs }), 500);
    agent.core.live.settle();
    const { end, effects } = again(agent, works());
    expect(effects).toEqual(inLedger(agent));
    expect(end.toMs).toBeLessThanOrEqual(agent.core.live.engineNow!);
  });
});

describe('under another site', () => {
  test('all of it is judged by that, whatever the record’s own sites were', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    const raised = (lines: string) =>
      again(agent, lines).effects.filter(
        (e) => e.includes('"transition":"raised"') && e.includes('cold-adhesive"'),
      );
    const [own] = raised(works());
    const [theirs] = raised(other);
    const judged = (effect: string): number => JSON.parse(effect).judged;
    // 10 Cel falling 0.15 K a minute: below 9 from minute 8, and 1 more; below 7 from 21, and 10 more.
    expect((judged(theirs!) - start) / minute).toBeCloseTo(9, 0);
    expect((judged(own!) - start) / minute).toBeCloseTo(31, 0);
  });
  test('a site that has none of its signals is silent', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    const none =
      'x: { y: { kind: custom, signals: { z: { topic: z, payload: { kind: plain }, unit: Cel } } } }';
    expect(again(agent, none).effects).toEqual([]);
  });
});

describe('a site the record had once, and left', () => {
  /** The moments at which it says that the adhesive is cold. */
  const raised = ({ effects }: { effects: string[] }): number[] =>
    effects
      .filter((e) => e.includes('"transition":"raised"') && e.includes('cold-adhesive"'))
      .map((effect) => Math.round((JSON.parse(effect).judged - start) / minute));

  test('judges all of it when it is asked for, like a site the record never had', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    agent.restart(0, other);
    anHour(agent, 12);
    const never = works('cold-adhesive: { low: 7 Cel, low_low: 5 Cel, on_delay: 601 s }');
    // Below 7 Cel from minute 21 on; the second hour begins at 12 Cel and comes there in minute 94.
    expect(raised(again(agent, works()))).toEqual([31, 104]);
    expect(raised(again(agent, never))).toEqual([31, 104]);
    // As it was: the first hour under the first site, the second under the other.
    expect(raised(again(agent, other))).toEqual([31, 82]);
  });
  test('taken back, it is the last, and each counts for its time', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    agent.restart(0, other);
    anHour(agent, 12);
    agent.restart(0, works());
    anHour(agent, 12);
    expect(again(agent, works()).effects).toEqual(inLedger(agent));
    expect(raised(again(agent, other))).toEqual([9, 82, 142]);
  });
  test('sealed as well', async () => {
    const agent = anHour(new Works(freshFolder()), 10);
    agent.restart(0, other);
    anHour(agent, 12);
    await agent.core.sealIfDue(true);
    expect(raised(again(agent, works()))).toEqual([31, 104]);
    expect(again(agent, other).effects).toEqual(inLedger(agent));
  });
  test('wholly under the last: its own earlier revisions do not count', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    agent.restart(0, other);
    anHour(agent, 12);
    expect(raised(again(agent, other, {}, true))).toEqual([9, 82]);
  });
  test('from a moment on: under the revision that held then', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    agent.restart(0, other);
    anHour(agent, 12);
    expect(raised(again(agent, other, { sinceMs: start + 20 * minute }))).toEqual([31, 82]);
  });
});

describe('a part of it', () => {
  test('ends before `until`, and begins anew at `since`', () => {
    const agent = anHour(new Works(freshFolder()), 10);
    const whole = again(agent, works()).effects;
    const cut = start + 31 * minute;
    const first = again(agent, works(), { untilMs: cut }).effects;
    expect(first).toEqual(whole.slice(0, first.length));
    expect(first.every((effect) => JSON.parse(effect).judged <= cut)).toBe(true);
    const late = again(agent, works(), { sinceMs: cut });
    expect(late.end.fromMs).toBeGreaterThanOrEqual(cut);
    // It cannot know that the value was low before: the delay runs from where it begins.
    const raised = late.effects.find((effect) => effect.includes('cold-adhesive"'))!;
    expect(JSON.parse(raised).judged).toBeGreaterThanOrEqual(cut + 10 * minute);
  });
});
