/**
 * The desk: keeps what the engine's effects say of occurrences and holds, and says what of it goes
 * on disk. Restart and replay give it the same effects and it comes to the same rows.
 */
import type { Disposition, HoldWhat } from '#rules/hold/hold.ts';
import type { Effect } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import type { HoldRow, LedgerBody, OccurrenceRow, OvenRunRow } from '../store/contract.ts';
import type {
  Occurrence,
  OccurrenceComment,
  OccurrenceStep,
  OccurrenceTold,
} from './occurrence.ts';

export interface KeptHold {
  readonly id: string;
  readonly what: HoldWhat;
  readonly item: string;
  readonly since: EpochMs;
  readonly by: string;
  readonly reason: string;
  readonly occurrence: string | null;
  readonly lifted: {
    readonly at: EpochMs;
    readonly by: string;
    readonly disposition: Disposition;
    readonly reason: string;
  } | null;
}

/** What one effect wants on disk. */
export interface Entry {
  readonly ledger: LedgerBody;
  readonly occurrences: readonly OccurrenceRow[];
  readonly holds: readonly HoldRow[];
  readonly ovenRuns?: readonly OvenRunRow[];
}

/** An oven run as kept: what opened it, and once it closed what it was. */
export type KeptRun = Omit<Extract<Effect, { kind: 'run' }>, 'kind' | 'judged' | 'action'>;

type TransitionEffect = Extract<Effect, { kind: 'transition' }>;

/** The ledger's record of an effect; the same effect gives the same record. */
export function ledgerBody(effect: Effect): LedgerBody {
  const { kind, ...rest } = effect;
  return { type: kind, ...rest };
}

export class Desk {
  /** By id; open ones, and the closed ones of late. */
  private readonly occurrences = new Map<string, Occurrence>();
  private readonly closedOfLate: string[] = [];
  private readonly holds = new Map<string, KeptHold>();

  /** Takes over what is on disk. */
  load(occurrences: readonly OccurrenceRow[], holds: readonly HoldRow[]): void {
    for (const row of occurrences) {
      this.occurrences.set(row.id, parseOccurrence(row));
      if (row.closed !== null) this.closedOfLate.push(row.id);
    }
    this.letGo();
    for (const row of holds) this.holds.set(row.id, JSON.parse(row.detail) as KeptHold);
  }

  take(effect: Effect): Entry {
    const ledger = ledgerBody(effect);
    switch (effect.kind) {
      case 'transition':
        return { ledger, occurrences: this.transition(effect), holds: [] };
      case 'judgeable': {
        const known = this.occurrences.get(effect.occurrence);
        if (known === undefined) return { ledger, occurrences: [], holds: [] };
        return {
          ledger,
          occurrences: [this.keep({ ...known, judgeable: effect.judgeable })],
          holds: [],
        };
      }
      case 'hold':
        return { ledger, occurrences: [], holds: [this.hold(effect)] };
      case 'run':
        return { ledger, occurrences: [], holds: [], ovenRuns: [runRow(effect)] };
      case 'mark':
      case 'extension':
      case 'refused':
        return { ledger, occurrences: [], holds: [] };
    }
  }

  /** A comment to an occurrence at hand, beside its steps; null where it is not at hand. */
  comment(id: string, comment: OccurrenceComment): OccurrenceRow | null {
    const known = this.occurrences.get(id);
    if (known === undefined) return null;
    const comments = [...(known.comments ?? []), comment].slice(-limits.occurrenceCommentsKept);
    return this.keep({ ...known, comments });
  }

  /** What somebody says of one at hand that is over; null where it is not at hand. */
  needed(id: string, needed: NonNullable<Occurrence['needed']>): OccurrenceRow | null {
    const known = this.occurrences.get(id);
    return known === undefined ? null : this.keep({ ...known, needed });
  }

  /** That somebody was told of one at hand; null where it is not at hand. */
  told(id: string, told: OccurrenceTold): OccurrenceRow | null {
    const known = this.occurrences.get(id);
    if (known === undefined) return null;
    return this.keep({
      ...known,
      told: [...(known.told ?? []), told].slice(-limits.occurrenceTellingsKept),
    });
  }

  /** Nobody follows it any more; null where it is not at hand. */
  close(id: string, at: EpochMs, reason: string): OccurrenceRow | null {
    const known = this.occurrences.get(id);
    if (known === undefined) return null;
    const [from, to, by] = [known.state, 'normal', null] as const;
    const step: OccurrenceStep = { judged: at, transition: 'removed', from, to, by, reason };
    return this.keep({ ...withStep(known, step), state: to, shelvedUntil: null, closed: at });
  }

  occurrence(id: string): Occurrence | null {
    return this.occurrences.get(id) ?? null;
  }

  open(): Occurrence[] {
    return [...this.occurrences.values()].filter(({ closed }) => closed === null);
  }

  /** Those that stand, and those closed of late. */
  atHand(): Occurrence[] {
    return [...this.occurrences.values()];
  }

  heldNow(): KeptHold[] {
    return [...this.holds.values()].filter(({ lifted }) => lifted === null);
  }

