/**
 * What is true of every rule kind, whatever is read: no alarm from what never met its condition; a
 * raise means that the condition lasted; a live engine, restarted anywhere, and a replay say the
 * same; times moved together move the answers and nothing else; an older memory goes on.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EngineState } from '#rules/engine/state.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import { type KindCase, kindCases, type Seen } from './kind-cases.ts';
import { fedAgain, KindLife, type LifeOptions, planOf, type Step, type Told } from './kind-life.ts';
import { disturbed, gatedBy } from './lives.ts';

const endMs = 40_000;

test('every kind has a case, and every older version of its memory one that goes on', () => {
  const where = 'tests/rules/kinds/kind-cases.ts (and the file there for kinds of its sort)';
  for (const [name, kind] of ruleKinds) {
    const known = kindCases[name];
    const needs = 'settings, signals, a calm life, a wild one and what a raise implies';
    expect(known, `the kind ${name} has no case: add ${needs} to ${where}`).toBeDefined();
    const versions = Array.from({ length: kind.version - 1 }, (_, i) => String(i + 1));
    expect(
      Object.keys(known?.older ?? {}),
      `${name} is at version ${kind.version}: add a memory of each older version, as a snapshot held it, under older in ${where}`,
    ).toEqual(versions);
  }
  const unknown = Object.keys(kindCases).filter((name) => !ruleKinds.has(name));
  expect(unknown, `cases of kinds there are not, in ${where}`).toEqual([]);
});

/** Usable readings and marks with their times after the start. */
function seenIn(steps: readonly Step[]): Seen[] {
  let at = 0;
  return steps.map((step) => {
    at += step.afterMs;
    return { ...step, at };
  });
}

const raises = (told: readonly Told[]): Told[] =>
  told.filter(({ transition }) => transition === 'raised');

/** Whether `twin` stood from `fromMs` to `toMs` without a break. */
function stoodThrough(twin: readonly Told[], fromMs: number, toMs: number): boolean {
  const until = (ms: number) => twin.findLast(({ afterMs }) => afterMs <= ms);
  const before = until(fromMs);
  const within = twin.filter(({ afterMs }) => afterMs > fromMs && afterMs < toMs);
  const stands = (told: Told | undefined): boolean => told !== undefined && told.severity > 0;
  return stands(before) && within.every(stands);
}

const alive = (name: string, kindCase: KindCase, steps: readonly Step[], options: LifeOptions) =>
  new KindLife(planOf(name, kindCase), options.startedMs).live(steps, options);

