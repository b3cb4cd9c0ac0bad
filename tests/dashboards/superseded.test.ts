/** What comes by the live stream takes the place of what it stands for. */
import { expect, test, vi } from 'vitest';
import { alarm, now } from '../agent/web/fake-ports.ts';

vi.stubGlobal('document', { documentElement: { dataset: {} } });
const { readBoard } = await import('../../dashboards/state/board.ts');
const { withAlarm } = await import('../../dashboards/state/load.ts');

test('raised again before anybody answered: the older one is spoken for at once', () => {
  const older = alarm({
    occurrence: 'r@1',
    raised: now - 60_000,
    state: 'returned-unacknowledged',
  });
  const closed = alarm({ occurrence: 'r@0', raised: now - 90_000, state: 'normal' });
  const other = alarm({ occurrence: 's@1', rule: 'another', raised: now - 60_000 });
  const board = {
    ...readBoard(),
    alarms: new Map([closed, older, other].map((each) => [each.occurrence, each])),
  };
  const after = withAlarm(board, alarm({ occurrence: 'r@2', raised: now }));
  expect([...after.values()].map((each) => [each.occurrence, each.superseded_by])).toEqual([
    ['r@0', null],
    ['r@1', 'r@2'],
    ['s@1', null],
    ['r@2', null],
  ]);
});
