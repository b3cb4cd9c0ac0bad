/**
 * The engine's state as plain data: what a snapshot holds, by name rather than by index, so that
 * a restart with the same plan and a reload with another go the same way.
 */
import type { Hold } from '../hold/hold.ts';
import type { Input } from '../input.ts';
import type { Severity } from '../kinds/kind.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Alarm } from './alarm.ts';
import type { LastMark } from './marks.ts';
import type { PendingSample } from './pending.ts';
import type { SavedHeats } from './rack-heat-state.ts';
import type { OpenRun } from './runs.ts';

export const stateFormat = 1;

export interface SavedLatest {
  readonly at: EpochMs;
  readonly value: number;
  readonly quality: number;
  /** The last reading was bad. */
  readonly bad: boolean;
}

export type GateState = 'open' | 'closed' | 'unreadable';

/** A file of the site's own rules that is switched off. */
export interface SwitchedOff {
  readonly why: string;
  readonly sinceMs: EpochMs;
}

export interface SavedRule {
  readonly kind: string;
  readonly version: number;
  /** Settings, inputs and gates; where it differs, the memory begins anew. */
  readonly key: string;
  readonly memory: unknown;
  readonly deadline: EpochMs | null;
  readonly severity: Severity;
  readonly gate: GateState;
  readonly frozenAt: EpochMs | null;
  readonly remainingMs: number | null;
  /** Its kind is switched off: it begins anew once it is on again. */
  readonly off?: true;
}

export interface SavedDerived {
  /** When it was last computed; null before the first time. */
  readonly computedAt: EpochMs | null;
  readonly due: EpochMs | null;
  /** Of one that remembers. */
  readonly keeping?: SavedKeeping;
}

export interface SavedKeeping {
  readonly kind: string;
  readonly version: number;
  /** Settings and inputs; where they differ, the memory begins anew. */
  readonly key: string;
  readonly memory: unknown;
  /** Since when an input cannot be used. */
  readonly blindSince: EpochMs | null;
  /** As `SavedRule.off`. */
  readonly off?: true;
}

export interface EngineState {
  readonly format: typeof stateFormat;
  readonly revision: string;
  readonly now: EpochMs;
  readonly pending: readonly (Omit<PendingSample, 'signal'> & { readonly signal: string })[];
  readonly queue: readonly Input[];
  readonly latest: Readonly<Record<string, SavedLatest>>;
  readonly rules: Readonly<Record<string, SavedRule>>;
  readonly derived: Readonly<Record<string, SavedDerived>>;
  readonly alarms: Readonly<Record<string, Alarm>>;
  /** By station; absent in what an agent without oven runs left behind. */
  readonly runs?: Readonly<Record<string, OpenRun>>;
  /** The heat racks have had; absent where nobody counts it. */
  readonly racks?: SavedHeats;
  /** The last word of each mark, by id; absent in what an agent without marks left behind. */
  readonly marks?: Readonly<Record<string, LastMark>>;
  /** By `RuleKind.extension`; absent where none is off. */
  readonly off?: Readonly<Record<string, SwitchedOff>>;
  readonly holds: { readonly count: number; readonly standing: readonly Hold[] };
}
