/** Sealing, from where the last run left it. */
import { seal } from '../store/seal.ts';
import type { Core } from './core.ts';
import type { CoreOptions } from './core-options.ts';
import type { Recovered } from './recover.ts';
import { Sealing } from './sealing.ts';

export function sealingFrom(
  core: Core,
  { sealEveryMs, warn }: CoreOptions,
  recovered: Recovered | null,
): Sealing {
  return new Sealing(
    {
      everyMs: sealEveryMs,
      columns: core.columns,
      signals: () => core.samples.storedSignals,
      samples: () => core.samples.cursor,
      encode: (frozen, signals) => seal(frozen, signals),
      write: (segment) => {
        core.store.writeSegment(segment);
        core.sealingFailed = null;
      },
      failed: (error) => {
        core.sealingFailed = error instanceof Error ? error.message : String(error);
        warn({ error: core.sealingFailed }, 'sealing failed; it is tried again');
      },
    },
    {
      afterSeq: core.store.sealedSeq,
      from: recovered?.firstJudged ?? null,
      commands: recovered?.commands ?? [],
    },
  );
}
