/**
 * What goes into the engine and what comes out: the whole conversation between the core and the world.
 *
 * Everything the engine is fed is a row of one input log; restart and replay feed it again and
 * get the same effects. Samples travel in batches (`signal/sample.ts`), the rest as these objects.
 * Inputs of one moment are taken in the order of `inputOrder`, samples between site and command.
 */

import type { AlarmState, Transition } from './alarm/lifecycle.ts';
import type { Nuisance } from './alarm/nuisance.ts';
import type { Priority } from './alarm/priority.ts';
import type { Disposition, Hold, HoldWhat } from './hold/hold.ts';
import type { Evidence } from './kinds/kind.ts';
import type { EpochMs } from './signal/sample.ts';

/** People appear by id only; names live elsewhere. */
export type PersonId = string;

export type AlarmVerb =
  | 'acknowledge'
  | 'pass-on'
  | 'reset'
  | 'shelve'
  | 'unshelve'
  | 'remove-from-service'
  | 'return-to-service';

/** Something happened to an item, or at a place; a person says so, or a device. */
export interface MarkCommand {
  readonly kind: 'command';
  readonly judged: EpochMs;
  readonly verb: 'mark';
  /** `line/station`. */
  readonly station: string;
  /** A mark of that station. */
  readonly mark: string;
  /** Absent for a mark of the place itself. */
  readonly item?: string;
  /** When it happened, perhaps long ago; when it is judged, where nobody said. */
  readonly at?: EpochMs;
  readonly by: PersonId;
  readonly note?: string;
}

export type Command =
  | MarkCommand
  | {
      readonly kind: 'command';
      readonly judged: EpochMs;
      readonly verb: AlarmVerb;
      readonly occurrence: string;
      readonly by: PersonId;
      readonly reason?: string;
      /** For `shelve`: when the shelf ends. */
      readonly untilMs?: EpochMs;
      /** For `shelve`: it ends before, as soon as the alarm returns. */
      readonly oneShot?: true;
    }
  | {
      readonly kind: 'command';
      readonly judged: EpochMs;
      readonly verb: 'hold';
      readonly what: HoldWhat;
      readonly item: string;
      readonly by: PersonId;
      readonly reason: string;
      /** It stood already when judging began anew, and stands on; `count`: how many there were by then. */
      readonly carried?: Pick<Hold, 'id' | 'since' | 'occurrence'> & { readonly count: number };
    }
  | {
      readonly kind: 'command';
      readonly judged: EpochMs;
      readonly verb: 'lift';
      readonly hold: string;
      readonly disposition: Disposition;
      readonly by: PersonId;
      readonly reason: string;
    };

export type Input =
  /**
   * Nothing was observed in between: the agent was down, or the clock stepped ahead.
   * `judged` is `fromMs` + 1: it stands right behind all that was judged before it.
   */
  | {
      readonly kind: 'gap';
      readonly judged: EpochMs;
      readonly fromMs: EpochMs;
      readonly toMs: EpochMs;
    }
  /**
   * The clock was set back by more than can be slewed; times in memory move along. It stands
   * behind all that was judged before it, as a gap does.
   */
  | { readonly kind: 'rebase'; readonly judged: EpochMs; readonly deltaMs: number }
  /** From here on the plan of this revision holds; the shell has compiled it. */
  | {
      readonly kind: 'site';
      readonly judged: EpochMs;
      readonly revision: string;
      /** Who had it loaded; absent where nobody did. */
      readonly by?: PersonId;
    }
  | ExtensionInput
  | Command;

/**
 * A file of the site's own rules is switched off, or on again. It is said ahead, before anything
 * of that moment is judged: it holds from `at` on, once `turn` things were judged there. How long
 * a rule took is known only while it is live, so a replay goes by this.
 */
export interface ExtensionInput {
  readonly kind: 'extension';
  readonly judged: EpochMs;
  /** As `RuleKind.extension`. */
  readonly extension: string;
  /** Why it is switched off; null where it is switched on again. */
  readonly off: string | null;
  readonly at: EpochMs;
  readonly turn: number;
  /** Who switched it on. */
  readonly by?: PersonId;
}

