/** One rule of one kind, lived through the engine: readings, marks, downtime, restarts, a new clock. */

import { expect } from 'vitest';
import type { EngineState } from '#rules/engine/state.ts';
import type { Effect, Input } from '#rules/input.ts';
import type { MarkOf } from '#rules/kinds/kind.ts';
import type { Plan, PlanSignal } from '#rules/plan/plan.ts';
import { quality } from '#rules/signal/quality.ts';
import { Drive, type Sample } from '../engine/drive.ts';
import { smallPlan } from '../engine/small-plan.ts';

/** What happens `afterMs` after what was before it. */
export type Step = { readonly afterMs: number } & (
  | { readonly input: number; readonly value: number }
  | { readonly bad: number }
  | { readonly downMs: number }
  | { readonly mark: number; readonly item: string }
  /** Its item is put on hold, or its oldest hold lifted. */
  | { readonly hold: 'set' | 'lift'; readonly item: string }
);

export interface KindPlan {
  readonly settings: Readonly<Record<string, unknown>>;
  /** What it judges, in order. */
  readonly signals: readonly Partial<PlanSignal>[];
  readonly marks?: readonly MarkOf[];
  /** Judged only while the gate, the input behind the last, is at 1 or above. */
  readonly gated?: true;
}

/** Far from the powers of two, so that times with a fraction round alike however the clock is set. */
export const startMs = 1_700_000_000_000;

export function planOf(kind: string, of: KindPlan): Plan {
  const ids = of.signals.map((_, i) => `s${i}`);
  const gate = { on: `s${ids.length}`, low: 1 };
  const marks = (of.marks ?? []).map((what, i) => [`l/s/m${i}`, what] as const);
  return smallPlan({
    signals: { ...Object.fromEntries(ids.map((id, i) => [id, of.signals[i]!])), [gate.on]: {} },
    marks: Object.fromEntries(marks),
    rules: {
      'l/s/r': {
        kind,
        on: ids,
        by: marks.map(([id]) => id),
        settings: of.settings,
        ...(of.gated === true ? { gate } : {}),
      },
    },
  });
}

export interface Told {
  readonly transition: string;
  /** Milliseconds since the start, by the clock of that moment. */
  readonly afterMs: number;
  readonly severity: number;
  readonly evidence: Readonly<Record<string, unknown>>;
}

/** A number this large is a moment, not a length of time. */
const instantMs = 1e11;

const toldOf = (effects: readonly Effect[], startedMs: number): Told[] =>
  effects.flatMap((effect) => {
    if (effect.kind !== 'transition') return [];
    const { transition, judged, severity, evidence } = effect;
    const moved = Object.entries(evidence).map(([key, value]): [string, unknown] => [
      key,
      typeof value === 'number' && value > instantMs ? value - startedMs : value,
    ]);
    return [
      { transition, afterMs: judged - startedMs, severity, evidence: Object.fromEntries(moved) },
    ];
  });

export interface LifeOptions {
  readonly startedMs?: number;
  /** Steps before which the agent is restarted from its snapshot. */
  readonly restarts?: ReadonlySet<number>;
  /** How soon after a step the engine is looked at once more; none where it is left out. */
  readonly lookMs?: number;
  /** Before this step the clock is set by so much. */
  readonly reset?: { readonly before: number; readonly deltaMs: number };
  /** How long it goes on after the last step. */
  readonly endMs: number;
}

export class KindLife {
  readonly told: Told[] = [];
  readonly record: (Sample | Input)[] = [];
  drive: Drive;
  private clock: number;
  private startedMs: number;

  constructor(plan: Plan, startedMs = startMs) {
    this.startedMs = startedMs;
    this.clock = startedMs;
    this.drive = new Drive(plan, startedMs);
  }

  live(steps: readonly Step[], options: LifeOptions): this {
    for (const [i, step] of steps.entries()) {
      if (options.restarts?.has(i) === true) this.restart();
      if (options.reset?.before === i) this.setClock(options.reset.deltaMs);
      this.clock += step.afterMs;
      this.take(step);
      if (options.lookMs !== undefined) this.drive.advance(this.drive.engine.now + options.lookMs);
      this.clock = Math.max(this.clock, this.drive.engine.now);
    }
    this.drive.advance(this.clock + options.endMs);
    this.collect();
    return this;
  }

  /** Goes on from a snapshot. */
  from(saved: EngineState): this {
    this.drive.restored(saved);
    this.clock = saved.now;
    return this;
  }

  /** Whatever the memory holds is plain data, and stands in a snapshot whole. */
  private restart(): void {
    const { rules } = this.drive.engine.save();
    expect(JSON.parse(JSON.stringify(rules))).toStrictEqual(rules);
    const before = JSON.stringify(this.drive.engine.save());
    this.collect();
    this.drive = Drive.resume(this.drive);
    expect(JSON.stringify(this.drive.engine.save())).toBe(before);
  }

  private setClock(deltaMs: number): void {
    const judged = this.drive.engine.now + 1;
    this.enter({ kind: 'rebase', judged, deltaMs });
    this.drive.advance(judged);
    this.collect();
    this.startedMs += deltaMs;
    this.clock = this.drive.engine.now;
  }

  private take(step: Step): void {
    const at = this.clock;
    if ('downMs' in step) {
      const { now } = this.drive.engine;
      const toMs = Math.max(at, now + 1) + step.downMs;
      this.enter({ kind: 'gap', judged: now + 1, fromMs: now, toMs });
      this.drive.advance(toMs);
      this.clock = toMs;
    } else if ('mark' in step) {
      const mark = `m${step.mark}`;
      const by = 'p1';
      this.enter({
        ...{ kind: 'command', verb: 'mark', judged: at, station: 'l/s', mark, by },
        item: step.item,
      } as Input);
      this.drive.advance(at);
    } else if ('hold' in step) this.takeHold(step.hold, step.item, at);
    else {
      const sample: Sample =
        'bad' in step
          ? { signal: `s${step.bad}`, at, quality: quality.sensorBad }
          : { signal: `s${step.input}`, at, value: step.value };
      this.record.push(sample);
      this.drive.offer(sample).advance(at);
    }
  }

  private takeHold(verb: 'set' | 'lift', item: string, at: number): void {
    const about = { kind: 'command', judged: at, by: 'p1', reason: 'r' } as const;
    const { holds } = this.drive.engine.present.alarms;
    const hold = holds.list().find((each) => each.item === item)?.id ?? 'hold-0';
    this.enter(
      verb === 'set'
        ? { ...about, verb: 'hold', what: 'rack', item }
        : { ...about, verb: 'lift', hold, disposition: 'released' },
    );
    this.drive.advance(at);
  }

  private enter(input: Input): void {
    this.record.push(input);
    this.drive.input(input);
  }

  private collect(): void {
    this.told.push(...toldOf(this.drive.effects, this.startedMs));
    this.drive.effects.length = 0;
  }
}

/** The record fed as a replay feeds it: each sample as it passes, no look in between. */
export function fedAgain(plan: Plan, record: readonly (Sample | Input)[], endMs: number): Told[] {
  const drive = new Drive(plan, startMs);
  for (const each of record) {
    if ('signal' in each) drive.feed(each);
    else drive.input(each).advance(each.kind === 'gap' ? each.toMs : each.judged);
  }
  drive.advance(endMs);
  return toldOf(drive.effects, startMs);
}
