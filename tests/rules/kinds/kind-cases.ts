/**
 * What the properties of rule kinds need to know of each: settings, signals, a life in which its
 * condition is never met, a wild one in which it often is, and what a raise of it implies.
 * Whoever adds a kind adds its case here; a kind without one fails tests/rules/kinds/properties.test.ts.
 */
import type fc from 'fast-check';
import { lives as heatLives } from './kind-cases-heat.ts';
import { lives as markLives } from './kind-cases-marks.ts';
import { lives as pairLives } from './kind-cases-several.ts';
import { lives as trendLives } from './kind-cases-trend.ts';
import { lives as valueLives } from './kind-cases-value.ts';
import type { KindPlan, Step, Told } from './kind-life.ts';

/** A usable reading or a mark, milliseconds after the start. */
export type Seen = Step & { readonly at: number };

export interface KindCase extends KindPlan {
  /** Its condition is never met in it. */
  readonly calm: fc.Arbitrary<readonly Step[]>;
  /** How long the calm life goes on after its last reading; silence is a condition of some kinds. */
  readonly calmEndMs?: number;
  /** Usable readings and marks alone. */
  readonly wild: fc.Arbitrary<readonly Step[]>;
  /** About how far apart its readings come: what interrupts them is as long. */
  readonly scaleMs: number;
  /**
   * The delay it has with `settings` plus this on_delay; or, of a kind without one, whether what it
   * waits for had lasted, from what was seen up to the raise.
   */
  readonly held:
    | { readonly onDelay: string; readonly ms: number }
    | ((seen: readonly Seen[], raise: Told) => boolean);
  /** Memories that older versions left, each with what goes on from there: one at least a version. */
  readonly older?: Readonly<Record<number, OlderMemory>>;
}

export interface OlderMemory {
  readonly settings: KindPlan['settings'];
  /** As it stood in the snapshot of an engine that began at 0. */
  readonly memory: unknown;
  /** When it was left, and its deadline then. */
  readonly leftMs: number;
  readonly deadlineMs: number | null;
  /** What happened from then on, and what the older version told of it, and when. */
  readonly steps: readonly Step[];
  readonly told: readonly (readonly [transition: string, atMs: number])[];
  /** How far the moments may lie from what the older version would have told. */
  readonly withinMs: number;
}

export const kindCases: Readonly<Record<string, KindCase>> = {
  ...valueLives,
  ...trendLives,
  ...pairLives,
  ...heatLives,
  ...markLives,
};
