/** An export holds derived signals up to the present moment, sealed or not. */
import { expect, test } from 'vitest';
import { readRange } from '#agent/store/range.ts';
import { openDerived } from '#agent/wiring/open-derived.ts';
import { freshFolder } from '../store/folders.ts';
import { Works, works } from './works.ts';

const dewPoint = 'l/s/air-dew-point';

function someMinutes(agent: Works, minutes: number): Works {
  for (let i = 0; i < minutes; i += 1)
    agent.send('air', 20 + (i % 3), 20_000).send('humidity', 50 + (i % 5), 20_000);
  agent.core.live.settle();
  return agent;
}

/** What an export of the dew point says. */
function exported(agent: Works): { at: number; value: number; quality: number }[] {
  const all: { at: number; value: number; quality: number }[] = [];
  const request = { signals: [dewPoint], sinceMs: 0, untilMs: 8e15 };
  for (const item of readRange(agent.folder, request, openDerived)) {
    if (item.kind !== 'samples') throw new Error(item.reason);
    const { batch } = item;
    for (let i = 0; i < batch.count; i += 1)
      all.push({ at: batch.at[i]!, value: batch.value[i]!, quality: batch.quality[i]! });
  }
  return all;
}

test('of a log that was never sealed', () => {
  const agent = someMinutes(new Works(freshFolder()), 10);
  expect(agent.open[dewPoint]!.length).toBeGreaterThan(10);
  expect(exported(agent)).toEqual(agent.open[dewPoint]);
});

test('sealed and open, over restarts and another site', async () => {
  const agent = someMinutes(new Works(freshFolder()), 10);
  const sealed = agent.open[dewPoint]!;
  await agent.core.sealIfDue(true);
  expect(agent.open[dewPoint]).toBeUndefined();
  expect(exported(agent)).toEqual(sealed);
  someMinutes(agent, 5);
  const whole = (): object[] => [...sealed, ...agent.open[dewPoint]!];
  expect(exported(agent)).toEqual(whole());
  someMinutes(agent.restart(60_000, works('cold-adhesive: { low: 9 Cel, low_low: 4 Cel }')), 5);
  expect(exported(agent)).toEqual(whole());
  expect(whole().length).toBeGreaterThan(25);
});

test('without the newest snapshot, each once', async () => {
  const agent = someMinutes(new Works(freshFolder()), 10);
  const sealed = agent.open[dewPoint]!;
  await agent.core.sealIfDue(true);
  someMinutes(agent, 5).tampered("UPDATE snapshot SET state = x'00'");
  expect(exported(agent)).toEqual([...sealed, ...agent.open[dewPoint]!]);
});
