/** The centre line and the control limits of a chart, while an alarm tells that they were left. */
import { expect, test } from 'vitest';
import type { AlarmView } from '#agent/web/contract.ts';
import { controlOf } from '../../dashboards/judge/control.ts';
import { alarm, signal } from '../agent/web/fake-ports.ts';

const film = signal();
const rules = new Map([
  ['l/s/drift', { kind: 'drift' }],
  ['l/s/chart', { kind: 'chart' }],
  ['l/s/deviation', { kind: 'deviation' }],
]);
const off = (
  rule: string,
  evidence: Partial<AlarmView['evidence']>,
  over: Partial<AlarmView> = {},
) =>
  alarm({
    rule,
    signal: film.id,
    state: 'unacknowledged',
    evidence: { ...alarm().evidence, unit: film.unit, reference: null, allowed: null, ...evidence },
    ...over,
  } as Partial<AlarmView>);

test('drift: its baseline, and as far as it may go on either side', () => {
  const one = off('l/s/drift', { reference: 20, allowed: 1.5 });
  expect(controlOf(film, [one], rules)).toEqual({ centre: 20, low: 18.5, high: 21.5 });
});

test('chart: the centre alone, for runs have no distance', () => {
  expect(controlOf(film, [off('l/s/chart', { reference: 20 })], rules)).toEqual({
    centre: 20,
    low: null,
    high: null,
  });
});

test.each([
  ['no alarm', []],
  ['one that is over', [off('l/s/drift', { reference: 20 }, { state: 'normal' })]],
  ['another signal’s', [off('l/s/drift', { reference: 20 }, { signal: 'l/s/other' })]],
  ['a rule with a target, which is no baseline', [off('l/s/deviation', { reference: 20 })]],
  ['a baseline not learned yet', [off('l/s/drift', {})]],
  ['another unit', [off('l/s/drift', { reference: 20, unit: 'Pa' })]],
])('none of %s', (_, alarms) => expect(controlOf(film, alarms, rules)).toBeNull());
