/** Derived kinds for tests of the engine: what they remember shows in what they give. */
import { z } from 'zod/mini';
import type { KeepingKind } from '#rules/derive/derived-kind.ts';
import type { PlanKeeping } from '#rules/plan/plan.ts';
import { quality } from '#rules/signal/quality.ts';

interface Sum {
  sum: number;
  at: number | null;
  held: number;
  unseenMs: number;
}

/** The first input times the seconds it held; asks again by itself every `everyMs` while it is above zero. */
export const integral = (
  version = 1,
  migrate?: KeepingKind<{ everyMs: number }, Sum>['migrate'],
): KeepingKind =>
  ({
    name: 'integral',
    version,
    summary: 'A sum over time.',
    inputs: [{ name: 'x', unit: 'Cel', meaning: 'anything' }],
    unit: 'Cel',
    digits: 1,
    source: 'definition',
    written: z.strictObject({}),
    compile: () => ({ everyMs: 5_000 }),
    begin: () => ({ sum: 0, at: null, held: 0, unseenMs: 0 }),
    step({ everyMs }, memory, now, timer) {
      if (memory.at !== null) memory.sum += (memory.held * (now.at - memory.at)) / 1_000;
      memory.at = now.at;
      memory.held = now.inputs[0]!;
      if (memory.held > 0) timer.at = now.at + everyMs;
      if (memory.unseenMs > 0) now.doubt = quality.unobserved;
      return memory.sum;
    },
    gap(_, memory, fromMs, toMs) {
      if (memory.at === null) return;
      memory.sum += (memory.held * (fromMs - memory.at)) / 1_000;
      memory.at = toMs;
      memory.unseenMs += toMs - fromMs;
    },
    shift(memory, deltaMs) {
      if (memory.at !== null) memory.at += deltaMs;
    },
    ...(migrate === undefined ? {} : { migrate }),
  }) satisfies KeepingKind<{ everyMs: number }, Sum> as unknown as KeepingKind;

export const keeps = (kind: KeepingKind = integral(), everyMs = 5_000): PlanKeeping['keeps'] => ({
  kind,
  settings: { everyMs },
  fingerprint: JSON.stringify([kind.name, everyMs]),
});
