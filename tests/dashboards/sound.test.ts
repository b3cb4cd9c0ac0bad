import { expect, test } from 'vitest';
import type { StreamEvent } from '../../agent/web/contract.ts';
import { isHeard } from '../../dashboards/state/sound.ts';
import { alarm } from '../agent/web/fake-ports.ts';

type Told = Extract<StreamEvent, { event: 'alarm' }>['data'];
const told = (change: Told['change'], more: Partial<Told['alarm']> = {}): Told => ({
  at: alarm().raised,
  change,
  alarm: {
    ...alarm(),
    state: 'unacknowledged',
    priority: 'high',
    acknowledged: null,
    ...more,
  },
});

test('a new alarm of high priority that nobody has answered sounds, and one raised again', () => {
  expect(isHeard(told('raised'))).toBe(true);
  expect(isHeard(told('realarmed'))).toBe(true);
});

test('a lower priority does not, nor one that is answered', () => {
  expect(isHeard(told('raised', { priority: 'medium' }))).toBe(false);
  expect(isHeard(told('raised', { priority: 'low' }))).toBe(false);
  expect(isHeard(told('raised', { state: 'acknowledged' }))).toBe(false);
});

test('nothing else does: above all no return to normal', () => {
  const quiet = ['returned', 'acknowledged', 'reset', 'forecast', 'unjudgeable'] as const;
  expect(quiet.filter((change) => isHeard(told(change as Told['change'])))).toEqual([]);
});
