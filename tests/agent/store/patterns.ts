/**
 * Samples for the store's tests: any the store must keep, and the kinds a plant sends.
 */
import fc from 'fast-check';
import { Column } from '../../../agent/store/columns.ts';
import type { OpenColumn } from '../../../agent/store/contract.ts';
import { quality } from '../../../rules/signal/quality.ts';
import { sampleFlag } from '../../../rules/signal/sample.ts';

export interface AnySample {
  readonly at: number;
  readonly judged: number;
  readonly value: number;
  readonly quality: number;
  readonly flags: number;
}

/** 2026-01-01T00:00:00Z. */
export const epoch = 1_767_225_600_000;

const anyTime = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 0, max: 180_000 }).map((ms) => epoch + ms * 20) },
  { weight: 2, arbitrary: fc.integer({ min: 0, max: 3_600_000 }).map((ms) => epoch + ms) },
  { weight: 1, arbitrary: fc.integer({ min: -(2 ** 40), max: 2 ** 42 }) },
);

const anyValue = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -500, max: 5_000 }).map((k) => k / 10) },
  { weight: 2, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, -0, 2 ** 53, -(2 ** 53), 2 ** 53 - 1, 1e300, 5e-324) },
  { weight: 1, arbitrary: fc.maxSafeInteger() },
);

const anyQuality = fc.oneof(
  { weight: 8, arbitrary: fc.constant<number>(quality.good) },
  {
    weight: 1,
    arbitrary: fc.constantFrom<number>(quality.clock, quality.notFinite, quality.badInput),
  },
);
const anyFlags = fc.oneof(
  { weight: 8, arbitrary: fc.constant(0) },
  { weight: 1, arbitrary: fc.constantFrom<number>(...Object.values(sampleFlag), 3, 7, 255) },
);

export const anySample: fc.Arbitrary<AnySample> = fc
  .record({
    at: anyTime,
    excessMs: fc.constantFrom(0, 0, 0, 0, 2_000, 2_000, 17, -5, 86_400_000),
    value: anyValue,
    quality: anyQuality,
    flags: anyFlags,
  })
  .map((drawn) => ({
    at: drawn.at,
    judged: drawn.at + drawn.excessMs,
    value: drawn.quality >= 100 ? 0 : drawn.value,
    quality: drawn.quality,
    flags: drawn.flags,
  }));

export const columnOf = (samples: readonly AnySample[]): Column => {
  const column = new Column();
  for (const each of samples) {
    column.push(each.at, each.judged, each.value, each.quality, each.flags);
  }
  return column;
};

export const samplesOf = (column: OpenColumn): AnySample[] =>
  Array.from({ length: column.count }, (_, i) => ({
    at: column.at[i]!,
    judged: column.judged[i]!,
    value: column.value[i]!,
    quality: column.quality[i]!,
    flags: column.flags[i]!,
  }));

/** Numbers in [0, 1) that are the same each time (a linear congruential generator, Numerical Recipes). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A wall temperature as a plant sends it: `everyMs` apart, `jitterMs` late at most, on the beat's grid. */
export function processColumn(
  count: number,
  { seed = 1, everyMs = 1_000, jitterMs = 100, digits = 1, noise = 0.05, beginMs = epoch } = {},
): Column {
  const random = seeded(seed);
  const column = new Column(count);
  const scale = 10 ** digits;
  let level = 20;
  for (let i = 0; i < count; i += 1) {
    level += (random() - 0.5) * 0.04 + (20 - level) * 0.001;
    const value = Math.round((level + (random() - 0.5) * noise) * scale) / scale + 0;
    const at = beginMs + i * everyMs + Math.round((random() * jitterMs) / 20) * 20;
    column.push(at, at, value, 0, 0);
  }
  return column;
}
