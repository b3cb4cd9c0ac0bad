/** The forecast of an alarm that stands moves on with its readings. */
import { expect, test } from 'vitest';
import { presentForecast } from '#agent/wiring/present-forecast.ts';
import { freshFolder } from '../store/folders.ts';
import { Works } from './works.ts';

const lines = `
l:
  c:
    kind: custom
    signals:
      a: { topic: a, payload: { kind: plain }, unit: Cel, resolution: 0.1, expect_every: 60 s }
    rules:
      soon:
        { kind: approach, signal: a, high: 60 Cel, within: 2 h, window: 20 min, priority: low,
          consequence: C., actions: [A.] }
`;
const minuteMs = 60_000;

test('time to the limit is that of now, and vanishes with the confidence', () => {
  const agent = new Works(freshFolder(), lines);
  let value = 20;
  const feed = (minutes: number, perMin: number): void => {
    for (let i = 0; i < minutes * 2; i += 1) {
      value += perMin / 2;
      agent.send('a', value.toFixed(1), minuteMs / 2);
    }
  };
  const standing = () => agent.core.desk.open().find(({ rule }) => rule === 'l/c/soon');
  for (let i = 0; i < 60 && standing() === undefined; i += 1) feed(1, 0.5);
  const raised = standing()!;
  expect(raised.evidence.earliestMs).toBeDefined();
  feed(10, 0.5);
  const { occurrence: later } = presentForecast(agent.core, standing()!);
  expect(standing()!.evidence).toEqual(raised.evidence);
  expect(later.evidenceAt).toBe(agent.core.live.engineNow);
  expect(later.evidence.value).toBeGreaterThan(raised.evidence.value!);
  expect(later.evidence.earliestMs).toBeGreaterThan(agent.core.live.engineNow!);
  // 40 K at 0.5 K a minute, from the moment the rise began.
  const left = (later.evidence.latestMs! - later.evidenceAt) / minuteMs;
  expect(left).toBeGreaterThan((60 - value) / 0.5 - 10);
  expect(left).toBeLessThan((60 - value) / 0.5 + 10);
  // Standing still: nobody can tell when, and no time is told.
  for (let i = 0; i < 40; i += 1) feed(1, i % 2 === 0 ? 0.4 : -0.4);
  const stood = presentForecast(agent.core, standing()!);
  expect(stood.vanished).toBe(true);
  // Its sentence stands as it was.
  expect(stood.occurrence.evidence.latestMs).toBe(raised.evidence.latestMs);
});
