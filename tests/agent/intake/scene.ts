/** A small site for intake's tests: bindings by what differs, and what came out, readable. */
import { createIntake, type Intake, type IntakeOptions } from '#agent/intake/intake.ts';
import { limits } from '#agent/limits.ts';
import type { Binding } from '#rules/plan/binding.ts';
import { wildcardLevels } from '#rules/plan/topic.ts';
import { unitOf } from '#rules/quantity/unit.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import type { PayloadWritten } from '#rules/site/signal-schema.ts';

export const startMs: EpochMs = Date.UTC(2026, 10, 25, 9, 0, 0);

export const plain: PayloadWritten = { kind: 'plain' };
export const valueOnly: PayloadWritten = { kind: 'json', value: '/v' };
export const valueAndTime: PayloadWritten = { kind: 'json', value: '/v', time: '/t' };

export interface BindingFacts extends Partial<Omit<Binding, 'unit'>> {
  readonly unitCode?: string;
}

/** A binding of a temperature in Cel, 0.1 of resolution, unless told otherwise. */
export function binding(facts: BindingFacts = {}): Binding {
  const { unitCode = 'Cel', ...rest } = facts;
  const unit = unitOf(unitCode);
  if (unit === null) throw new Error(`no unit ${unitCode}`);
  const filter = facts.filter ?? 'mounts-2/store-1/air';
  const hasOwnTime = facts.payload !== undefined && 'time' in facts.payload;
  return {
    signal: filter.includes('+') ? null : 0,
    id: 'mounts-2/store-1/air',
    filter,
    levels: wildcardLevels(filter),
    names: wildcardLevels(filter).map((level) => `level-${level}`),
    instances: new Map(),
    payload: plain,
    unit,
    slope: 1,
    intercept: 0,
    low: Number.NEGATIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
    maxRatePerS: null,
    digits: 1,
    holdMs: hasOwnTime ? limits.holdMsDefault : 0,
    latenessMs: limits.latenessMsDefault,
    hasOwnTime,
    ...rest,
  };
}

export interface Taken {
  readonly signal: number;
  readonly at: EpochMs;
  readonly judged: EpochMs;
  readonly value: number;
  readonly quality: number;
  readonly flags: number;
}

export function rowsOf(batch: SampleBatch): Taken[] {
  return Array.from({ length: batch.count }, (_, i) => ({
    signal: batch.signal[i]!,
    at: batch.at[i]!,
    judged: batch.judged[i]!,
    value: batch.value[i]!,
    quality: batch.quality[i]!,
    flags: batch.flags[i]!,
  }));
}

const utf8 = new TextEncoder();

export interface Scene {
  readonly intake: Intake;
  readonly out: SampleBatch;
  /** Sends one message; what it added. By default it arrives at `startMs`, on the grid. */
  send(
    payload: string | Uint8Array | object,
    when?: { nowMs?: EpochMs; beatMs?: EpochMs; retained?: boolean; topic?: string },
  ): Taken[];
}

export function scene(bindings: readonly Binding[], options: Partial<IntakeOptions> = {}): Scene {
  const intake = createIntake({
    bindings,
    discover: () => null,
    limits,
    clock: 'wall',
    ...options,
  });
  const out = new SampleBatch(4);
  return {
    intake,
    out,
    send(payload, when = {}) {
      const before = out.count;
      const nowMs = when.nowMs ?? startMs;
      const bytes =
        payload instanceof Uint8Array
          ? payload
          : utf8.encode(typeof payload === 'string' ? payload : JSON.stringify(payload));
      intake.take(
        when.topic ?? bindings[0]!.filter,
        bytes,
        when.retained ?? false,
        when.beatMs ?? Math.ceil(nowMs / limits.beatMs) * limits.beatMs,
        nowMs,
        out,
      );
      return rowsOf(out).slice(before);
    },
  };
}
