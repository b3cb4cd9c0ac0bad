/** What the turn of the live agent is made of; the core hands it in. */
import type { Engine } from '#rules/engine.ts';
import type { Input } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Journal } from './journal.ts';
import type { EffectKeeper, SampleKeeper, TurnIntake, TurnNews } from './ports.ts';

export interface LiveParts {
  readonly mode: 'wall' | 'samples';
  readonly journal: Journal;
  readonly desk: EffectKeeper;
  readonly samples: SampleKeeper;
  readonly intake: TurnIntake;
  /** Engine time by the wall; only asked in `wall` mode. */
  readonly now: () => EpochMs;
  /** Body of an input that is not samples: canonical JSON. */
  readonly bodyOf: (input: Input) => Uint8Array;
  readonly tell: (news: TurnNews) => void;
  /** By the samples' clock, just before the first sample of a run: gives the engine, begun at `at`. */
  readonly begin: (at: EpochMs) => Engine;
}
