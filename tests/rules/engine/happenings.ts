/** What may happen on a line, at random, in the order of the clock. */
import fc from 'fast-check';
import { quality } from '#rules/signal/quality.ts';
import { sampleFlag } from '#rules/signal/sample.ts';
import { ruleIds } from './story-plans.ts';

export const start = 1_000_000;

export const arrival = fc.record({
  afterMs: fc.oneof(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 9_000 })),
  signal: fc.constantFrom('a', 'b', 'gate', 'a', 'b', 'aa'),
  value: fc.oneof(
    { weight: 7, arbitrary: fc.integer({ min: 0, max: 500 }).map((k) => k / 10) },
    { weight: 1, arbitrary: fc.constant(0) },
  ),
  behindMs: fc.integer({ min: 0, max: 600 }),
  quality: fc.constantFrom(0, 0, 0, 0, 0, quality.jump, quality.outOfRange),
  flags: fc.constantFrom(0, 0, 0, 0, 0, 0, sampleFlag.late, sampleFlag.noSignOfLife),
});
export const said = fc.record({
  afterMs: fc.integer({ min: 0, max: 9_000 }),
  verb: fc.constantFrom(
    'acknowledge' as const,
    'acknowledge' as const,
    'reset' as const,
    'pass-on' as const,
    'shelve' as const,
    'shelve' as const,
    'unshelve' as const,
    'remove-from-service' as const,
    'return-to-service' as const,
    'return-to-service' as const,
    'hold' as const,
    'lift' as const,
    'mark' as const,
    'mark' as const,
    'mark' as const,
  ),
  rule: fc.nat({ max: ruleIds.length - 1 }),
});
const stop = fc.record({
  afterMs: fc.integer({ min: 0, max: 30_000 }),
  downMs: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 40_000 })),
});

export const story = fc.record({
  arrivals: fc.array(arrival, { minLength: 1, maxLength: 60 }),
  commands: fc.array(said, { maxLength: 20 }),
  looks: fc.array(fc.record({ afterMs: fc.integer({ min: 1, max: 700 }) }), { maxLength: 80 }),
  stops: fc.array(stop, { maxLength: 5 }),
  /** A file of own rules is found unfit after so many things were judged; or is switched on. */
  offs: fc.array(fc.record({ after: fc.nat({ max: 60 }), own: fc.boolean() }), { maxLength: 4 }),
  ons: fc.array(fc.record({ afterMs: fc.integer({ min: 0, max: 20_000 }), own: fc.boolean() }), {
    maxLength: 4,
  }),
  reloads: fc.array(fc.record({ afterMs: fc.integer({ min: 0, max: 40_000 }) }), { maxLength: 4 }),
});
export type Of<A> = A extends fc.Arbitrary<infer T> ? T : never;
export type Story = Of<typeof story>;

export type Happening =
  | ({ readonly kind: 'arrival'; readonly at: number } & Omit<Of<typeof arrival>, 'afterMs'>)
  | ({ readonly kind: 'command'; readonly at: number } & Omit<Of<typeof said>, 'afterMs'>)
  | { readonly kind: 'look' | 'reload'; readonly at: number }
  | { readonly kind: 'on'; readonly at: number; readonly own: boolean }
  | { readonly kind: 'stop'; readonly at: number; readonly downMs: number };

/** What happened, in the order of the clock. */
export function happenings(of: Story): Happening[] {
  const timed = <K extends Happening['kind'], T extends { readonly afterMs: number }>(
    kind: K,
    each: readonly T[],
  ) => {
    let at = start;
    return each.map(({ afterMs, ...rest }) => {
      at += afterMs;
      return { kind, at, ...rest };
    });
  };
  return [
    ...timed('arrival', of.arrivals),
    ...timed('command', of.commands),
    ...timed('look', of.looks),
    ...timed('stop', of.stops),
    ...timed('reload', of.reloads),
    ...timed('on', of.ons),
  ].sort((x, y) => x.at - y.at) as Happening[];
}
