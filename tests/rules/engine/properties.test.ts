/**
 * Whatever arrives, in whatever beats, looked at however often, restarted wherever: the record,
 * put in order and fed at once, gives the same effects and the same derived samples.
 */
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { Deadlines } from '#rules/engine/deadlines.ts';
import type { Input } from '#rules/input.ts';
import { quality } from '#rules/signal/quality.ts';
import { sampleFlag } from '#rules/signal/sample.ts';
import { Drive, type Sample } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const beatMs = 20;
const start = 1_000_000;

const plan = smallPlan({
  signals: {
    a: { holdMs: 400, expectEveryMs: 2_000 },
    b: { expectEveryMs: 2_000 },
    gate: {},
    sum: {},
  },
  derived: { sum: { inputs: ['a', 'b'], compute: (x) => (x[0]! > 45 ? null : x[0]! + x[1]!) } },
  rules: {
    'a-high': {
      kind: 'band',
      on: 'a',
      settings: {
        high: '30 Cel',
        high_high: '40 Cel',
        deadband: '2 K',
        on_delay: '1 s',
        off_delay: '500 ms',
      },
      hold: { what: 'container', item: 'drum' },
      class: { latching: true, selfAcknowledging: false, highlyManaged: false },
    },
    'a-lost': { kind: 'lost', on: 'a', settings: {} },
    'b-lost': { kind: 'lost', on: 'b', settings: {} },
    'b-low': {
      kind: 'band',
      on: 'b',
      settings: { low: '10 Cel', on_delay: '700 ms' },
      gate: { on: 'gate', low: 20 },
    },
    'b-near': {
      kind: 'approach',
      on: 'b',
      settings: { low: '5 Cel', within: '10 s', window: '20 s' },
    },
    'b-stuck': { kind: 'stuck', on: 'b', settings: { for: '5 s' } },
    'sum-high': { kind: 'band', on: 'sum', settings: { high: '50 Cel', on_delay: '300 ms' } },
  },
});
const ruleIds = plan.rules.map(({ id }) => id);

interface Arrival {
  readonly afterMs: number;
  readonly signal: string;
  readonly value: number;
  readonly behindMs: number;
  readonly quality: number;
  readonly flags: number;
}

const arrival: fc.Arbitrary<Arrival> = fc.record({
  afterMs: fc.oneof(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 9_000 })),
  signal: fc.constantFrom('a', 'b', 'gate'),
  value: fc.integer({ min: 0, max: 500 }).map((k) => k / 10),
  behindMs: fc.integer({ min: 0, max: 600 }),
  quality: fc.constantFrom(0, 0, 0, 0, 0, quality.jump, quality.outOfRange),
  flags: fc.constantFrom(0, 0, 0, 0, 0, 0, sampleFlag.late, sampleFlag.noSignOfLife),
});
const told = fc.record({
  afterMs: fc.integer({ min: 0, max: 5_000 }),
  verb: fc.constantFrom(
    'acknowledge' as const,
    'reset' as const,
    'shelve' as const,
    'unshelve' as const,
  ),
  rule: fc.nat({ max: ruleIds.length - 1 }),
});
const story = fc.record({
  arrivals: fc.array(arrival, { minLength: 1, maxLength: 60 }),
  commands: fc.array(told, { maxLength: 6 }),
  looks: fc.array(fc.integer({ min: 1, max: 700 }), { maxLength: 80 }),
  restarts: fc.array(fc.nat({ max: 80 }), { maxLength: 6 }),
});
type Story = typeof story extends fc.Arbitrary<infer T> ? T : never;

const gridAbove = (now: number): number => Math.floor(now / beatMs) * beatMs + beatMs;

interface Recorded {
  readonly samples: Sample[];
  readonly inputs: Input[];
}

