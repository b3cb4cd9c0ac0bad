/** A rule's memory across versions of its kind: carried over where the kind can, begun anew where not. */
import { describe, expect, test } from 'vitest';
import { z } from 'zod/mini';
import { Engine } from '#rules/engine.ts';
import type { Effect } from '#rules/input.ts';
import type { RuleKind } from '#rules/kinds/kind.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { SampleBatch } from '#rules/signal/sample.ts';
import { smallPlan } from './small-plan.ts';

interface Sum {
  sum: number;
}

/** Abnormal while the sum of all readings is above ten. */
const summing = (version: number, migrate?: RuleKind<unknown, Sum>['migrate']): RuleKind =>
  ({
    name: 'sum',
    version,
    summary: 'A sum above ten.',
    written: z.strictObject({}),
    compile: () => ({}),
    begin: () => ({ sum: 0 }),
    sample(_, memory, reading) {
      memory.sum += reading.value;
      return memory.sum > 10 ? 1 : 0;
    },
    gap: () => undefined,
    shift: () => undefined,
    evidence: (_, memory) => ({ value: memory.sum }),
    sentence: () => '',
    ...(migrate === undefined ? {} : { migrate }),
  }) satisfies RuleKind<unknown, Sum> as unknown as RuleKind;

function planWith(kind: RuleKind): Plan {
  const plan = smallPlan({
    signals: { a: {} },
    rules: { r: { kind: 'band', on: 'a', settings: { high: '1 Cel' } } },
  });
  return { ...plan, rules: plan.rules.map((rule) => ({ ...rule, kind, settings: {} })) };
}

class Run {
  readonly told: string[] = [];
  engine: Engine;
  private plan: Plan;

  constructor(kind: RuleKind) {
    this.plan = planWith(kind);
    this.engine = Engine.begin(this.plan, 0, this.ports());
  }

  restartedWith(kind: RuleKind): this {
    const saved = JSON.parse(JSON.stringify(this.engine.save()));
    this.plan = planWith(kind);
    this.engine = Engine.restore(this.plan, saved, this.ports());
    return this;
  }

  see(at: number, value: number): this {
    const batch = new SampleBatch(1);
    batch.push(0, at, at, value, 0, 0);
    this.engine.feed(batch);
    return this;
  }

  get sum(): unknown {
    return this.engine.present.book.evidence(0).value;
  }

  private ports() {
    return {
      emit: (effect: Effect): void => {
        if (effect.kind === 'transition') this.told.push(`${effect.judged} ${effect.transition}`);
      },
      planOf: (): Plan => this.plan,
    };
  }
}

describe('after a restart with another version of the kind', () => {
  test('the same version goes on', () => {
    const run = new Run(summing(1)).see(1, 6).restartedWith(summing(1)).see(2, 6);
    expect([run.sum, run.told]).toEqual([12, ['2 raised']]);
  });
  test('migrate is given the old memory and its version, and what it gives goes on', () => {
    const asked: unknown[] = [];
    const second = summing(2, (old, version) => {
      asked.push(structuredClone(old), version);
      return { sum: (old as Sum).sum + 100 };
    });
    const run = new Run(summing(1)).see(1, 6).restartedWith(second).see(2, 1);
    expect(asked).toEqual([{ sum: 6 }, 1]);
    expect([run.sum, run.told]).toEqual([107, ['2 raised']]);
  });
  test.each([
    ['gives null', summing(2, () => null)],
    ['is not there', summing(2)],
  ])('where migrate %s it begins anew with what is known', (_, second) => {
    const run = new Run(summing(1)).see(1, 6).see(2, 3).restartedWith(second);
    // The latest reading, 3, is judged by the new memory at once.
    expect(run.sum).toBe(3);
    expect(run.see(3, 8).told).toEqual(['3 raised']);
  });
  test('an alarm that stands keeps its occurrence until the new memory has judged', () => {
    const run = new Run(summing(1)).see(1, 11);
    const { occurrence } = run.engine.present.alarms.list[0]!;
    run.restartedWith(summing(2));
    expect(run.told).toEqual(['1 raised']);
    expect(run.engine.present.alarms.list[0]).toMatchObject({
      state: 'unacknowledged',
      occurrence,
    });
    expect(run.see(2, -20).told).toEqual(['1 raised', '2 returned']);
  });
  test('a version that went back to an older kind begins anew too', () => {
    const run = new Run(summing(2)).see(1, 6).restartedWith(summing(1)).see(2, 1);
    expect(run.sum).toBe(7);
  });
});

test('a state of another format is refused', () => {
  const plan = planWith(summing(1));
  const ports = { emit: () => undefined, planOf: () => plan };
  const saved = { ...Engine.begin(plan, 0, ports).save(), format: 2 as never };
  expect(() => Engine.restore(plan, saved, ports)).toThrow(
    "the engine's state has format 2, not 1",
  );
});
