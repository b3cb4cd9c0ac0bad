/**
 * What people say happened, to the rules that judge it; and the last word of each mark.
 *
 * A mark is taken by every rule that judges it, or by none: the first that refuses it says why.
 */
import { itemFault, sameItem } from '../hold/item.ts';
import type { Effect, MarkCommand } from '../input.ts';
import type { Marking, Severity, Timer } from '../kinds/kind.ts';
import type { Plan, PlanMark } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import { aheadFix, aheadWords, isSecondsForMs } from '../signal/wrong-time.ts';
import type { LiveRule } from './live-rule.ts';

/** A mark may lie so far ahead of the engine's clock: two clocks never agree. It counts as said now. */
export const markAheadMsMax = 60_000;

/** The last word of a mark, by whom, and of which item. */
export interface LastMark {
  readonly at: EpochMs;
  readonly item: string | null;
  readonly by: string;
}

interface MarkHost {
  readonly now: EpochMs;
  readonly rules: readonly LiveRule[];
  settle(rule: LiveRule, severity: Severity, at: EpochMs): void;
  /** The mark, by its place in the plan, says what happened at `at`. */
  start(mark: number, at: EpochMs, item: string | null): void;
  emit(effect: Effect): void;
}

interface Use {
  readonly rule: LiveRule;
  readonly input: number;
}

export class Marks {
  /** By id. */
  readonly last: Map<string, LastMark>;
  private readonly host: MarkHost;
  private readonly known: ReadonlyMap<string, PlanMark>;
  private readonly place: ReadonlyMap<string, number>;
  private readonly uses: ReadonlyMap<string, readonly Use[]>;
  private readonly marking: Marking = { at: 0, judged: 0, item: null, input: 0 };
  private readonly scratch: Timer = { at: null };

  constructor(plan: Plan, saved: Readonly<Record<string, LastMark>>, host: MarkHost) {
    const { marks = [] } = plan;
    this.host = host;
    this.known = new Map(marks.map((mark) => [mark.id, mark]));
    this.place = new Map(marks.map(({ id }, i) => [id, i]));
    this.last = new Map(Object.entries(saved).filter(([id]) => this.known.has(id)));
    this.uses = new Map(
      marks.map(({ id }, mark): [string, Use[]] => [
        id,
        host.rules.flatMap((rule) => {
          const input = rule.plan.marks?.indexOf(mark) ?? -1;
          return input < 0 ? [] : [{ rule, input }];
        }),
      ]),
    );
  }

  take(command: MarkCommand): void {
    const why = this.taken(command);
    if (why !== null) this.host.emit({ kind: 'refused', judged: this.host.now, command, why });
  }

  /** Returns why it is refused; null where it is taken. */
  private taken(command: MarkCommand): string | null {
    const { station, mark, by, note } = command;
    const { now } = this.host;
    const id = `${station}/${mark}`;
    const at = Math.min(command.at ?? now, now);
    const item = command.item ?? null;
    const why = this.refusal(id, item, command.at ?? now);
    if (why !== null) return why;
    const uses = this.uses.get(id)!;
    for (const { rule, input } of uses) {
      const refused = rule.kind.refuses?.(rule.settings, rule.memory, this.lay(at, item, input));
      if (refused != null) return `${rule.plan.id}: ${refused}`;
    }
    this.last.set(id, { at, item, by });
    this.host.emit({
      kind: 'mark',
      judged: now,
      station,
      mark,
      item,
      at,
      by,
      ...(note === undefined ? {} : { note }),
    });
    for (const { rule, input } of uses) this.judge(rule, this.lay(at, item, input));
    this.host.start(this.place.get(id)!, at, item);
    return null;
  }

  /**
   * The item last named by the first mark, unless the second said before `sinceMs` that it left;
   * null where nobody named one.
   */
  present([arrived = '', left = '']: readonly string[], sinceMs: EpochMs | null): string | null {
    const came = this.last.get(arrived);
    const went = this.last.get(left);
    if (came === undefined) return null;
    const gone =
      went !== undefined &&
      sameItem(went.item, came.item) &&
      went.at >= came.at &&
      went.at < (sinceMs ?? Number.POSITIVE_INFINITY);
    return gone ? null : came.item;
  }

  save(): Record<string, LastMark> {
    return Object.fromEntries(this.last);
  }

  private refusal(id: string, item: string | null, at: EpochMs): string | null {
    const known = this.known.get(id);
    if (known === undefined) return `there is no mark ${id}`;
    if (known.what !== null && (item === null || item.trim() === ''))
      return `${id} happens to a ${known.what}; say which`;
    const fault = item === null ? null : itemFault(item);
    if (fault !== null) return fault;
    if (known.what === null && item !== null) return `${id} is of the place; it takes no item`;
    const aheadMs = at - this.host.now;
    if (aheadMs > markAheadMsMax)
      return `${aheadWords(at, this.host.now)}; ${aheadFix(at, this.host.now)}`;
    if (isSecondsForMs(at, this.host.now))
      return 'it lies in January 1970: seconds were taken for milliseconds; send milliseconds since 1970, or say time_format: epoch_s of what a device sends';
    return at < 0 ? 'it lies before 1970; write when it happened' : null;
  }

  /** A rule that is unjudged learns it all the same, and answers once it is judged again. */
  private judge(rule: LiveRule, marking: Marking): void {
    const { kind, settings, memory, timer } = rule;
    if (rule.judged) {
      this.host.settle(rule, kind.mark!(settings, memory, marking, timer), marking.judged);
      return;
    }
    const { scratch } = this;
    scratch.at = null;
    kind.mark!(settings, memory, marking, scratch);
    rule.remainingMs = scratch.at === null ? null : scratch.at - marking.judged;
  }

  private lay(at: EpochMs, item: string | null, input: number): Marking {
    return Object.assign(this.marking, { at, judged: this.host.now, item, input });
  }
}
