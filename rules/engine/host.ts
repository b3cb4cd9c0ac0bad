/** What the engine lends its judgement, and what it takes up again after a restart. */
import type { Effect } from '../input.ts';
import type { EpochMs, SampleBatch } from '../signal/sample.ts';
import type { EngineState } from './state.ts';

/** What the engine lends it: the clock, and where effects and derived samples go. */
export interface JudgementHost {
  now: EpochMs;
  readonly derivedOut: SampleBatch;
  emit(effect: Effect): void;
}

export type SavedJudgement = Pick<
  EngineState,
  'latest' | 'rules' | 'derived' | 'alarms' | 'holds' | 'runs' | 'racks' | 'marks' | 'off'
>;
