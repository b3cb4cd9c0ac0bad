/** Why a sensor gives no usable reading is said as it is now, not as it was when it was lost. */
import { expect, test } from 'vitest';
import { movedOn, presentForecast } from '#agent/wiring/present-forecast.ts';
import { quality } from '#rules/signal/quality.ts';
import { freshFolder } from '../store/folders.ts';
import { Works } from './works.ts';

const lines = `
l:
  c:
    kind: custom
    signals:
      a:
        { topic: a, payload: { kind: json, value: /v, time: /t }, unit: Cel, expect_every: 60 s }
`;
const minuteMs = 60_000;

test('its clock was ahead, is behind, then its numbers are none', () => {
  const agent = new Works(freshFolder(), lines);
  const feed = (aheadMs: number, value: number, minutes: number): void => {
    for (let i = 0; i < minutes; i += 1)
      agent.send('a', JSON.stringify({ v: value, t: agent.nowMs + aheadMs }), minuteMs);
  };
  const lost = () => agent.core.desk.open().find(({ rule }) => rule.endsWith('/lost-a'));
  const causeNow = () => presentForecast(agent.core, lost()!).occurrence.evidence.cause;
  feed(0, 20, 2);
  feed(60 * minuteMs, 20, 5);
  expect(lost()?.evidence.cause).toBe(quality.future);
  expect([causeNow(), movedOn(agent.core).length]).toEqual([quality.future, 0]);
  feed(-11 * minuteMs, 20, 2);
  expect(causeNow()).toBe(quality.tooLate);
  // Told once, as it changed.
  expect([movedOn(agent.core).length, movedOn(agent.core).length]).toEqual([1, 0]);
  feed(60 * minuteMs, 20, 1);
  expect(causeNow()).toBe(quality.future);
  // What was seen at the raise is kept as it was.
  expect(lost()?.evidence.cause).toBe(quality.future);
});
