/**
 * Suppressed by design: while the plant is so that an alarm means nothing, nobody is told of it.
 *
 * What cannot be read suppresses nothing. A stretch from one mark to another has an end even where
 * nobody writes the second. The alarm goes on to be judged, recorded and held by beneath.
 */
import type { AlarmEvent } from '../alarm/lifecycle.ts';
import type { Plan, PlanWhile } from '../plan/plan.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { Alarm } from './alarm.ts';
import type { LastMark } from './marks.ts';
import type { Signals } from './signals.ts';

interface SuppressionHost {
  readonly now: EpochMs;
  readonly signals: Signals;
  readonly marks: { readonly last: ReadonlyMap<string, LastMark> };
  readonly alarms: {
    readonly list: readonly Alarm[];
    happen(rule: number, event: AlarmEvent, at: EpochMs, asked?: { reason?: string }): void;
    setRelease(rule: number, at: EpochMs | null): void;
  };
}

interface Holds {
  readonly because: string;
  /** null: for as long as it holds. */
  readonly untilMs: EpochMs | null;
}

export class Suppression {
  /** 1 where a signal suppresses rules. */
  readonly listens: Uint8Array;
  /** Rules by signal that suppresses them. */
  private readonly of: readonly (readonly number[])[];
  private readonly plan: Plan;
  private readonly host: SuppressionHost;
  private readonly byMark = new Map<string, number[]>();
  private readonly all: readonly number[];

  constructor(plan: Plan, host: SuppressionHost) {
    this.plan = plan;
    this.host = host;
    const of = plan.signals.map((): number[] => []);
    for (const [rule, { suppress }] of plan.rules.entries())
      for (const each of suppress?.whiles ?? [])
        if (each.from === undefined) of[each.signal]!.push(rule);
        else
          for (const mark of [each.from, each.until])
            this.byMark.set(mark, [...(this.byMark.get(mark) ?? []), rule]);
    this.of = of;
    this.listens = Uint8Array.from(of, (rules) => Number(rules.length > 0));
    this.all = [...plan.rules.keys()];
  }

  /** A reading came, or can no longer be used. */
  signal(signal: number): void {
    for (const rule of this.of[signal]!) this.look(rule);
  }

  mark(mark: number): void {
    for (const rule of this.byMark.get(this.plan.marks![mark]!.id) ?? []) this.look(rule);
  }

  /** After a restart, another site, or a return to service. */
  lookAll(): void {
    for (const rule of this.all) this.look(rule);
  }

  /** Its end came. */
  due(rule: number): void {
    this.look(rule, 0);
  }

  private look(rule: number, offDelayMs = this.plan.rules[rule]!.suppress?.offDelayMs ?? 0): void {
    const { host } = this;
    const alarm = host.alarms.list[rule]!;
    const held = this.held(rule);
    if (held !== null) {
      if (alarm.state !== 'suppressed-by-design')
        host.alarms.happen(rule, 'suppress', host.now, { reason: held.because });
      if (alarm.state === 'suppressed-by-design' && alarm.releaseAt !== held.untilMs)
        host.alarms.setRelease(rule, held.untilMs);
      return;
    }
    if (alarm.state !== 'suppressed-by-design') return;
    const releaseAt = Math.min(alarm.releaseAt ?? Number.POSITIVE_INFINITY, host.now + offDelayMs);
    if (releaseAt <= host.now) host.alarms.happen(rule, 'release', host.now);
    else if (releaseAt !== alarm.releaseAt) host.alarms.setRelease(rule, releaseAt);
  }

  /** The one that holds longest; null where none does. */
  private held(rule: number): Holds | null {
    let longest: Holds | null = null;
    for (const each of this.plan.rules[rule]!.suppress?.whiles ?? []) {
      const untilMs = this.untilOf(each);
      if (untilMs === undefined) continue;
      if (longest === null || later(untilMs, longest.untilMs))
        longest = { because: each.because, untilMs };
    }
    return longest;
  }

  /** Until when it holds, null for no end in sight; undefined where it does not hold. */
  private untilOf(each: PlanWhile): EpochMs | null | undefined {
    if (each.from === undefined) {
      const { signals } = this.host;
      const value = signals.value[each.signal]!;
      const holds = signals.usable(each.signal) && value >= each.low && value <= each.high;
      return holds ? null : undefined;
    }
    const { last } = this.host.marks;
    const from = last.get(each.from);
    const until = last.get(each.until);
    if (from === undefined || (until !== undefined && until.at >= from.at)) return undefined;
    const endMs = from.at + each.atMostMs;
    return endMs > this.host.now ? endMs : undefined;
  }
}

const later = (a: EpochMs | null, b: EpochMs | null): boolean =>
  b !== null && (a === null || a > b);
