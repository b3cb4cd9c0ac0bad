/** One source of limits for the sentence, the card, the ruler and the chart. */
import { describe, expect, test } from 'vitest';
import type { AlarmView, SignalView } from '#agent/web/contract.ts';
import { limitsOf, limitsWith, ownLimit } from '../../dashboards/judge/limits.ts';
import { alarm, signal } from '../agent/web/fake-ports.ts';

/** A floor under residue, which three rules hold against three limits. */
const floor: SignalView = {
  ...signal('floor'),
  judged_at: [
    { rule: 'l/r/act', side: 'high', limit: 102 },
    { rule: 'l/r/at-limit', side: 'high', limit: 112 },
    { rule: 'l/r/early', side: 'high', limit: 92 },
    // Another rule with the very limit, as its own arithmetic has it.
    { rule: 'l/r/approaching', side: 'high', limit: 112.000_000_000_01 },
  ],
};
const about = (limit: number | null, over: Partial<AlarmView['evidence']> = {}): AlarmView =>
  alarm({ evidence: { ...alarm().evidence, side: 'high', limit, ...over } });

test('every limit once, the one met first first', () => {
  expect(limitsOf(floor)).toEqual({ low: [], high: [92, 102, 112] });
  expect(limitsOf(signal())).toEqual({ low: [7, 5], high: [] });
});

describe('the limit of an alarm', () => {
  test.each([92, 102, 112])('%d is one the ruler has', (limit) => {
    const own = ownLimit(about(limit), floor);
    expect(own).toEqual({ limit, side: 'high' });
    expect(limitsWith(limitsOf(floor), own)).toEqual(limitsOf(floor));
  });
  test('as another double of it, it is the same', () => {
    expect(ownLimit(about(102.000_000_000_02), floor)).toEqual({ limit: 102, side: 'high' });
  });
  test('a limit that moves, as one learned, is added where it belongs', () => {
    const own = ownLimit(about(97.3), floor);
    expect(limitsWith(limitsOf(floor), own).high).toEqual([92, 97.3, 102, 112]);
    const low = ownLimit(about(6, { side: 'low' }), signal());
    expect(limitsWith(limitsOf(signal()), low).low).toEqual([7, 6, 5]);
  });
  test('one of another quantity has no place on the ruler', () => {
    expect(ownLimit(about(5, { unit: 'K' }), floor)).toBeNull();
    expect(ownLimit(about(null), floor)).toBeNull();
  });
});
