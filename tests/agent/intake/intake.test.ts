/** The whole way, and what holds for any bytes: counts add up, nothing throws, no NaN gets out. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { SampleBatch } from '#rules/signal/sample.ts';
import type { PayloadWritten } from '#rules/site/signal-schema.ts';
import {
  type BindingFacts,
  binding,
  plain,
  rowsOf,
  scene,
  startMs,
  valueAndTime,
} from './scene.ts';

// By hand: points [true, read] = [32, 32.4], [77, 76.8] in [degF], so true = 32 + (read - 32.4) * 45 / 44.4;
// then t(Cel) = (t([degF]) - 32) / 1.8 (NIST SP 811, Appendix B).
const calibration: BindingFacts = {
  unitCode: '[degF]',
  slope: 45 / 44.4,
  intercept: 32 - (32.4 * 45) / 44.4,
};
test.each([
  ['32.4', 0],
  ['76.8', 25],
  ['54.6', 12.5],
  ['41.28', 5],
  ['-12.0', -25],
  ['44.832', 7],
  ['44.92', 7],
  ['44.93', 7.1],
])('calibrated [degF]: %s reads as %d Cel', (read, celsius) => {
  const { send } = scene([binding(calibration)]);
  expect(send(read)).toMatchObject([{ value: celsius, quality: quality.good }]);
});

test('a payload in another unit of the kind is calibrated in the written one', () => {
  const { send } = scene([
    binding({
      ...calibration,
      payload: { kind: 'json', value: '/v', unit: '/u' },
    }),
  ]);
  // 76.8 [degF] is 24.888… Cel as read, and truly 25.
  expect(send({ v: (76.8 - 32) / 1.8, u: 'Cel' })).toMatchObject([{ value: 25 }]);
});

const full: PayloadWritten = { kind: 'json', value: '/v', time: '/t', unit: '/u', quality: '/q' };
const everyKind = [
  binding({ payload: plain, signal: 0, filter: 'p' }),
  binding({ payload: valueAndTime, signal: 1, filter: 'j', maxRatePerS: 1, high: 1000 }),
  binding({ payload: full, signal: 2, filter: 'j', id: 'mounts-2/store-1/b', digits: null }),
];

const bytes = fc.oneof(
  fc.uint8Array({ maxLength: 64 }),
  fc.string({ unit: 'binary', maxLength: 40 }).map((text) => new TextEncoder().encode(text)),
  fc
    .string({ unit: fc.constantFrom(...'{}[]",:\\0123456789.eE+-vtuq truefalsn'), maxLength: 40 })
    .map((text) => new TextEncoder().encode(text)),
  fc
    .record({
      v: fc.oneof(fc.double(), fc.jsonValue()),
      t: fc.oneof(fc.integer({ min: startMs - 1_000_000, max: startMs + 10_000 }), fc.jsonValue()),
      u: fc.oneof(fc.constantFrom('Cel', '[degF]', 'K', 'bar'), fc.jsonValue()),
      q: fc.oneof(fc.constantFrom('good', 'uncertain', 'bad'), fc.jsonValue()),
    })
    .map((facts) => new TextEncoder().encode(JSON.stringify(facts))),
);

test('100,000 random payloads: counts add up, nothing throws, nothing but finite values', () => {
  const { intake, out } = scene(everyKind);
  let messages = 0;
  const taken = fc.record({
    payload: bytes,
    topic: fc.constantFrom('p', 'j', 'nobody'),
    retained: fc.boolean(),
    afterMs: fc.nat(60_000),
  });
  fc.assert(
    fc.property(taken, ({ payload, topic, retained, afterMs }) => {
      out.clear();
      const nowMs = startMs + afterMs;
      intake.take(topic, payload, retained, Math.ceil(nowMs / 20) * 20, nowMs, out);
      messages += 1;
      for (const row of rowsOf(out)) {
        expect(Number.isFinite(row.value)).toBe(true);
        expect(row.quality < 100 || row.value === 0).toBe(true);
        expect(Number.isSafeInteger(row.at) && row.judged >= row.at).toBe(true);
        if (row.signal < 2) expect(row.value).toBe(Math.round(row.value * 10) / 10);
      }
    }),
    { numRuns: 100_000 },
  );
  const { counters } = intake;
  expect(counters.messages).toBe(messages);
  expect(counters.readings).toBe(
    counters.good + counters.uncertain + counters.bad + counters.dropped,
  );
  expect(counters.unrouted).toBe(counters.causes['unbound-topic']);
  // Every kind of outcome was met, or the test says little.
  for (const count of [counters.good, counters.uncertain, counters.bad, counters.dropped]) {
    expect(count).toBeGreaterThan(0);
  }
}, 120_000);

test('a recorded value is what the same payload gave live', () => {
  const own = binding({ ...calibration, payload: valueAndTime, high: 40 });
  const live = scene([own], { clock: 'samples' });
  const recorded = scene([own], { clock: 'samples' });
  const out = new SampleBatch();
  const readings: readonly (readonly [number, number])[] = [
    [32.4, 0],
    [54.6, 1000],
    [54.6, 1000],
    [55, 1000],
    [500, 2000],
    [41.28, 700_000],
    [41.28, 50],
  ];
  for (const [v, afterMs] of readings) {
    live.send({ v, t: startMs + afterMs });
    expect(recorded.intake.takeValue(0, v, null, quality.good, startMs + afterMs, out)).toBe(true);
  }
  expect(rowsOf(out)).toEqual(rowsOf(live.out));
  expect(recorded.intake.counters.causes).toEqual(live.intake.counters.causes);
  expect(recorded.intake.engineTimeMs).toBe(live.intake.engineTimeMs);
});

test('recorded data give any signal its time, its unit and its quality', () => {
  const { intake } = scene([binding()], { clock: 'samples' });
  const out = new SampleBatch();
  const take = (value: number, unit: string | null, code: number, at: number): boolean =>
    intake.takeValue(0, value, unit, code, at, out);
  take(21.4, null, quality.good, startMs);
  take(70.52, '[degF]', quality.good, startMs + 1);
  take(3, 'bar', quality.good, startMs + 2);
  take(Number.NaN, null, quality.good, startMs + 3);
  take(Number.NaN, null, quality.sensorBad, startMs + 4);
  take(21.4, null, quality.sensorUncertain, startMs + 5);
  const kept = (value: number, code: number, afterMs: number) => ({
    signal: 0,
    at: startMs + afterMs,
    judged: startMs + afterMs,
    value,
    quality: code,
    flags: 0,
  });
  expect(rowsOf(out)).toEqual([
    kept(21.4, quality.good, 0),
    kept(21.4, quality.good, 1),
    kept(0, quality.wrongUnit, 2),
    kept(0, quality.notFinite, 3),
    kept(0, quality.sensorBad, 4),
    kept(21.4, quality.sensorUncertain, 5),
  ]);
  expect(intake.takeValue(1, 1, null, quality.good, startMs, out)).toBe(false);
});
