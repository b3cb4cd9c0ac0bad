/** Random lives for the properties of rule kinds: stretches of level and slope, and what interrupts them. */
import fc from 'fast-check';
import type { Step } from './kind-life.ts';

const tenth = (value: number): number => Math.round(value * 10) / 10;

export interface Stretches {
  /** Where each input begins a stretch. */
  readonly levels: readonly (readonly number[])[];
  /** By how much each may change from one reading to the next. */
  readonly slopes?: readonly (readonly number[])[];
  /** How far apart readings come. */
  readonly everyMs: readonly number[];
  readonly most?: number;
}

/** Usable readings alone: stretches in which each input starts somewhere and goes on steadily. */
export function stretches({ levels, slopes, everyMs, most = 8 }: Stretches): fc.Arbitrary<Step[]> {
  const inputs = levels.map((choices, i) =>
    fc.record({
      level: fc.constantFrom(...choices),
      slope: fc.constantFrom(...(slopes?.[i] ?? [0])),
    }),
  );
  const stretch = fc.record({
    count: fc.integer({ min: 1, max: 14 }),
    every: fc.constantFrom(...everyMs),
    inputs: fc.tuple(...inputs),
  });
  return fc.array(stretch, { minLength: 1, maxLength: most }).map((all) =>
    all.flatMap(({ count, every, inputs: each }) =>
      Array.from({ length: count }, (_, n) =>
        each.map(
          ({ level, slope }, input): Step => ({
            afterMs: input === 0 ? every : 7,
            input,
            value: tenth(level + n * slope),
          }),
        ),
      ).flat(),
    ),
  );
}

/** A life with what a line does to it: readings nobody can use, downtime. */
export const disturbed = (
  life: fc.Arbitrary<Step[]>,
  inputs: number,
  scaleMs: number,
): fc.Arbitrary<Step[]> => {
  const afterMs = fc.integer({ min: 1, max: scaleMs });
  const interruption: fc.Arbitrary<Step> = fc.oneof(
    fc.record({ afterMs, bad: fc.nat({ max: Math.max(0, inputs - 1) }) }),
    fc.record({ afterMs, downMs: fc.integer({ min: 1, max: 4 * scaleMs }) }),
  );
  const placed = fc.array(fc.tuple(fc.nat({ max: 200 }), interruption), { maxLength: 4 });
  return fc.tuple(life, placed).map(([steps, all]) => {
    const out = [...steps];
    for (const [place, each] of all) out.splice(place % (out.length + 1), 0, each);
    return out;
  });
};

/** The same with a gate, the input behind the last, that opens, closes and cannot be read. */
export const gatedBy = (life: fc.Arbitrary<Step[]>, gate: number): fc.Arbitrary<Step[]> => {
  const reading: fc.Arbitrary<Step> = fc.oneof(
    fc.record({
      afterMs: fc.integer({ min: 1, max: 900 }),
      input: fc.constant(gate),
      value: fc.constantFrom(0, 1, 2),
    }),
    fc.record({ afterMs: fc.integer({ min: 1, max: 900 }), bad: fc.constant(gate) }),
  );
  const placed = fc.array(fc.tuple(fc.nat({ max: 120 }), reading), { maxLength: 10 });
  return fc.tuple(life, placed).map(([steps, all]) => {
    const out: Step[] = [{ afterMs: 1, input: gate, value: 1 }, ...steps];
    for (const [place, each] of all) out.splice(place % (out.length + 1), 0, each);
    return out;
  });
};

/** Readings of one or more inputs that stay where `value` puts them, at random times. */
export const within = (
  ranges: readonly (readonly [low: number, high: number])[],
  maxMs: number,
): fc.Arbitrary<Step[]> =>
  fc
    .array(
      fc.record({
        afterMs: fc.integer({ min: 1, max: maxMs }),
        input: fc.nat({ max: ranges.length - 1 }),
        share: fc.integer({ min: 0, max: 1_000 }),
      }),
      { minLength: 1, maxLength: 80 },
    )
    .map((steps) =>
      steps.map(({ afterMs, input, share }) => {
        const [low, high] = ranges[input]!;
        return { afterMs, input, value: tenth(low + ((high - low) * share) / 1_000) };
      }),
    );

/** Each reading by a share, from -1 to 1, of `perMs` times the time since the one before away from it. */
export const walk = (
  from: number,
  perMs: number,
  least: number,
  maxMs: number,
): fc.Arbitrary<Step[]> =>
  fc
    .array(
      fc.record({
        afterMs: fc.integer({ min: 1, max: maxMs }),
        share: fc.integer({ min: least * 1_000, max: 1_000 }),
      }),
      { minLength: 1, maxLength: 120 },
    )
    .map((steps) => {
      let value = from;
      return steps.map(({ afterMs, share }) => {
        value += (perMs * afterMs * share) / 1_000;
        return { afterMs, input: 0, value };
      });
    });

/** Marks of a few items at random times. */
export const marked = (marks: number, maxMs: number): fc.Arbitrary<Step[]> =>
  fc.array(
    fc.record({
      afterMs: fc.integer({ min: 1, max: maxMs }),
      mark: fc.nat({ max: marks - 1 }),
      item: fc.constantFrom('rack-1', 'rack-2'),
    }),
    { minLength: 1, maxLength: 25 },
  );

/** Readings of one signal between two values, in tenths, with marks of a few items among them. */
export const amongMarks = (
  [low, high]: readonly [number, number],
  marks: number,
  maxMs: number,
): fc.Arbitrary<Step[]> =>
  fc.array(
    fc.oneof(
      fc.record({
        afterMs: fc.integer({ min: 1, max: maxMs }),
        input: fc.constant(0),
        value: fc.integer({ min: low * 10, max: high * 10 }).map((tenths) => tenths / 10),
      }),
      fc.record({
        afterMs: fc.integer({ min: 1, max: maxMs }),
        mark: fc.nat({ max: marks - 1 }),
        item: fc.constantFrom('rack-1', 'rack-2'),
      }),
    ),
    { minLength: 1, maxLength: 60 },
  );

/** Things are used and done with; others, or the same, are put on hold and released. */
export const amongHolds = (
  used: readonly string[],
  held: readonly string[],
): fc.Arbitrary<Step[]> => {
  const afterMs = fc.integer({ min: 1, max: 4_000 });
  return fc.array(
    fc.oneof(
      fc.record({ afterMs, mark: fc.nat({ max: 1 }), item: fc.constantFrom(...used) }),
      fc.record({
        afterMs,
        hold: fc.constantFrom('set' as const, 'lift' as const),
        item: fc.constantFrom(...held),
      }),
    ),
    { minLength: 1, maxLength: 25 },
  );
};
