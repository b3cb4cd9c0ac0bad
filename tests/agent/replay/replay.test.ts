/** Recorded values of a file, judged by the samples' own clock. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createIntake } from '#agent/intake/intake.ts';
import { limits } from '#agent/limits.ts';
import { type RecordedValue, type ReplayEnd, replayValues } from '#agent/replay/replay.ts';
import { quality } from '#rules/signal/quality.ts';
import { compiled } from '../../rules/plan/site.ts';

const site = compiled(`
l: { s: { kind: custom,
  signals: {
    a: { topic: a, payload: { kind: plain }, unit: Cel },
    b: { topic: b, payload: { kind: json, value: /v, time: /t }, unit: Cel } },
  rules: {
    warm: { kind: band, signal: a, high: 30 Cel, on_delay: 10 s, priority: low, consequence: C., actions: [A.] },
    hot: { kind: band, signal: b, high: 40 Cel, priority: low, consequence: C., actions: [A.] } } } }
`);
const t0 = Date.UTC(2026, 10, 25, 9, 0, 0);
const value = (s: number, signal: 0 | 1, v: number, code = 0): RecordedValue => ({
  line: 2,
  timeMs: t0 + s * 1_000,
  signal,
  value: v,
  unit: null,
  quality: code,
});

function judged(values: readonly RecordedValue[]): { told: string[]; end: ReplayEnd } {
  const told: string[] = [];
  const intake = createIntake({
    bindings: site.bindings,
    discover: () => null,
    limits,
    clock: 'samples',
  });
  const end = replayValues([...values], intake, {
    plan: site.plan,
    planOf: () => site.plan,
    emit: (effect) => {
      if (effect.kind === 'transition')
        told.push(`${(effect.judged - t0) / 1_000} ${effect.rule.slice(4)} ${effect.transition}`);
    },
  });
  return { told, end };
}

describe('a file of values', () => {
  test('is judged in the order of its times; the end says what was in it', () => {
    const { told, end } = judged([
      value(0, 0, 31),
      value(5, 0, 31),
      value(12, 0, 20),
      value(20, 1, 41),
    ]);
    // b carries its own time, and so waits two seconds for earlier ones.
    expect(told).toEqual(['10 warm raised', '12 warm returned', '22 hot raised']);
    expect(end).toEqual({ samples: 4, fromMs: t0, toMs: t0 + 22_000, late: 0 });
  });
  test('with nothing in it is nothing', () => {
    expect(judged([])).toEqual({
      told: [],
      end: { samples: 0, fromMs: null, toMs: null, late: 0 },
    });
  });
  test('a bad value is none, and a number that is none is bad', () => {
    expect(
      judged([value(0, 1, 99, quality.sensorBad), value(1, 1, Number.POSITIVE_INFINITY)]).told,
    ).toEqual([]);
  });
  test('a second value for the same time is not judged', () => {
    expect(judged([value(0, 1, 20), value(0, 1, 99), value(10, 1, 20)]).told).toEqual([]);
  });
});

describe('rows out of order', () => {
  test('count as late where their signal would not have waited for them', () => {
    // a waits for nothing, b for two seconds.
    expect(judged([value(10, 0, 20), value(9.999, 0, 20)]).end.late).toBe(1);
    expect(judged([value(10, 0, 20), value(8, 1, 20)]).end.late).toBe(0);
    expect(judged([value(10, 0, 20), value(7.999, 1, 20)]).end.late).toBe(1);
    expect(judged([value(10, 0, 20), value(10, 0, 21)]).end.late).toBe(0);
  });
  test('are judged as if they stood in order', () => {
    const rows = fc.uniqueArray(
      fc.record({
        s: fc.integer({ min: 0, max: 300 }),
        signal: fc.constantFrom(0 as const, 1 as const),
        v: fc.integer({ min: 0, max: 500 }).map((k) => k / 10),
      }),
      { selector: ({ s, signal }) => `${s} ${signal}`, minLength: 1, maxLength: 60 },
    );
    fc.assert(
      fc.property(rows, (all) => {
        const values = all.map(({ s, signal, v }) => value(s, signal, v));
        const sorted = [...values].sort((x, y) => x.timeMs - y.timeMs);
        const { told, end } = judged(values);
        const inOrder = judged(sorted);
        expect(told).toEqual(inOrder.told);
        expect({ ...end, late: 0 }).toEqual(inOrder.end);
      }),
    );
  });
});