describe.each(Object.entries(kindCases))('%s', (name, kindCase) => {
  const delayed = typeof kindCase.held === 'function' ? null : kindCase.held;
  const settings = { ...kindCase.settings, ...(delayed && { on_delay: delayed.onDelay }) };
  const whole = { ...kindCase, settings };
  const { signals, scaleMs, calm } = kindCase;
  const inputs = Math.max(1, signals.length);
  const wild = kindCase.wild.map((steps) => [...steps]);
  const lively = signals.length === 0 ? wild : disturbed(wild, inputs, scaleMs);

  test('no alarm from what never met its condition', () => {
    fc.assert(
      fc.property(calm, (steps) => {
        const told = alive(name, kindCase, steps, { endMs: kindCase.calmEndMs ?? endMs }).told;
        expect(told).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  test('a raise means that it lasted', () => {
    let raised = 0;
    fc.assert(
      fc.property(wild, (steps) => {
        const told = raises(alive(name, whole, steps, { endMs }).told);
        raised += told.length;
        if (typeof kindCase.held === 'function') {
          const seen = seenIn(steps);
          for (const raise of told)
            expect(kindCase.held(seen, raise), JSON.stringify(raise)).toBe(true);
          return;
        }
        const twin = alive(
          name,
          { ...kindCase, settings: { ...settings, on_delay: '0 s', off_delay: '0 s' } },
          steps,
          { endMs },
        ).told;
        for (const { afterMs } of told)
          expect(
            stoodThrough(twin, afterMs - kindCase.held.ms, afterMs),
            `raised at ${afterMs}`,
          ).toBe(true);
      }),
      { numRuns: 150 },
    );
    expect(raised, 'the wild life never raised it: give it more of what does').toBeGreaterThan(15);
  });

  test('live, looked at and restarted anywhere, says what a replay says', () => {
    let told = 0;
    fc.assert(
      fc.property(
        lively,
        fc.uniqueArray(fc.nat({ max: 120 }), { maxLength: 8 }),
        fc.option(fc.integer({ min: 1, max: 180 }), { nil: undefined }),
        (steps, restarts, lookMs) => {
          const life = alive(name, whole, steps, {
            endMs,
            restarts: new Set(restarts),
            ...(lookMs === undefined ? {} : { lookMs }),
          });
          told += life.told.length;
          expect(fedAgain(planOf(name, whole), life.record, life.drive.engine.now)).toEqual(
            life.told,
          );
        },
      ),
      { numRuns: 150 },
    );
    expect(told).toBeGreaterThan(15);
  });

  // A rule that judges marks takes no gate.
  test.runIf(kindCase.marks === undefined)('and so it does under a gate', () => {
    const under = { ...whole, gated: true } as const;
    let told = 0;
    fc.assert(
      fc.property(
        gatedBy(lively, signals.length),
        fc.uniqueArray(fc.nat({ max: 120 }), { maxLength: 8 }),
        (steps, restarts) => {
          const life = alive(name, under, steps, { endMs, restarts: new Set(restarts) });
          told += life.told.length;
          const again = fedAgain(planOf(name, under), life.record, life.drive.engine.now);
          expect(again).toEqual(life.told);
        },
      ),
      { numRuns: 100 },
    );
    expect(told).toBeGreaterThan(2);
  });

  test('times moved together move the answers and nothing else, at the start or by a new clock', () => {
    fc.assert(
      fc.property(
        lively,
        fc.integer({ min: -10_000_000_000, max: 10_000_000_000 }),
        fc.nat({ max: 120 }),
        (steps, deltaMs, before) => {
          const plain = alive(name, whole, steps, { endMs }).told;
          const startedMs = 1_700_000_000_000 + deltaMs;
          expect(alive(name, whole, steps, { endMs, startedMs }).told).toEqual(plain);
          const still = { before, deltaMs: 0 };
          const unmoved = alive(name, whole, steps, { endMs, reset: still }).told;
          expect(alive(name, whole, steps, { endMs, reset: { before, deltaMs } }).told).toEqual(
            unmoved,
          );
        },
      ),
      { numRuns: 60 },
    );
  });

  test('time nobody saw raises nothing by itself', () => {
    fc.assert(
      fc.property(
        wild,
        fc.nat({ max: 120 }),
        fc.integer({ min: 1, max: 90_000 }),
        (steps, place, downMs) => {
          const until = steps.slice(0, place % (steps.length + 1));
          const gap: Step = { afterMs: 1, downMs };
          const life = alive(name, whole, [...until, gap], { endMs: 0 });
          const gapEndedMs = life.drive.engine.now - 1_700_000_000_000;
          const within = life.told.filter(
            ({ transition, afterMs }) => transition === 'raised' && afterMs > gapEndedMs - downMs,
          );
          expect(within).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  test.each(Object.entries(kindCase.older ?? {}))(
    'a memory of version %s goes on',
    (version, old) => {
      const plan = planOf(name, { ...kindCase, settings: old.settings });
      const kind = ruleKinds.get(name)!;
      const life = new KindLife(plan, 0);
      const saved: EngineState = life.drive.advance(old.leftMs).engine.save();
      const rule = {
        ...saved.rules['l/s/r']!,
        memory: old.memory,
        version: Number(version),
        deadline: old.deadlineMs,
      };
      const snapshot = JSON.parse(
        JSON.stringify({ ...saved, rules: { ...saved.rules, 'l/s/r': rule } }),
      );
      const { told } = life.from(snapshot).live(old.steps, { endMs });
      expect(told.map(({ transition }) => transition)).toEqual(
        old.told.map(([transition]) => transition),
      );
      for (const [i, { afterMs }] of told.entries())
        expect(Math.abs(afterMs - old.told[i]![1])).toBeLessThanOrEqual(old.withinMs);
      expect(kind.migrate?.(old.memory, kind.version + 1) ?? null).toBeNull();
    },
  );
});
