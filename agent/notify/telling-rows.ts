/** How the outbox keeps what the plan of telling knows: a row for each chase, and one for the rest. */
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Chase } from '#rules/telling/chase.ts';
import type { MailingKind } from '#rules/telling/mailings.ts';
import type { PlanState } from '#rules/telling/plan.ts';
import type { OutboxRow } from '../store/contract.ts';
import type { Target } from './contract.ts';

/** When each mail that comes by the clock was due last, of those that were seen to; `by`: how it was written. */
export type Mailed = Partial<
  Readonly<Record<MailingKind, { readonly dueMs: EpochMs; readonly by: string }>>
>;

/** A chase as it is written down. */
export interface Kept {
  readonly chase: Chase;
  /** All who were told, or are about to be. */
  readonly targets: readonly Target[];
  /** Somebody of the newest step has it on a phone or in a mailbox. */
  readonly reached: boolean;
}

const chaseChannel = 'chase';
/** No occurrence is called so: those hold an at sign. */
const planOccurrence = 'plan';
const mailedOccurrence = 'mailed';

const bare = { step: 0, channel: chaseChannel, tries: 0, cause: null } as const;

export const chaseRow = (kept: Kept): OutboxRow => ({
  ...bare,
  occurrence: kept.chase.occurrence,
  due: kept.chase.dueMs ?? kept.chase.raisedMs,
  done: null,
  outcome: null,
  detail: JSON.stringify(kept),
});

export const closedRow = (occurrence: string, at: EpochMs): OutboxRow => ({
  ...bare,
  occurrence,
  due: at,
  done: at,
  outcome: 'closed',
  detail: '{}',
});

export const planRow = (state: PlanState): OutboxRow => ({
  ...bare,
  occurrence: planOccurrence,
  due: state.digestDueMs ?? 0,
  done: null,
  outcome: null,
  detail: JSON.stringify(state),
});

export const mailedRow = (mailed: Mailed, at: EpochMs): OutboxRow => ({
  ...bare,
  occurrence: mailedOccurrence,
  due: at,
  done: null,
  outcome: null,
  detail: JSON.stringify(mailed),
});

/** Waiting rows told apart. */
export function readRows(rows: readonly OutboxRow[]): {
  readonly kept: readonly Kept[];
  readonly state: PlanState | null;
  readonly mailed: Mailed;
  readonly messages: readonly OutboxRow[];
} {
  const own = rows.filter(({ channel }) => channel === chaseChannel);
  const state = own.find(({ occurrence }) => occurrence === planOccurrence);
  const mailed = own.find(({ occurrence }) => occurrence === mailedOccurrence);
  return {
    kept: own
      .filter((row) => row !== state && row !== mailed)
      .map(({ detail }) => JSON.parse(detail) as Kept),
    mailed: mailed === undefined ? {} : (JSON.parse(mailed.detail) as Mailed),
    state: state === undefined ? null : (JSON.parse(state.detail) as PlanState),
    messages: rows.filter(({ channel }) => channel !== chaseChannel),
  };
}
