/** A sensor heard for the first time while the disk refuses: nothing of it is half done. */
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { AgentError } from '#agent/errors.ts';
import type { Store } from '#agent/store/store.ts';
import { scratchFolder, siteFile } from '#tests/agent-process.ts';
import { expectJudgedAlike, storedKeys } from './afterwards.ts';
import { coreOn, type OpenCore, sourceOf } from './core-on.ts';
import { smallWorks } from './small-works.ts';

const full = (): never => {
  throw new AgentError('STORE_DISK_FULL', { path: 'data' });
};

/** Publishes while these methods of the store refuse; what the turn throws goes to the door. */
function publishRefused(open: OpenCore, refuses: readonly (keyof Store)[], topic: string): void {
  const { store } = open.core;
  for (const method of refuses)
    Object.defineProperty(store, method, { value: full, configurable: true });
  try {
    expect(() =>
      open.core.live.take(topic, Buffer.from('20'), false, 1, () => expect.fail('acknowledged')),
    ).toThrow(/is full/);
  } finally {
    for (const method of refuses) Reflect.deleteProperty(store, method);
  }
}

for (const refuses of [['keepSiteRevision'], ['registerSignals']] as const)
  test(`${refuses[0]} refused`, async () => {
    const parent = scratchFolder();
    const folder = join(parent, 'data');
    const site = siteFile(parent, smallWorks);
    const source = await sourceOf(site);
    const open = coreOn(source, folder);
    await open.publish('hall/p-1/probe', '20.5');
    const { revision } = open.core.plans.now.plan;
    for (let time = 0; time < 3; time += 1) publishRefused(open, refuses, 'hall/p-2/probe');
    // The site is as it was, and goes on.
    expect(open.core.plans.now.plan.revision).toBe(revision);
    expect(open.core.live.running?.plan.revision).toBe(revision);
    await open.publish('hall/p-1/probe', '20.6');
    await open.publish('hall/3/plain', '20.7');
    // Sent again, as a publisher without an acknowledgement does.
    await open.publish('hall/p-2/probe', '40.1');
    await open.publish('hall/p-3/probe', '40.2');
    expect(open.core.live.running?.plan.revision).toBe(open.core.plans.now.plan.revision);
    open.stop();
    const stored = storedKeys(folder);
    expect(stored.get('hall/bench/probe-p-1')).toEqual([205_000, 206_000]);
    expect(stored.get('hall/bench/plain-3')).toEqual([207_000]);
    expect(stored.get('hall/bench/probe-p-2')).toEqual([401_000]);
    expect(stored.get('hall/bench/probe-p-3')).toEqual([402_000]);
    const again = coreOn(source, folder);
    expect(again.core.store.findings).toEqual([]);
    expect(again.core.plans.now.plan.signals.map(({ id }) => id)).toContain('hall/bench/probe-p-2');
    again.stop();
    await expectJudgedAlike(folder, site);
  });