  keptHold(id: string): KeptHold | null {
    return this.holds.get(id) ?? null;
  }

  private transition(effect: TransitionEffect): OccurrenceRow[] {
    const id = effect.occurrence;
    if (id === null) return [];
    const rows: OccurrenceRow[] = [];
    const superseded =
      effect.supersedes === undefined ? undefined : this.occurrences.get(effect.supersedes);
    if (superseded !== undefined)
      rows.push(this.keep({ ...superseded, closed: effect.judged, supersededBy: id }));
    rows.push(this.keep(stepped(this.occurrences.get(id) ?? begun(effect, id), effect)));
    return rows;
  }

  private keep(occurrence: Occurrence): OccurrenceRow {
    this.occurrences.set(occurrence.id, occurrence);
    if (occurrence.closed !== null) this.closedOfLate.push(occurrence.id);
    this.letGo();
    const { id, rule, state, raised, closed } = occurrence;
    return { id, rule, state, raised, closed, detail: JSON.stringify(occurrence) };
  }

  /** The oldest closed ones beyond the bound; one that opened again stays. */
  private letGo(): void {
    const { closedOfLate, occurrences } = this;
    const over = Math.max(0, closedOfLate.length - limits.closedOccurrencesKept);
    for (const id of closedOfLate.splice(0, over))
      if (occurrences.get(id)?.closed != null && !closedOfLate.includes(id)) occurrences.delete(id);
  }

  private hold(effect: Extract<Effect, { kind: 'hold' }>): HoldRow {
    const known = this.holds.get(effect.hold);
    // Set again, it is one that stands on although judging began anew: as it was.
    const kept: KeptHold = known ?? {
      id: effect.hold,
      what: effect.what,
      item: effect.item,
      since: effect.judged,
      by: effect.by,
      reason: effect.reason,
      occurrence: effect.occurrence ?? null,
      lifted: null,
    };
    const lifted =
      effect.action === 'lifted' && effect.disposition !== undefined
        ? {
            at: effect.judged,
            by: effect.by,
            disposition: effect.disposition,
            reason: effect.reason,
          }
        : null;
    const now = { ...kept, lifted };
    if (lifted === null) this.holds.set(now.id, now);
    else this.holds.delete(now.id);
    return {
      id: now.id,
      what: now.what,
      item: now.item,
      since: now.since,
      lifted: lifted?.at ?? null,
      detail: JSON.stringify(now),
    };
  }
}

function runRow(effect: Extract<Effect, { kind: 'run' }>): OvenRunRow {
  const { kind: _kind, judged: _judged, action: _action, ...kept } = effect;
  const { run, station, opened, closed } = kept;
  return { id: run, station, opened, closed, detail: JSON.stringify(kept satisfies KeptRun) };
}

export const parseRun = (row: OvenRunRow): KeptRun => JSON.parse(row.detail) as KeptRun;

export const parseOccurrence = (row: OccurrenceRow): Occurrence =>
  JSON.parse(row.detail) as Occurrence;

const begun = (effect: TransitionEffect, id: string): Occurrence => ({
  id,
  rule: effect.rule,
  signal: effect.signal,
  state: effect.to,
  severity: effect.severity,
  priority: effect.priority,
  raised: effect.judged,
  returned: null,
  closed: null,
  acknowledged: null,
  shelvedUntil: null,
  judgeable: true,
  evidence: effect.evidence,
  evidenceAt: effect.judged,
  supersededBy: null,
  steps: [],
});

/** The first, the first answer and the newest are always kept. */
function withStep(known: Occurrence, step: OccurrenceStep): Occurrence {
  const steps = [...known.steps, step];
  if (steps.length > limits.occurrenceStepsKept) {
    const answer = steps.findIndex(({ transition }) => transition === 'acknowledged');
    steps.splice(answer === 1 ? 2 : 1, 1);
  }
  return { ...known, steps };
}

function stepped(known: Occurrence, effect: TransitionEffect): Occurrence {
  const { transition, judged, to } = effect;
  const step: OccurrenceStep = {
    judged,
    transition,
    from: effect.from,
    to,
    by: effect.by ?? null,
    reason: effect.reason ?? null,
    ...(effect.again === undefined ? {} : { again: effect.again }),
  };
  const spoke = transition === 'raised' || transition === 'realarmed';
  return {
    ...withStep(known, step),
    state: to,
    severity: effect.severity === 0 ? known.severity : effect.severity,
    priority: spoke ? effect.priority : known.priority,
    evidence: spoke ? effect.evidence : known.evidence,
    evidenceAt: spoke ? judged : known.evidenceAt,
    returned: transition === 'returned' ? judged : spoke ? null : known.returned,
    acknowledged:
      transition === 'acknowledged'
        ? { by: effect.by ?? 'unknown', at: judged }
        : spoke
          ? null
          : known.acknowledged,
    shelvedUntil: to === 'shelved' ? (effect.untilMs ?? known.shelvedUntil) : null,
    ...(to === 'shelved' ? { shelvedOnce: effect.oneShot === true } : {}),
    ...(effect.nuisance === undefined ? {} : { nuisance: effect.nuisance }),
    closed: effect.closes === true ? judged : null,
  };
}