/** The live way: beats, looks in between, restarts from snapshots. */
function live({ arrivals, commands, looks, restarts }: Story): { out: unknown; record: Recorded } {
  let drive = new Drive(plan, start);
  const effects: unknown[] = [];
  const derived: string[] = [];
  const record: Recorded = { samples: [], inputs: [] };
  const beats = new Map<number, { samples: Sample[]; inputs: Input[] }>();
  const beatOf = (at: number) => {
    const beat = gridAbove(at);
    if (!beats.has(beat)) beats.set(beat, { samples: [], inputs: [] });
    return { beat, ...beats.get(beat)! };
  };
  let clock = start;
  for (const { afterMs, signal, value, behindMs, ...rest } of arrivals) {
    clock += afterMs;
    const { beat, samples } = beatOf(clock);
    const hold = plan.signals.find(({ id }) => id === signal)!.holdMs;
    const at = hold > 0 ? clock - behindMs : beat;
    samples.push({ signal, value, at, judged: Math.max(at + hold, beat), ...rest });
  }
  let commandClock = start;
  for (const { afterMs, verb, rule } of commands) {
    commandClock += afterMs;
    const { beat, inputs } = beatOf(commandClock);
    // The rule's name reaches whatever occurrence it has; an acknowledgement so named is refused, alike both ways.
    inputs.push({
      kind: 'command',
      judged: beat,
      verb,
      occurrence: ruleIds[rule]!,
      by: 'p1',
      reason: 'because',
      untilMs: beat + 2_500,
    });
  }
  const end = Math.max(clock, commandClock) + 30_000;
  const moments = [...beats.keys()];
  let look = start;
  for (const step of looks) {
    look += step;
    moments.push(look);
  }
  moments.sort((x, y) => x - y);
  let turn = 0;
  for (const moment of moments) {
    const beat = beats.get(moment);
    beats.delete(moment);
    if (beat !== undefined) {
      drive.offer(...beat.samples);
      for (const input of beat.inputs) drive.input(input);
      record.samples.push(...beat.samples);
      record.inputs.push(...beat.inputs);
    }
    drive.advance(moment);
    turn += 1;
    if (restarts.includes(turn)) {
      effects.push(...drive.effects);
      derived.push(...drive.derived);
      drive = Drive.resume(drive);
    }
  }
  drive.advance(end);
  effects.push(...drive.effects);
  derived.push(...drive.derived);
  return { out: { effects, derived, end: drive.engine.save() }, record };
}

/** The replay: the record in order, fed at once. */
function replayed(record: Recorded, end: number): unknown {
  const drive = new Drive(plan, start);
  const name = (s: Sample) => plan.signals.findIndex(({ id }) => id === s.signal);
  const samples = record.samples
    .map((s, arrival) => ({ s, arrival }))
    .sort(
      (x, y) =>
        x.s.judged! - y.s.judged! ||
        name(x.s) - name(y.s) ||
        x.s.at - y.s.at ||
        x.arrival - y.arrival,
    )
    .map(({ s }) => s);
  let i = 0;
  for (const input of [...record.inputs].sort((x, y) => x.judged - y.judged)) {
    const until = samples.findIndex((s, k) => k >= i && s.judged! > input.judged);
    const stop = until < 0 ? samples.length : until;
    drive.feed(...samples.slice(i, stop));
    i = stop;
    drive.input(input).advance(input.judged);
  }
  drive.feed(...samples.slice(i)).advance(end);
  return { effects: drive.effects, derived: drive.derived, end: drive.engine.save() };
}

const same = (s: Story): void => {
  const { out, record } = live(s);
  expect(replayed(record, (out as { end: { now: number } }).end.now)).toEqual(out);
};

afterEach(() => {
  vi.restoreAllMocks();
});

