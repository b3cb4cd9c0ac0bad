/**
 * One alarm on its way to somebody who answers, and what the plan orders on that way: plain data.
 */
import type { Nuisance } from '../alarm/nuisance.ts';
import type { Priority } from '../alarm/priority.ts';
import type { PersonId } from '../input.ts';
import type { EpochMs } from '../signal/sample.ts';

/** What the plan needs to know of an alarm. */
export interface AlarmToTell {
  readonly occurrence: string;
  readonly rule: string;
  /** `line/station`. */
  readonly station: string;
  readonly hazard: string | null;
  readonly priority: Priority;
  readonly highlyManaged: boolean;
  /** Time there is to act; null where nobody said. */
  readonly respondMs: number | null;
}

/** What the next step waits for. */
export type Waiting =
  /** Nothing: it is told at the next look. */
  | 'turn'
  /** For the end of the quiet hours. */
  | 'quiet'
  /** For somebody to acknowledge. */
  | 'answer'
  /** It is told with others, in the message of a flood. */
  | 'group'
  /** Somebody has it, it is over, it was put aside, or it comes and goes too fast to act on. */
  | 'nothing';

export interface Chase extends AlarmToTell {
  readonly raisedMs: EpochMs;
  readonly waits: Waiting;
  /** When the next step is due; null where nothing is. */
  readonly dueMs: EpochMs | null;
  /** Messages so far; the next has this number. */
  readonly step: number;
  /** Rungs of the ladder told so far: the next is the one of this number. */
  readonly rung: number;
  /** The flood it is told with; null where it is told alone. */
  readonly group: string | null;
  /** Of a flood: all that ever joined, and those nobody has answered yet. */
  readonly members?: readonly string[];
  readonly unanswered?: readonly string[];
  /** Of a flood: when those who were told hear, without a sound, of what joined since. */
  readonly newsMs?: EpochMs | null;
}

export type Ending =
  /** The condition is over, or the plant's state makes it mean nothing. */
  | 'over'
  /** Somebody has it or put it aside. */
  | 'answered';

export type Order =
  | {
      readonly do: 'tell';
      readonly occurrence: string;
      /** As it is told. */
      readonly chase: Chase;
      readonly step: number;
      /** The rungs of the ladder it goes to, both included. */
      readonly rungs: readonly [from: number, to: number];
      readonly as: 'alarm' | 'again' | 'flood';
      readonly silent: boolean;
      readonly at: EpochMs;
    }
  /** To all who were told: makes no sound. */
  | {
      readonly do: 'end';
      readonly occurrence: string;
      /** As it was. */
      readonly chase: Chase;
      readonly step: number;
      readonly as: Ending;
      readonly at: EpochMs;
      readonly by: PersonId | null;
    }
  /** To the engineers. */
  | { readonly do: 'digest'; readonly at: EpochMs; readonly notes: readonly Note[] };

/** An alarm that comes and goes: for the digest. */
export interface Note {
  readonly rule: string;
  readonly why: Nuisance | 'quiet';
  readonly count: number;
  readonly lastMs: EpochMs;
  /** It is highly managed: somebody was called each time. */
  readonly told?: boolean;
}
