/**
 * One occurrence of an alarm as it is kept: from its raise to its close, with all that happened.
 */
import type { AlarmState, Transition } from '#rules/alarm/lifecycle.ts';
import type { Nuisance } from '#rules/alarm/nuisance.ts';
import type { Priority } from '#rules/alarm/priority.ts';
import type { Evidence } from '#rules/kinds/kind.ts';
import type { EpochMs } from '#rules/signal/sample.ts';

export interface OccurrenceStep {
  readonly judged: EpochMs;
  readonly transition: Transition;
  readonly from: AlarmState;
  readonly to: AlarmState;
  readonly by: string | null;
  readonly reason: string | null;
  /** Told again because nothing improved, for the so-manieth time. */
  readonly again?: number;
}

export interface Occurrence {
  readonly id: string;
  readonly rule: string;
  readonly signal: string;
  readonly state: AlarmState;
  readonly severity: 0 | 1 | 2;
  readonly priority: Priority;
  readonly raised: EpochMs;
  readonly returned: EpochMs | null;
  readonly closed: EpochMs | null;
  readonly acknowledged: { readonly by: string; readonly at: EpochMs } | null;
  readonly shelvedUntil: EpochMs | null;
  /** And before, as soon as it returns. */
  readonly shelvedOnce?: boolean;
  /** It comes and goes too fast to act on. */
  readonly nuisance?: Nuisance;
  readonly judgeable: boolean;
  /** What the rule saw when it last spoke while abnormal. */
  readonly evidence: Evidence;
  /** When it saw it. */
  readonly evidenceAt: EpochMs;
  readonly supersededBy: string | null;
  /** Oldest first; the first, the first answer and the newest are always kept. */
  readonly steps: readonly OccurrenceStep[];
  /** Oldest first; absent in what was kept before there were any. */
  readonly comments?: readonly OccurrenceComment[];
  /** Who was told, oldest first; absent in what was kept before anybody was. */
  readonly told?: readonly OccurrenceTold[];
  /** What was last said, once it was over, of whether it was needed. */
  readonly needed?: { readonly at: EpochMs; readonly by: string; readonly answer: boolean };
}

/** What somebody wrote to an alarm that was acknowledged already; it changes nothing of its state. */
export interface OccurrenceComment {
  readonly at: EpochMs;
  readonly by: string;
  readonly text: string;
}

/** That somebody was told of it, or could not be. */
export interface OccurrenceTold {
  readonly at: EpochMs;
  /** By id; null for a webhook, whose name stands in `to`. */
  readonly person: string | null;
  readonly to: string | null;
  readonly channel: string;
  /** As the message: alarm, again, over, answered, flood. */
  readonly kind: string;
  /** delivered, gone, refused, given-up, withdrawn, full. */
  readonly outcome: string;
  readonly cause: string | null;
}