describe('live equals replay', () => {
  test('over 1,000 random beat patterns with restarts', () => {
    let effects = 0;
    fc.assert(
      fc.property(story, (s) => {
        const { out, record } = live(s);
        effects += (out as { effects: unknown[] }).effects.length;
        expect(replayed(record, (out as { end: { now: number } }).end.now)).toEqual(out);
      }),
      { numRuns: 1_000 },
    );
    expect(effects).toBeGreaterThan(5_000);
  }, 120_000);

  test('and is seen to differ where deadlines are stamped with when they were noticed', () => {
    const take = Deadlines.prototype.take;
    vi.spyOn(Deadlines.prototype, 'take').mockImplementation(function (this: Deadlines, to) {
      const owner = take.call(this, to);
      this.takenAt = Math.min(to, this.takenAt + 10_000);
      return owner;
    });
    const check = fc.check(fc.property(story, same), { numRuns: 200 });
    expect(check.failed).toBe(true);
  });
});

test('snapshot, restore, same output, at every input of random runs', () => {
  fc.assert(
    fc.property(fc.array(arrival, { minLength: 1, maxLength: 40 }), (arrivals) => {
      const whole = new Drive(plan, start);
      let resumed = new Drive(plan, start);
      const effects: unknown[] = [];
      let clock = start;
      for (const { afterMs, signal, value, behindMs: _, ...rest } of arrivals) {
        clock += afterMs;
        const hold = plan.signals.find(({ id }) => id === signal)!.holdMs;
        const sample = { signal, value, at: clock, judged: clock + hold, ...rest };
        whole.offer(sample).advance(clock);
        resumed.offer(sample).advance(clock);
        effects.push(...resumed.effects);
        resumed = Drive.resume(resumed);
        expect(resumed.engine.save()).toEqual(whole.engine.save());
      }
      whole.advance(clock + 20_000);
      resumed.advance(clock + 20_000);
      expect([...effects, ...resumed.effects]).toEqual(whole.effects);
    }),
    { numRuns: 300 },
  );
}, 120_000);

test('a raise implies that the delay was held: no usable reading said otherwise within it', () => {
  const delayed = smallPlan({
    signals: { a: {} },
    rules: { r: { kind: 'band', on: 'a', settings: { high: '30 Cel', on_delay: '3 s' } } },
  });
  let raised = 0;
  fc.assert(
    fc.property(fc.array(arrival, { minLength: 1, maxLength: 60 }), (arrivals) => {
      const drive = new Drive(delayed, start);
      const seen: { at: number; value: number }[] = [];
      let clock = start;
      for (const { afterMs, value } of arrivals) {
        clock += afterMs;
        drive.offer({ signal: 'a', at: clock, value }).advance(clock);
        seen.push({ at: clock, value });
      }
      drive.advance(clock + 10_000);
      for (const effect of drive.effects) {
        if (effect.kind !== 'transition' || effect.transition !== 'raised') continue;
        raised += 1;
        const from = effect.judged - 3_000;
        const within = seen.filter(({ at }) => at > from && at < effect.judged);
        expect(within.every(({ value }) => value > 30)).toBe(true);
        expect(seen.findLast(({ at }) => at <= from)!.value).toBeGreaterThan(30);
      }
    }),
    { numRuns: 300 },
  );
  expect(raised).toBeGreaterThan(50);
});

test('a value that never left its band raises nothing, whatever its delays and deadband', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat({ max: 5_000 }), fc.integer({ min: 100, max: 300 })), {
        minLength: 1,
      }),
      fc.constantFrom('0 s', '2 s'),
      fc.constantFrom('0 K', '1.5 K'),
      (steps, on_delay, deadband) => {
        const banded = smallPlan({
          signals: { a: {} },
          rules: {
            r: {
              kind: 'band',
              on: 'a',
              settings: { low: '10 Cel', high: '30 Cel', on_delay, deadband },
            },
          },
        });
        const drive = new Drive(banded, start);
        let clock = start;
        for (const [after, k] of steps) {
          clock += after;
          drive.offer({ signal: 'a', at: clock, value: k / 10 }).advance(clock);
        }
        expect(drive.advance(clock + 60_000).effects).toEqual([]);
      },
    ),
  );
});
