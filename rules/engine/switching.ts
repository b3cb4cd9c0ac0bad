/**
 * Files of the site's own rules, switched off and on: what is off is asked nothing, what it told
 * stays, and on again it begins anew.
 *
 * Always true: a file is switched off between two things that are judged, never within one; so a
 * replay that knows after which one does the same.
 */
import type { ExtensionInput } from '../input.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Deadlines } from './deadlines.ts';
import type { LiveRule } from './live-rule.ts';
import type { SwitchedOff } from './state.ts';

/** Who finds a file to be unfit while it is live; a replay has none. */
export interface ExtensionWatch {
  /** What is to be switched off, once what is being judged is done; null mostly. */
  readonly wanted: { readonly extension: string; readonly why: string } | null;
  /** It was switched off: this belongs into the log. */
  done(input: ExtensionInput): void;
}

/** What a plan's rules and derived signals are to their switch. */
export interface Switched {
  readonly now: EpochMs;
  readonly rules: readonly LiveRule[];
  readonly deadlines: Deadlines;
  readonly off: Map<string, SwitchedOff>;
  /** Its derived signals are asked nothing, or begin anew; what follows from them is told. */
  switchDerived(extension: string, off: boolean): void;
  tellJudgeable(rule: LiveRule, judgeable: boolean): void;
  /** Its deadline, its gates and what is known already. */
  takeUp(rule: LiveRule): void;
}

export function switchOff(judgement: Switched, extension: string, why: string): void {
  const { now, off } = judgement;
  off.set(extension, { why, sinceMs: now });
  for (const rule of judgement.rules) {
    if (rule.kind.extension !== extension) continue;
    const judged = rule.frozenAt === null;
    rule.switchOff(now);
    judgement.deadlines.set(rule.index, null);
    if (judged) judgement.tellJudgeable(rule, false);
  }
  judgement.switchDerived(extension, true);
}

export function switchOn(judgement: Switched, extension: string): void {
  judgement.off.delete(extension);
  judgement.switchDerived(extension, false);
  for (const rule of judgement.rules) {
    if (rule.kind.extension !== extension) continue;
    rule.switchOn(judgement.now);
    judgement.tellJudgeable(rule, true);
    judgement.takeUp(rule);
  }
}

/** Switches that are said already and whose place has not come. */
export class Cuts {
  list: ExtensionInput[] = [];
  /** The first moment of them; Infinity without one. */
  at: EpochMs = Number.POSITIVE_INFINITY;

  add(input: ExtensionInput): void {
    this.list.push(input);
    this.at = Math.min(this.at, input.at);
  }

  /** Those whose place has come at `now`, after `turn` things that were judged there. */
  take(now: EpochMs, turn: number): readonly ExtensionInput[] {
    const due = this.list.filter(
      ({ at, turn: after }) => at < now || (at === now && after <= turn),
    );
    this.list = this.list.filter((cut) => !due.includes(cut));
    this.at = Math.min(Number.POSITIVE_INFINITY, ...this.list.map(({ at }) => at));
    return due;
  }
}
