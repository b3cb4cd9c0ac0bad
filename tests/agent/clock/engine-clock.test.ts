import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EngineClock } from '#agent/clock/engine-clock.ts';

const start = Date.UTC(2026, 10, 25, 9, 0, 0);

/** A box whose two clocks the test moves. */
class Box {
  wall = start;
  monotonic = 5_000;
  readonly clock = new EngineClock(
    { wallMs: () => this.wall, monotonicMs: () => this.monotonic },
    start,
  );

  /** Time goes by; the wall clock may run off by so many parts in a thousand. */
  pass(ms: number, wallOffPerMille = 0): this {
    this.monotonic += ms;
    this.wall += ms + (ms * wallOffPerMille) / 1_000;
    return this;
  }

  /** Somebody sets the wall clock. */
  step(ms: number): this {
    this.wall += ms;
    return this;
  }

  get ahead(): number {
    return this.clock.now() - this.wall;
  }
}

test('engine time goes with the monotonic clock, in whole milliseconds', () => {
  const box = new Box().pass(1_234.9);
  expect(box.clock.now()).toBe(start + 1_234);
  expect(box.clock.check()).toBeNull();
  expect(box.clock.inDoubt).toBe(false);
});

describe('the wall clock steps forward', () => {
  test('up to 2 s are caught up with, 1 % faster, until the two agree', () => {
    const box = new Box().step(2_000);
    expect(box.clock.check()).toBeNull();
    box.pass(100_000);
    expect(box.ahead).toBe(-1_000);
    for (let i = 0; i < 200; i += 1) expect(box.pass(1_000).clock.check()).toBeNull();
    expect(Math.abs(box.ahead)).toBeLessThanOrEqual(60);
    const before = box.ahead;
    box.pass(100_000);
    expect(Math.abs(box.ahead - before)).toBeLessThanOrEqual(1);
  });
  test('more than 2 s are a step for the caller: the box slept, or was set', () => {
    const box = new Box().step(2_001);
    expect(box.clock.check()).toEqual({ kind: 'ahead', toMs: start + 2_001 });
    // Nothing changes until the caller has entered the gap.
    expect(box.clock.now()).toBe(start);
    box.clock.set(start + 2_001);
    expect(box.clock.now()).toBe(start + 2_001);
    expect(box.clock.check()).toBeNull();
  });
});

describe('the wall clock steps back', () => {
  test.each([
    [-50, false],
    [-2_000, false],
    [-2_001, true],
    [-600_000, true],
  ])('%d ms: engine time goes on, in doubt: %s', (ms, doubted) => {
    const box = new Box().step(ms);
    expect(box.clock.check()).toBeNull();
    expect(box.clock.inDoubt).toBe(doubted);
    expect(box.clock.now()).toBe(start);
  });
  test('it loses 1 % until they agree, and the doubt ends within 2 s of it', () => {
    const box = new Box().step(-10_000);
    box.clock.check();
    for (let i = 0; i < 790; i += 1) box.pass(1_000).clock.check();
    expect([box.ahead, box.clock.inDoubt]).toEqual([2_100, true]);
    for (let i = 0; i < 11; i += 1) box.pass(1_000).clock.check();
    expect(box.clock.inDoubt).toBe(false);
    for (let i = 0; i < 300; i += 1) box.pass(1_000).clock.check();
    expect(Math.abs(box.ahead)).toBeLessThanOrEqual(60);
  });
  test('more than ten minutes are a step for the caller', () => {
    const box = new Box().step(-600_001);
    expect(box.clock.check()).toEqual({ kind: 'back', deltaMs: -600_001 });
    box.clock.set(box.clock.now() - 600_001);
    expect(box.ahead).toBe(0);
    expect([box.clock.check(), box.clock.inDoubt]).toEqual([null, false]);
  });
  test('the year 1970 is one, too', () => {
    const box = new Box().step(-start);
    expect(box.clock.check()).toEqual({ kind: 'back', deltaMs: -start });
  });
});

test('a wall clock that runs 5 per mille off is followed within a tenth of a second', () => {
  for (const off of [5, -5]) {
    const box = new Box();
    for (let i = 0; i < 3_600; i += 1) expect(box.pass(1_000, off).clock.check()).toBeNull();
    expect(Math.abs(box.ahead), `${off}`).toBeLessThanOrEqual(100);
  }
});

test('whatever the wall clock does, engine time never goes back by itself', () => {
  const move = fc.record({
    ms: fc.oneof(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 1_000_000 })),
    step: fc.oneof(fc.constant(0), fc.integer({ min: -2_000_000, max: 2_000_000 })),
  });
  fc.assert(
    fc.property(fc.array(move, { maxLength: 100 }), (moves) => {
      const box = new Box();
      let last = box.clock.now();
      for (const { ms, step } of moves) {
        box.pass(ms).step(step);
        const before = box.clock.now();
        expect(before).toBeGreaterThanOrEqual(last);
        const found = box.clock.check();
        expect(box.clock.now()).toBe(before);
        if (found?.kind === 'ahead') {
          expect(found.toMs).toBeGreaterThan(before);
          box.clock.set(found.toMs);
        } else if (found?.kind === 'back') {
          expect(found.deltaMs).toBeLessThan(0);
          box.clock.set(before + found.deltaMs);
        }
        last = box.clock.now();
      }
    }),
  );
});
