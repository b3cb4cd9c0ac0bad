/**
 * What every derived kind with settings promises, over random readings: nothing that is no number,
 * the same after a restart at any moment, the same on a clock that was set anew, the same however
 * often somebody looks, and time nobody saw as the only thing a gap adds.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivedKinds } from '#rules/derive/derived.ts';
import { isFormula, isKeeping } from '#rules/derive/derived-kind.ts';
import { KindDrive } from './drive-kind.ts';
import { kindCases } from './kind-settings.ts';

/** What counts marks lives by them (mark-count.test.ts). */
const settable = [...derivedKinds.values()].filter(
  (kind) => !isFormula(kind) && !(isKeeping(kind) && kind.count !== undefined),
);

test('there are settings for every kind that has any', () => {
  expect(Object.keys(kindCases).sort()).toEqual(settable.map(({ name }) => name).sort());
});

const happening = fc.record({
  afterMs: fc.oneof(fc.integer({ min: 1, max: 3_000 }), fc.integer({ min: 1, max: 200_000 })),
  input: fc.nat({ max: 3 }),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
  what: fc.constantFrom('reading', 'reading', 'reading', 'reading', 'reading', 'bad', 'gap'),
});
type Happening = typeof happening extends fc.Arbitrary<infer T> ? T : never;

const startMs = 10_000_000;

class Life {
  readonly drive: KindDrive;
  at = startMs;
  private readonly ranges: [string, readonly [number, number]][];
  private readonly whole: ReadonlySet<string>;

  constructor(name: string) {
    const { written, unit, readings } = kindCases[name]!;
    this.ranges = Object.entries(readings);
    this.drive = new KindDrive(name, written, Object.keys(readings), unit, startMs);
    const { inputs } = derivedKinds.get(name)!;
    this.whole = new Set(inputs.filter((input) => input.unit === '1').map((input) => input.name));
    for (const [input, [least, most]] of this.ranges)
      this.drive.values(input, [this.at, Math.round((least + most) / 2)]);
  }

  live({ afterMs, input, share, what }: Happening): void {
    this.at += afterMs;
    const [name, [least, most]] = this.ranges[input % this.ranges.length]!;
    const value = least + share * (most - least);
    if (what === 'reading')
      this.drive.values(name, [this.at, this.whole.has(name) ? Math.round(value) : value]);
    else if (what === 'bad') this.drive.bad(name, this.at);
    else {
      this.drive.advance(this.at);
      this.drive.gap(this.at, this.at + 30_000);
      this.at += 30_000;
    }
  }

  end(): readonly unknown[] {
    return this.drive.advance(this.at + 300_000).told;
  }
}

const days = fc.array(happening, { minLength: 1, maxLength: 40 });

describe.each(settable)('$name', ({ name }) => {
  test('never tells what is no number', () => {
    let told = 0;
    fc.assert(
      fc.property(days, (all) => {
        const life = new Life(name);
        for (const each of all) life.live(each);
        life.end();
        for (const { value, quality } of life.drive.told) {
          expect(Number.isFinite(value)).toBe(true);
          if (quality < 100) told += 1;
        }
      }),
      { numRuns: 30 },
    );
    expect(told).toBeGreaterThan(20);
  });
  test('is the same after a restart at any moment', () => {
    fc.assert(
      fc.property(days, (all) => {
        const whole = new Life(name);
        const restarted = new Life(name);
        for (const each of all) {
          whole.live(each);
          restarted.live(each);
          restarted.drive.restarted();
        }
        expect(restarted.end()).toEqual(whole.end());
      }),
      { numRuns: 30 },
    );
  });
  test('is the same however often somebody looks', () => {
    fc.assert(
      fc.property(days, (all) => {
        const seldom = new Life(name);
        const often = new Life(name);
        for (const each of all) {
          for (let at = often.at + 500; at < often.at + each.afterMs; at += 5_700)
            often.drive.advance(at);
          seldom.live(each);
          often.live(each);
        }
        expect(often.end()).toEqual(seldom.end());
      }),
      { numRuns: 25 },
    );
  });
  test('goes on where it was on a clock that was set anew', () => {
    const deltaMs = -5_000_000;
    fc.assert(
      fc.property(days, days, (before, after) => {
        const still = new Life(name);
        const set = new Life(name);
        for (const life of [still, set]) {
          for (const each of before) life.live(each);
          life.at += 2_000;
          life.drive.advance(life.at);
        }
        const told = still.drive.told.length;
        set.drive.rebase(set.at, deltaMs);
        set.at += deltaMs;
        for (const life of [still, set]) for (const each of after) life.live(each);
        const moved = (set.end() as { at: number }[]).slice(told);
        expect(moved.map((each) => ({ ...each, at: each.at - deltaMs }))).toEqual(
          still.end().slice(told),
        );
      }),
      { numRuns: 25 },
    );
  });
});

test('every kind that remembers has a version, and its memory is plain data', () => {
  for (const kind of settable.filter(isKeeping)) {
    expect(kind.version).toBeGreaterThan(0);
    const life = new Life(kind.name);
    life.end();
    const { keeping } = life.drive.saved;
    expect(JSON.parse(JSON.stringify(keeping))).toEqual(keeping);
  }
});
