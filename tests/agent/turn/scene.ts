/**
 * A live turn on the wall clock with a real engine, desk and journal, a fake disk, and messages
 * that name a signal and carry its value. Time is the test runner's.
 */
import { vi } from 'vitest';
import { Desk } from '#agent/alarms/desk.ts';
import { inputKind } from '#agent/store/contract.ts';
import { Journal } from '#agent/turn/journal.ts';
import { Live } from '#agent/turn/live.ts';
import type { SampleKeeper, TurnIntake, TurnNews } from '#agent/turn/ports.ts';
import { Engine } from '#rules/engine.ts';
import type { Plan } from '#rules/plan/plan.ts';
import type { SampleBatch } from '#rules/signal/sample.ts';
import { smallPlan } from '#tests/rules/engine/small-plan.ts';
import { FakeStore } from './fake-store.ts';

/** A point of the grid. */
export const startMs = 1_800_000_000_000;

const marks = { 'l/s/put': 'rack' } as const;
const warm = { kind: 'band', on: 't', settings: { high: '30 Cel' } };

export const plans: Readonly<Record<string, Plan>> = {
  one: smallPlan({ revision: 'one', signals: { t: {} }, rules: { 'l/s/warm': warm }, marks }),
  two: smallPlan({ revision: 'two', signals: { a: {}, t: {} }, rules: { 'l/s/warm': warm } }),
};

const encoder = new TextEncoder();

export function scene() {
  vi.useFakeTimers({ now: startMs });
  const story: string[] = [];
  const store = new FakeStore(story);
  const news: TurnNews[] = [];
  const judged: string[] = [];
  let plan = plans.one!;
  const indexOf = (id: string): number => plan.signals.findIndex((signal) => signal.id === id);
  const intake: TurnIntake = {
    take: (topic, payload, _retained, beatMs, _nowMs, out) => {
      if (topic !== 'scan')
        out.push(indexOf(topic), beatMs, beatMs, Number(Buffer.from(payload).toString()), 0, 0);
    },
    marks: (topic, payload) =>
      topic === 'scan'
        ? [
            {
              kind: 'command',
              verb: 'mark',
              station: 'l/s',
              mark: 'put',
              item: Buffer.from(payload).toString(),
              by: 'topic:scan',
            },
          ]
        : [],
    markRefused: (mark, _message, why) => story.push(`refused ${mark.mark}: ${why}`),
    passTo: () => undefined,
    engineTimeMs: Number.NEGATIVE_INFINITY,
  };
  const line = (batch: SampleBatch): string =>
    Array.from(
      { length: batch.count },
      (_, i) => `${plan.signals[batch.signal[i]!]!.id}=${batch.value[i]!}`,
    ).join(' ');
  const samples: SampleKeeper = {
    pack: (batch) => encoder.encode(line(batch)),
    append: (batch) => void judged.push(line(batch)),
  };
  const journal = new Journal(store, 0, () => undefined);
  const live = new Live(
    {
      mode: 'wall',
      journal,
      desk: new Desk(),
      samples,
      intake,
      now: () => Date.now(),
      bodyOf: (input) => encoder.encode(JSON.stringify(input)),
      tell: (each) => {
        news.push(each);
        for (const effect of each.effects)
          if (effect.kind === 'transition')
            story.push(`told ${effect.transition}${each.kept ? '' : ' before kept'}`);
      },
      begin: () => {
        throw new Error('it has begun');
      },
    },
    null,
  );
  live.start(
    Engine.begin(plan, startMs, { emit: live.emit, planOf: (revision) => plans[revision]! }),
  );
  const send = (topic: string, value: number, qos = 1): void =>
    live.take(topic, encoder.encode(String(value)), false, qos, () =>
      story.push(`acknowledged ${value}`),
    );
  return {
    live,
    journal,
    store,
    story,
    news,
    send,
    /** Lays the plan out as the core does after `adopt`. */
    adopt: (revision: string): number => {
      const moment = live.adopt(revision);
      plan = plans[revision]!;
      return moment;
    },
    /** The log's rows as text: kind, judged after the start, body. */
    rows: (): string[] =>
      store.rows.map(({ kind, judged: at, body }) => {
        const name = Object.entries(inputKind).find(([, n]) => n === kind)![0];
        const text = Buffer.from(body).toString();
        return `${at - startMs} ${name} ${kind === inputKind.samples ? text : ''}`.trim();
      }),
  };
}
