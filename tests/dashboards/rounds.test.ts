/** What is to be written down or read by hand within a day, the one due first coming first. */
import { expect, test } from 'vitest';
import type { ClockView, SignalView } from '#agent/web/contract.ts';
import { roundsOf } from '../../dashboards/judge/rounds.ts';
import { now, signal } from '../agent/web/fake-ports.ts';

const hour = 3_600_000;
const clock = (rule: string, due: number): ClockView => ({
  rule,
  line: 'l',
  station: 'r',
  mark: 'bin-emptied',
  item: null,
  since: due - 8 * hour,
  said: true,
  early: due - hour,
  due,
  severity: 0,
});
const hand = (id: string, over: Partial<SignalView>): SignalView => ({
  ...signal(id),
  id,
  kind: 'manual',
  expect_every_ms: 8 * hour,
  at: now - 6 * hour,
  ...over,
});

test('clocks and hand readings due within a day, or over; what is read by a sensor is none', () => {
  const rounds = roundsOf(
    [
      clock('l/r/late', now + 25 * hour),
      clock('l/r/soon', now + 3 * hour),
      clock('l/r/over', now - hour),
    ],
    [
      hand('l/r/read', {}),
      hand('l/r/never', { at: null }),
      hand('l/r/seldom', { expect_every_ms: 100 * hour }),
      hand('l/r/unasked', { expect_every_ms: null }),
      hand('l/r/sensor', { kind: 'measured' }),
    ],
    now,
  );
  expect(
    rounds.map((each) => [each.kind === 'clock' ? each.clock.rule : each.signal.id, each.due]),
  ).toEqual([
    ['l/r/never', null],
    ['l/r/over', now - hour],
    ['l/r/read', now + 2 * hour],
    ['l/r/soon', now + 3 * hour],
  ]);
});
