/** What the web part needs to know of telling. agent/compose.ts hands it in. */
import type { Priority } from '#rules/alarm/priority.ts';
import type { PersonId } from '#rules/input.ts';
import type { TellingView, WaitingView } from './telling-contract.ts';

/** Of whom something would be told. */
export interface TellingSubject {
  /** `line/station`; empty for none in particular. */
  readonly station: string;
  readonly hazard: string | null;
  readonly priority: Priority;
}

export interface TellingPorts {
  telling(subject: TellingSubject): TellingView;
  waitingMessages(): WaitingView;
  /** A test alarm to that person; gives the ways it goes. */
  testTelling(person: PersonId): readonly ('push' | 'email' | 'webhook')[];
}
