/**
 * Recorded data through the engine: the same rules, far faster than time, the same alarms.
 *
 * A data folder is judged as it was, under the site revisions it names, where its last one is
 * the site that is asked for; else wholly under the site that is asked for. A CSV file is judged
 * as the live agent does by the samples' own clock.
 */
import { Engine } from '#rules/engine.ts';
import type { Effect } from '#rules/input.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { isBad, type QualityCode } from '#rules/signal/quality.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import type { BadRowsSeen } from './bad-rows.ts';
import { type FedItem, feedItem } from './feed.ts';

export interface ReplayEnd {
  /** Of a file without those that are not usable for a reason that is not the sensor's own. */
  readonly samples: number;
  readonly fromMs: EpochMs | null;
  readonly toMs: EpochMs | null;
  /** Rows that stood later in the file than their signal's hold allows: live might have judged otherwise. */
  readonly late: number;
  /** Of a file: rows that gave no usable reading. */
  readonly badRows?: BadRowsSeen;
}

export interface ReplayPorts {
  /** The plan to begin with, and of every revision the record names. */
  readonly plan: Plan;
  readonly planOf: (revision: string) => Plan;
  readonly emit: (effect: Effect) => void;
  /** How far it is, after each item. */
  readonly progress?: (atMs: EpochMs) => void;
  /** Of values of one moment those of these signals come last: they are read beside others. */
  readonly readLast?: ReadonlySet<number>;
  /** A value that was recorded as one and cannot be used. */
  readonly unusable?: (value: RecordedValue, code: QualityCode) => void;
}

/**
 * Judges a record. `own`: its `site` inputs count; else they are passed over. What was to be judged
 * after `judgedToMs` was taken and never judged, and is not here either; null judges all. Times
 * before the last of the record's `rebases` belong to other clocks and do not compare with it.
 */
export function replayRecord(
  items: Iterable<FedItem>,
  own: boolean,
  ports: ReplayPorts,
  judgedToMs: EpochMs | null,
  rebases = 0,
): ReplayEnd {
  const endMs = judgedToMs ?? Number.POSITIVE_INFINITY;
  let rebasesAhead = rebases;
  let engine: Engine | null = null;
  let samples = 0;
  let fromMs: EpochMs | null = null;
  for (const item of items) {
    const site = item.kind === 'input' && item.input.kind === 'site' ? item.input : null;
    const at = item.kind === 'input' ? item.input.judged : item.batch.judged[0];
    if (engine === null && at !== undefined) {
      const plan = site !== null && own ? ports.planOf(site.revision) : ports.plan;
      engine = Engine.begin(plan, at, ports);
      fromMs = at;
      if (site !== null) continue;
    }
    if (engine === null || (site !== null && !own)) continue;
    if (item.kind === 'input' && item.input.kind === 'rebase') rebasesAhead -= 1;
    else if (rebasesAhead <= 0 && !within(item, endMs)) break;
    if (item.kind === 'samples') samples += item.batch.count;
    feedItem(engine, item);
    engine.derivedOut.clear();
    ports.progress?.(engine.now);
  }
  engine?.advance(Math.max(engine.now, judgedToMs ?? engine.waitsUntil ?? 0));
  return { samples, fromMs, toMs: engine?.now ?? null, late: 0 };
}

/** Cuts an item down to what is judged by `endMs`; false where nothing is left of it. */
function within(item: FedItem, endMs: EpochMs): boolean {
  if (item.kind === 'input') return item.input.judged <= endMs;
  const { batch } = item;
  while (batch.count > 0 && batch.judged[batch.count - 1]! > endMs) batch.count -= 1;
  return batch.count > 0;
}

/** What the CSV way needs of intake: the way of a live payload, by the samples' clock. */
export interface ReplayIntake {
  takeValue(
    signal: number,
    value: number,
    unit: string | null,
    code: QualityCode,
    atMs: EpochMs,
    out: SampleBatch,
  ): boolean;
  readonly engineTimeMs: EpochMs;
}

export interface RecordedValue {
  /** In its file, from 1. */
  readonly line: number;
  readonly timeMs: EpochMs;
  /** Plan index. */
  readonly signal: number;
  readonly value: number;
  readonly unit: string | null;
  readonly quality: QualityCode;
}

/** Judges recorded values, in the order of their times whatever their order in the file. */
export function replayValues(
  values: RecordedValue[],
  intake: ReplayIntake,
  ports: ReplayPorts,
): ReplayEnd {
  const late = countLate(values, ports.plan);
  const { readLast } = ports;
  const last = ({ signal }: RecordedValue): number => Number(readLast?.has(signal) ?? false);
  values.sort((a, b) => a.timeMs - b.timeMs || last(a) - last(b));
  const first = values[0];
  if (first === undefined) return { samples: 0, fromMs: null, toMs: null, late };
  // As live: begun just before the first sample, and a moment is judged once it is over.
  const engine = Engine.begin(ports.plan, first.timeMs - 1, ports);
  const batch = new SampleBatch(16);
  let samples = 0;
  for (const recorded of values) {
    const { signal, value, unit, quality, timeMs } = recorded;
    intake.takeValue(signal, value, unit, quality, timeMs, batch);
    samples += batch.count;
    const [code = 0] = batch.count > 0 ? batch.quality : [];
    if (isBad(code) && !isBad(quality)) {
      samples -= 1;
      ports.unusable?.(recorded, code);
    }
    engine.offerBatch(batch);
    batch.clear();
    engine.advance(Math.max(engine.now, intake.engineTimeMs - 1));
    engine.derivedOut.clear();
    ports.progress?.(engine.now);
  }
  engine.advance(Math.max(engine.now, engine.waitsUntil ?? 0));
  return { samples, fromMs: first.timeMs, toMs: engine.now, late };
}

function countLate(values: readonly RecordedValue[], plan: Plan): number {
  let newest = Number.NEGATIVE_INFINITY;
  let late = 0;
  for (const { timeMs, signal } of values) {
    if (timeMs + plan.signals[signal]!.holdMs < newest) late += 1;
    newest = Math.max(newest, timeMs);
  }
  return late;
}
