/** Times, duplicates and marks at their exact borders (docs/time.md, the rules of time). */
import { expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { quality } from '#rules/signal/quality.ts';
import { SampleBatch, sampleFlag } from '#rules/signal/sample.ts';
import { binding, scene, startMs, valueAndTime, valueOnly } from './scene.ts';

const own = binding({ payload: valueAndTime });
const hold = own.holdMs;
const { latenessMs } = own;

test('without a time of its own a sample holds and is judged at the beat', () => {
  const { send } = scene([binding()]);
  expect(send('21.4', { nowMs: startMs + 1, beatMs: startMs + 20 })).toMatchObject([
    { at: startMs + 20, judged: startMs + 20 },
  ]);
});

test.each([
  ['just now', 0, hold],
  ['within the hold', -hold + 1, 1],
  ['exactly the hold ago', -hold, 0],
  ['beyond the hold: the beat judges it', -hold - 1, 0],
])('its own time, %s', (_, agoMs, judgedAfterMs) => {
  const { send } = scene([own]);
  expect(send({ v: 21.4, t: startMs + agoMs })).toMatchObject([
    { at: startMs + agoMs, judged: startMs + judgedAfterMs, quality: quality.good, flags: 0 },
  ]);
});

test.each([
  [-latenessMs, 0],
  [-latenessMs - 1, sampleFlag.late],
])('%d ms old: flags %d', (agoMs, flags) => {
  const { intake, send } = scene([own]);
  expect(send({ v: 21.4, t: startMs + agoMs })).toMatchObject([
    { at: startMs + agoMs, judged: startMs, value: 21.4, flags },
  ]);
  expect(intake.counters.causes.late).toBe(flags);
});

test('the future begins after the tolerance, counted from the clock and not from the beat', () => {
  const { intake, send } = scene([own]);
  const when = { nowMs: startMs + 1, beatMs: startMs + 20 };
  const edge = when.nowMs + limits.futureToleranceMs;
  expect(send({ v: 21.4, t: edge }, when)).toMatchObject([
    { at: edge, judged: edge + hold, value: 21.4, quality: quality.good },
  ]);
  expect(send({ v: 21.4, t: edge + 1 }, when)).toMatchObject([
    { at: startMs + 20, judged: startMs + 20 + hold, value: 0, quality: quality.future },
  ]);
  expect(intake.counters.causes.future).toBe(1);
});

const yearMs = 365 * 86_400_000;
test.each([
  ['ten years ahead', startMs + 10 * yearMs, startMs, quality.future, 0],
  ['an hour ago', startMs - 3_600_000, startMs - 3_600_000, quality.good, sampleFlag.late],
  ['1970', 0, 0, quality.good, sampleFlag.late],
])('a sensor clock at %s', (_, t, at, code, flags) => {
  const { send } = scene([own]);
  expect(send({ v: 21.4, t })).toMatchObject([{ at, quality: code, flags }]);
});

test('a time already taken: the same value is dropped, another is a conflict, the first stays', () => {
  const { intake, send } = scene([own]);
  const t = startMs - 5;
  expect(send({ v: 21.4, t })).toHaveLength(1);
  expect(send({ v: 21.4, t })).toHaveLength(0);
  // Equal at the signal's resolution is equal.
  expect(send({ v: 21.41, t })).toHaveLength(0);
  const conflict = { at: t, value: 21.5, quality: quality.conflict, flags: sampleFlag.conflict };
  expect(send({ v: 21.5, t })).toMatchObject([conflict]);
  expect(send({ v: 21.5, t })).toMatchObject([conflict]);
  expect(send({ v: 21.4, t })).toHaveLength(0);
  expect(intake.counters.causes).toMatchObject({ duplicate: 3, conflict: 2 });
  expect(intake.counters).toMatchObject({ readings: 6, good: 1, uncertain: 2, dropped: 3 });
});

test('a bad sample takes its time too, and stays bad where it contradicts', () => {
  const ranged = binding({ payload: valueAndTime, high: 100 });
  const { send } = scene([ranged]);
  expect(send({ v: 500, t: startMs })).toMatchObject([{ quality: quality.outOfRange, flags: 0 }]);
  expect(send({ v: 500, t: startMs })).toHaveLength(0);
  expect(send({ v: 21.4, t: startMs })).toMatchObject([
    { value: 21.4, quality: quality.conflict, flags: sampleFlag.conflict },
  ]);
  // No value is not the value 0.
  expect(send({ v: 0, t: startMs })).toMatchObject([
    { value: 0, quality: quality.conflict, flags: sampleFlag.conflict },
  ]);
  expect(send({ v: 21.4, t: startMs - 1 })).toHaveLength(1);
  expect(send({ v: 500, t: startMs - 1 })).toMatchObject([
    { value: 0, quality: quality.outOfRange, flags: sampleFlag.conflict },
  ]);
});

test('what could not be read takes no time', () => {
  const { send } = scene([own]);
  expect(send({ v: 'hot', t: startMs })).toMatchObject([
    { at: startMs, judged: startMs + hold, quality: quality.undecodable },
  ]);
  expect(send({ v: 21.4, t: startMs })).toMatchObject([{ quality: quality.good, flags: 0 }]);
  expect(send('{"v":2', { nowMs: startMs })).toMatchObject([
    { at: startMs, judged: startMs + hold, quality: quality.undecodable },
  ]);
});

test('arrival-stamped signals know no duplicates', () => {
  const { send } = scene([binding()]);
  expect(send('21.4')).toHaveLength(1);
  expect(send('21.4')).toHaveLength(1);
  expect(send('21.5')).toMatchObject([{ quality: quality.good, flags: 0 }]);
});

test('times are remembered as long as they would not be late', () => {
  const { send } = scene([own]);
  const t = startMs;
  send({ v: 21.4, t });
  const lastMs = startMs + latenessMs;
  expect(send({ v: 21.4, t }, { nowMs: lastMs })).toHaveLength(0);
  expect(send({ v: 21.4, t }, { nowMs: lastMs + 20 })).toMatchObject([{ flags: sampleFlag.late }]);
});

test('a retained message without its time is uncertain and no sign of life', () => {
  const stamped = scene([binding()]);
  expect(stamped.send('21.4', { retained: true })).toMatchObject([
    { value: 21.4, quality: quality.retained, flags: sampleFlag.noSignOfLife },
  ]);
  expect(stamped.send('hot', { retained: true })).toMatchObject([
    { quality: quality.undecodable, flags: sampleFlag.noSignOfLife },
  ]);
  expect(stamped.intake.counters.causes.retained).toBe(2);
  const timed = scene([own]);
  expect(timed.send({ v: 21.4, t: startMs - 60_000 }, { retained: true })).toMatchObject([
    { at: startMs - 60_000, quality: quality.good, flags: 0 },
  ]);
});

test('while the clock is in doubt every usable sample says so', () => {
  const { intake, send } = scene([binding({ payload: valueOnly, high: 100 })]);
  intake.setClockDoubt(true);
  expect(send({ v: 21.4 })).toMatchObject([{ value: 21.4, quality: quality.clock }]);
  expect(send({ v: 500 })).toMatchObject([{ quality: quality.outOfRange }]);
  intake.setClockDoubt(false);
  expect(send({ v: 21.4 })).toMatchObject([{ quality: quality.good }]);
  expect(intake.counters.causes.clock).toBe(1);
});

test.each([
  [-20, quality.good],
  [100, quality.good],
  [-20.001, quality.outOfRange],
  [100.001, quality.outOfRange],
])('the ends of the range belong to it: %d', (v, code) => {
  const { send } = scene([binding({ payload: valueOnly, low: -20, high: 100 })]);
  expect(send({ v })).toMatchObject([{ value: code === quality.good ? v : 0, quality: code }]);
});

test('a jump is a change faster than the rate, from the latest usable value', () => {
  const { intake, send } = scene([binding({ payload: valueAndTime, maxRatePerS: 2, high: 100 })]);
  const at = (s: number): number => startMs - 60_000 + s * 1000;
  expect(send({ v: 20, t: at(0) })).toMatchObject([{ quality: quality.good }]);
  expect(send({ v: 22, t: at(1) })).toMatchObject([{ quality: quality.good }]);
  expect(send({ v: 24.1, t: at(2) })).toMatchObject([{ value: 24.1, quality: quality.jump }]);
  // A bad value is nothing to compare with; neither is a conflict.
  expect(send({ v: 500, t: at(3) })).toMatchObject([{ quality: quality.outOfRange }]);
  expect(send({ v: 90, t: at(2) })).toMatchObject([{ quality: quality.conflict }]);
  expect(send({ v: 28.1, t: at(4) })).toMatchObject([{ quality: quality.good }]);
  // One that comes late in order is compared, but is not the latest.
  expect(send({ v: 20, t: at(1.5) })).toMatchObject([{ quality: quality.jump }]);
  expect(send({ v: 30.1, t: at(5) })).toMatchObject([{ quality: quality.good }]);
  expect(intake.counters.causes.jump).toBe(2);
});

test('two arrivals in one beat count as one beat apart', () => {
  const { send } = scene([binding({ maxRatePerS: 50 })]);
  expect(send('20')).toMatchObject([{ quality: quality.good }]);
  expect(send('21')).toMatchObject([{ quality: quality.good }]);
  expect(send('22.1')).toMatchObject([{ quality: quality.jump }]);
});

test('by the samples own clock engine time is the greatest time seen', () => {
  const { intake, send } = scene([own], { clock: 'samples' });
  const t = Date.UTC(2010, 0, 1);
  expect(intake.engineTimeMs).toBe(Number.NEGATIVE_INFINITY);
  // Before the first time there is no moment to keep a sample at.
  expect(send('{')).toHaveLength(0);
  expect(intake.counters).toMatchObject({ readings: 1, dropped: 1 });
  expect(intake.counters.causes).toMatchObject({ 'not-json': 1, 'before-any-time': 1 });

  expect(send({ v: 1, t })).toMatchObject([{ at: t, judged: t + hold, quality: quality.good }]);
  const far = t + 86_400_000;
  expect(send({ v: 2, t: far })).toMatchObject([{ at: far, judged: far + hold }]);
  expect(intake.engineTimeMs).toBe(far);
  expect(send({ v: 3, t: far - hold })).toMatchObject([{ at: far - hold, judged: far, flags: 0 }]);
  expect(send({ v: 4, t: far - hold - 1 })).toMatchObject([{ judged: far }]);
  expect(send({ v: 5, t: far - latenessMs - 1 })).toMatchObject([
    { judged: far, flags: sampleFlag.late },
  ]);
  expect(intake.examples.get('before-any-time')?.atMs).toBe(0);
  expect(send('{')).toMatchObject([{ at: far, judged: far + hold }]);
  expect(intake.examples.get('not-json')?.atMs).toBe(far);
  expect(intake.engineTimeMs).toBe(far);
});

test('memory is rebuilt from the record: duplicates, conflicts, jumps and engine time', () => {
  const rated = binding({ payload: valueAndTime, maxRatePerS: 2 });
  const before = scene([rated], { clock: 'samples' });
  const t = startMs;
  before.send({ v: 20, t });
  before.send({ v: 90, t });
  before.send({ v: 'hot', t: t + 500 });
  before.send({ v: 21, t: t + 1000 });
  const after = scene([rated], { clock: 'samples' });
  after.intake.remember(before.out);
  expect(after.intake.engineTimeMs).toBe(before.intake.engineTimeMs);
  for (const message of [
    { v: 20, t },
    { v: 90, t },
    { v: 21, t: t + 500 },
    { v: 21, t: t + 1000 },
    { v: 24, t: t + 2000 },
  ]) {
    expect(after.send(message)).toEqual(before.send(message));
  }
  const other = new SampleBatch();
  other.push(99, t, t, 1, quality.good, 0);
  after.intake.remember(other);
  expect(after.intake.counters.causes).toMatchObject({ duplicate: 2, conflict: 1, jump: 1 });
});
