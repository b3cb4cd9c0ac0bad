/** The agent's core in this process, on a data folder; no doors. */
import { systemClock } from '#agent/clock/engine-clock.ts';
import { limits } from '#agent/limits.ts';
import { readSite } from '#agent/site/read-site.ts';
import type { SiteSource } from '#agent/site/revision.ts';
import { openStore } from '#agent/store/store.ts';
import type { TurnNews } from '#agent/turn/ports.ts';
import { Core } from '#agent/wiring/core.ts';

export async function sourceOf(site: string): Promise<SiteSource> {
  const reading = await readSite(site);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.source;
}

export interface OpenCore {
  readonly core: Core;
  readonly news: TurnNews[];
  readonly warnings: object[];
  /** One message with QoS 1; resolves when it is acknowledged. */
  publish(topic: string, payload: string): Promise<void>;
  stop(): void;
}

/** Opens as agent/compose.ts does. */
export function coreOn(source: SiteSource, folder: string): OpenCore {
  const store = openStore(folder, { now: Date.now, ballastBytes: 0 });
  const news: TurnNews[] = [];
  const warnings: object[] = [];
  const core = new Core({
    store,
    source,
    mode: 'wall',
    clock: systemClock,
    version: 'test',
    sealEveryMs: limits.sealEveryMs,
    tell: (each) => news.push(each),
    warn: (facts) => warnings.push(facts),
  });
  return {
    core,
    news,
    warnings,
    publish: (topic, payload) =>
      new Promise((done) => core.live.take(topic, Buffer.from(payload), false, 1, done)),
    stop: () => {
      core.live.stop();
      store.note();
      store.stopRun(core.live.engineNow ?? 0);
      store.close();
    },
  };
}
