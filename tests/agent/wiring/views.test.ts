/** What the agent shows has the shape it promises, whatever state the engine is in. */

import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import {
  alarmSchema,
  coverageSchema,
  holdSchema,
  sampleEventSchema,
  signalSchema,
} from '#agent/web/contract.ts';
import { ruleSchema } from '#agent/web/rule-contract.ts';
import { ruleView } from '#agent/wiring/rule-view.ts';
import { noLimits } from '#agent/wiring/ruler-limits.ts';
import { alarmView, holdView, sampleView, signalView } from '#agent/wiring/views.ts';
import { coverageNow } from '#agent/wiring/watching.ts';
import { quality } from '#rules/signal/quality.ts';
import { uniform } from '../../rules/kinds/chance.ts';
import { freshFolder } from '../store/folders.ts';
import { Works, works } from './works.ts';

const fits = (schema: z.ZodType, view: unknown): void => {
  // Through JSON, as it travels: what JSON turns into null must be allowed to be null.
  const read = schema.safeParse(JSON.parse(JSON.stringify(view)));
  expect(read.error?.issues ?? [], JSON.stringify(view)).toEqual([]);
};

/** Every view of the agent as it is now; how many alarms were among them. */
function look(agent: Works): number {
  const { plans, samples, desk, live } = agent.core;
  const { plan, rules } = plans.now;
  const signalOf = (id: string) => plan.signals.find((signal) => signal.id === id) ?? null;
  for (const [i, signal] of plan.signals.entries()) {
    const latest = samples.latest(i);
    fits(signalSchema, signalView(signal, latest, null, noLimits));
    if (latest !== null) fits(sampleEventSchema, sampleView(signal, latest));
  }
  for (const occurrence of desk.atHand()) {
    const card = rules.find(({ id }) => id === occurrence.rule) ?? null;
    const view = alarmView(occurrence, card, signalOf(occurrence.signal), plans.timezone);
    fits(alarmSchema, view);
    expect(view.label.sentence).not.toMatch(/unknown|NaN|undefined|Infinity|[{}]/);
  }
  for (const hold of desk.heldNow()) fits(holdSchema, holdView(hold));
  for (const card of rules) fits(ruleSchema, ruleView(card, signalOf));
  const view = coverageNow(agent.core, live.engineNow!);
  fits(coverageSchema, view);
  const hazards = view.stations.flatMap((station) => station.hazards);
  expect(view.watched + view.not_watched + view.unjudged).toBe(hazards.length);
  return desk.atHand().length;
}

test('before the first reading', () => {
  look(new Works(freshFolder()));
});

test('through a day of anything', () => {
  const agent = new Works(freshFolder());
  const chance = uniform(20_261_125);
  let alarms = 0;
  for (let i = 0; i < 400; i += 1) {
    const value = Math.round((chance() * 60 - 10) * 10) / 10;
    const topic = ['wall', 'air', 'humidity', 'bottom', 'cells/one/a'][Math.floor(chance() * 5)]!;
    const own = JSON.stringify({ v: value, t: agent.nowMs - Math.floor(chance() * 3_000) });
    const payload = chance() < 0.1 ? 'nonsense' : topic === 'bottom' ? own : value;
    agent.send(topic, payload, Math.floor(chance() * 120_000));
    const [open] = agent.core.desk.open();
    const verb = (['acknowledge', 'shelve', 'unshelve', 'reset'] as const)[
      Math.floor(chance() * 8)
    ];
    if (open !== undefined && verb !== undefined)
      void agent.core.live.command({
        kind: 'command',
        verb,
        occurrence: open.id,
        by: 'p1',
        reason: 'because',
        untilMs: agent.nowMs + 60_000,
      });
    if (i % 10 === 0) alarms = Math.max(alarms, look(agent));
  }
  expect(alarms).toBeGreaterThan(20);
  agent.restart(86_400_000);
  look(agent);
}, 60_000);

describe('what is no longer there', () => {
  test('an alarm whose rule left the site is shown without its label', () => {
    const agent = new Works(freshFolder());
    for (let i = 0; i < 15; i += 1) agent.send('wall', 4, 60_000);
    const rule = 'l/s/cold-adhesive';
    agent.restart(0, works('cold-adhesive: { off: true, reason: "a test" }'));
    const occurrence = agent.core.desk.atHand().find((each) => each.rule === rule)!;
    expect(occurrence).toMatchObject({ state: 'normal' });
    const view = alarmView(occurrence, null, null, 'Europe/Dublin');
    fits(alarmSchema, view);
    expect(view.label.sentence).toBe(`${rule} is no longer part of this site.`);
  });
  test('a bad reading is shown with its cause and without a value', () => {
    const signal = new Works(freshFolder()).core.plans.now.plan.signals[0]!;
    const latest = { at: 1, value: 0, quality: quality.outOfRange };
    expect(sampleView(signal, latest)).toMatchObject({
      value: null,
      quality: { grade: 'bad', cause: 'outside what the sensor can read' },
    });
    fits(signalSchema, signalView(signal, latest, null, noLimits));
  });
});