/** Order within one moment; samples are 3. */
export const inputOrder = {
  gap: 0,
  rebase: 1,
  site: 2,
  extension: 2.5,
  sample: 3,
  command: 4,
} as const;

/** What a run was, in canonical units. */
export interface RunFeatures {
  /** Usable readings of the metal. */
  readonly readings: number;
  readonly peak: number | null;
  readonly lowest: number | null;
  /** Steepest rise from one minute's mean to the next; null where no two minutes were seen. */
  readonly steepestPerMin: number | null;
  /** At or above the temperature of drying, and of too much; null where no limit is set. */
  readonly aboveMs: number | null;
  readonly upperMs: number | null;
  /** Of its length, how much nobody saw of the metal. */
  readonly unobservedMs: number;
  /** Dried too little, heated too much; null where nobody can tell. */
  readonly under: boolean | null;
  readonly over: boolean | null;
}

export type Effect =
  | {
      readonly kind: 'transition';
      /** When the value that decided held; the deadline, where a deadline decided. */
      readonly at: EpochMs;
      readonly judged: EpochMs;
      readonly rule: string;
      readonly signal: string;
      /** `<rule>@<judged ms of the raise>`; null where the rule has no open occurrence. */
      readonly occurrence: string | null;
      readonly transition: Transition;
      readonly from: AlarmState;
      readonly to: AlarmState;
      readonly severity: 0 | 1 | 2;
      readonly priority: Priority;
      readonly evidence: Evidence;
      readonly by?: PersonId;
      readonly reason?: string;
      /** Where `to` is shelved: when the shelf ends. */
      readonly untilMs?: EpochMs;
      /** Where `to` is shelved: and before, as soon as the alarm returns. */
      readonly oneShot?: true;
      /** It comes and goes too fast to act on: for whoever tunes the rule, not for a phone. */
      readonly nuisance?: Nuisance;
      /**
       * Told again, for the so-manieth time, because nothing improved within the time to respond;
       * 0: it was a nuisance as it was raised, and stands after all.
       */
      readonly again?: number;
      /** The occurrence ends here. */
      readonly closes?: true;
      /** The occurrence this one takes the place of, unacknowledged as it was. */
      readonly supersedes?: string;
    }
  /** A rule with an open occurrence can no longer be judged, or can be again. */
  | {
      readonly kind: 'judgeable';
      readonly judged: EpochMs;
      readonly rule: string;
      readonly occurrence: string;
      readonly judgeable: boolean;
    }
  | {
      readonly kind: 'hold';
      readonly judged: EpochMs;
      readonly hold: string;
      readonly what: HoldWhat;
      readonly item: string;
      readonly action: 'set' | 'lifted';
      readonly by: PersonId;
      readonly reason: string;
      readonly occurrence?: string;
      readonly disposition?: Disposition;
    }
  /** Somebody said that something happened, and the rules that judge it know. */
  | {
      readonly kind: 'mark';
      readonly judged: EpochMs;
      readonly station: string;
      readonly mark: string;
      readonly item: string | null;
      readonly at: EpochMs;
      readonly by: PersonId;
      readonly note?: string;
    }
  /** An oven run opened or closed. */
  | {
      readonly kind: 'run';
      readonly judged: EpochMs;
      /** `<line/station>@<judged ms of the opening>`. */
      readonly run: string;
      /** `line/station`. */
      readonly station: string;
      readonly action: 'opened' | 'closed';
      readonly opened: EpochMs;
      readonly closed: EpochMs | null;
      readonly why: 'loaded' | 'unloaded' | 'removed';
      /** null while it is open. */
      readonly features: RunFeatures | null;
    }
  /** A file of the site's own rules was switched off, and why; or on again, and by whom. */
  | {
      readonly kind: 'extension';
      readonly judged: EpochMs;
      readonly extension: string;
      readonly off: string | null;
      readonly by?: PersonId;
    }
  /** A command that changed nothing, and why. */
  | {
      readonly kind: 'refused';
      readonly judged: EpochMs;
      readonly command: Command;
      readonly why: string;
    };
// Derived samples leave the engine in a SampleBatch of their own, for the same reason samples enter in one.
