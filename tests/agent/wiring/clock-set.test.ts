/** A clock that was set is spoken of for a day, over restarts too, and by which way and how far. */
import { expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { healthOf } from '#agent/wiring/vitals.ts';
import { freshFolder } from '#tests/agent/store/folders.ts';
import { start, Works } from './works.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

function clockOf(works: Works) {
  const running = {
    core: works.core,
    store: works.core.store,
    upkeep: { refused: null, lookedAt: performance.now() },
    damage: { words: () => [] },
    ...{ siteDesk: null, door: null, lockRemadeAt: null },
  } as unknown as Parameters<typeof healthOf>[0];
  const { parts, notes } = healthOf(running);
  return [parts.clock, notes.clock];
}

function set(works: Works, byMs: number): Works {
  works.nowMs += byMs;
  works.monotonicAheadMs -= byMs;
  works.core.lookAtClock();
  return works.pass(1_000);
}

test('ahead by two hours: why, when and what to do; good again after a day', () => {
  const works = new Works(freshFolder());
  works.pass(1_000);
  expect(clockOf(works)).toEqual(['good', undefined]);
  set(works, 2 * hourMs);
  expect(clockOf(works)).toEqual([
    'maintenance-required',
    'The clock of this box was set ahead by 2 h at 2026-11-25T11:00:01Z, unless the box slept; times before and after do not fit. Check its time source.',
  ]);
  works.restart();
  expect(clockOf(works)[0]).toBe('maintenance-required');
  works.killed(limits.clockSetToldMs - hourMs);
  expect(clockOf(works)[0]).toBe('maintenance-required');
  works.restart(hourMs);
  expect(clockOf(works)).toEqual(['good', undefined]);
});

test('back by a day: the last step is told, and where there were several how many', () => {
  const works = new Works(freshFolder());
  works.send('wall', 20);
  set(works, 2 * hourMs);
  set(works, -2 * hourMs);
  set(works, -dayMs);
  const said =
    /^The clock of this box was set back by 24 h at 2026-11-24T09:00:\d\dZ; times before and after do not fit. Check its time source. It was set 3 times within a day.$/;
  expect(clockOf(works)[0]).toBe('maintenance-required');
  expect(clockOf(works)[1]).toMatch(said);
  works.restart();
  expect(clockOf(works)[1]).toMatch(said);
});

test('what the clock is brought to by running faster or slower is no step', () => {
  const works = new Works(freshFolder(), undefined, start);
  set(works.pass(1_000), 1_500);
  expect(clockOf(works)).toEqual(['good', undefined]);
});
