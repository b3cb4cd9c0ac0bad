/** Holds on what people handle: set by a rule or by hand, lifted by quality. */

import type { Hold, Holds } from '../hold/hold.ts';
import { itemFault } from '../hold/item.ts';
import type { Command, Effect } from '../input.ts';
import type { Evidence } from '../kinds/kind.ts';
import type { PlanHold, PlanRule } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { LiveRule } from './live-rule.ts';

interface HoldingHost {
  readonly now: EpochMs;
  rule(index: number): PlanRule;
  /** What is held where the rule itself knows none; `sinceMs`: when that began which it tells. */
  heldItem(hold: PlanHold, sinceMs: EpochMs | null): string;
  emit(effect: Effect): void;
}

export class Holding {
  readonly holds: Holds;
  /** Told when a hold was set or lifted. */
  changed: () => void = () => undefined;
  private readonly host: HoldingHost;
  private readonly occurrenceOf: (rule: number) => string | null;

  constructor(host: HoldingHost, holds: Holds, occurrenceOf: (rule: number) => string | null) {
    this.host = host;
    this.holds = holds;
    this.occurrenceOf = occurrenceOf;
  }

  /** Where items passed a rule's limit: a hold on each; '' is what the rule holds by itself. */
  passed({ index, kind, memory }: LiveRule): void {
    if (kind.passed === undefined) return;
    for (const item of kind.passed(memory)) this.byRule(index, item === '' ? {} : { item });
  }

  byRule(index: number, about: Pick<Evidence, 'item' | 'sinceMs'>): void {
    const rule = this.host.rule(index);
    if (rule.hold === null) return;
    const named = rule.hold.named !== undefined;
    const hold = this.holds.set({
      what: rule.hold.what,
      // What the rule is about may be no rack, as the container after which parts are doubted.
      item:
        (named ? undefined : about.item) ?? this.host.heldItem(rule.hold, about.sinceMs ?? null),
      since: this.host.now,
      by: `rule:${rule.id}`,
      reason: rule.id,
      occurrence: this.occurrenceOf(index),
    });
    if (hold !== null) this.emitSet(hold);
  }

  /** Returns why it is refused; null where it is not. */
  set(command: Extract<Command, { verb: 'hold' }>): string | null {
    const { what, item, by, reason, carried } = command;
    if (carried !== undefined) {
      const { count, ...known } = carried;
      this.emitSet(this.holds.carry({ what, item, by, reason, ...known }, count));
      return null;
    }
    const fault = itemFault(item);
    if (fault !== null) return fault;
    const hold = this.holds.set({
      what,
      item,
      since: this.host.now,
      by,
      reason,
      occurrence: null,
    });
    if (hold === null) return `${what} ${item} is on hold already`;
    this.emitSet(hold);
    return null;
  }

  /** Returns why it is refused; null where it is not. */
  lift(command: Extract<Command, { verb: 'lift' }>): string | null {
    const hold = this.holds.lift(command.hold);
    if (hold === null) return `there is no hold ${command.hold} that stands`;
    this.host.emit({
      kind: 'hold',
      judged: this.host.now,
      hold: hold.id,
      what: hold.what,
      item: hold.item,
      action: 'lifted',
      by: command.by,
      reason: command.reason,
      disposition: command.disposition,
    });
    this.changed();
    return null;
  }

  private emitSet(hold: Hold): void {
    this.host.emit({
      kind: 'hold',
      judged: this.host.now,
      hold: hold.id,
      what: hold.what,
      item: hold.item,
      action: 'set',
      by: hold.by,
      reason: hold.reason,
      ...(hold.occurrence === null ? {} : { occurrence: hold.occurrence }),
    });
    this.changed();
  }
}
