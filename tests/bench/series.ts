/**
 * Charts from a store of 90 days of ten signals at 1 Hz: one signal, to 1,000 points, on one thread.
 *
 * Floor: the same query's rows and bytes read from SQLite and not looked at. Run alone:
 * `node --conditions=forebond-source tests/bench/series.ts`
 */
import type { DatabaseSync } from 'node:sqlite';
import { ReadOnlyStore } from '../../agent/store/read-only.ts';
import { seriesOf } from '../../agent/store/series.ts';
import { SeriesReader } from '../../agent/store/series-reader.ts';
import { SampleBatch } from '../../rules/signal/sample.ts';
import { epoch, processColumn } from '../agent/store/patterns.ts';
import { RecordBuilder } from '../agent/store/record-builder.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
const days = 90;
const signals = Array.from({ length: 10 }, (_, i) => ({
  ...{ id: i + 1, unit: 'Cel', digits: 1, kind: 'measured' as const },
  name: `line/station/signal-${i}`,
}));
const signal = signals[4]!.name;

function build(): RecordBuilder {
  const record = new RecordBuilder(signals);
  // 24 hours of each signal are made once and moved along: what is measured is reading.
  const made = signals.map((_, i) =>
    Array.from({ length: 24 }, (_, hour) => processColumn(3_600, { seed: i * 24 + hour })),
  );
  for (let hour = 0; hour < days * 24; hour += 1) {
    const batch = new SampleBatch(3_600);
    for (let i = 0; i < signals.length; i += 1) {
      const column = made[i]![hour % 24]!;
      batch.clear();
      for (let n = 0; n < column.count; n += 1) {
        const at = column.at[n]! + hour * hourMs;
        batch.push(i, at, at, column.value[n]!, 0, 0);
      }
      record.derived(batch);
    }
    record.samples(epoch + (hour + 1) * hourMs, []);
    record.seal();
  }
  return record;
}

const median = (list: number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1]!;

async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** What SQLite must hand over at least: the rows, and the blobs of those that cross a bucket. */
function floorOf(db: DatabaseSync, sinceMs: number, untilMs: number): void {
  const stepMs = Math.ceil((untilMs - sinceMs) / 1_000);
  const rows = db.prepare(
    `SELECT t0, t1, body, lo, hi, sum, n, bad FROM chunk
     WHERE signal = (SELECT id FROM signal WHERE name = ?) AND t0 < ? AND t1 >= ?`,
  );
  rows.setReturnArrays(true);
  const blobs = db.prepare(
    `SELECT ${stepMs < 120_000 ? 'data' : 'minutes'} FROM body WHERE id = ?`,
  );
  const bucket = (at: number): number => Math.floor((at - sinceMs) / stepMs);
  for (const [t0, t1, body] of rows.all(signal, untilMs, sinceMs) as unknown as number[][]) {
    if (bucket(t0!) !== bucket(t1!)) blobs.get(body!);
  }
}

export interface SeriesFigure {
  readonly days: number;
  readonly floorMs: number;
  readonly figureMs: number;
  /** Through the thread and back. */
  readonly askedMs: number;
  readonly points: number;
}

/** Median of eleven, floor and figure in turn. */
export async function measureSeries(): Promise<SeriesFigure[]> {
  const record = build();
  const store = ReadOnlyStore.open(record.folder);
  const reader = new SeriesReader(record.folder);
  // Seals and buckets do not keep step, so that most chunks cross from one bucket to the next.
  const untilMs = epoch + days * dayMs - 17 * 60_000;
  const figures: SeriesFigure[] = [];
  for (const span of [1, 7, 41, 90]) {
    const request = { signal, sinceMs: untilMs - span * dayMs, untilMs, points: 1_000, open: [] };
    const times = { floor: [] as number[], figure: [] as number[], asked: [] as number[] };
    for (let i = 0; i < 11; i += 1) {
      times.floor.push(await timed(() => floorOf(store.db, request.sinceMs, untilMs)));
      times.figure.push(await timed(() => seriesOf(store, request)));
      times.asked.push(await timed(() => reader.series(request)));
    }
    figures.push({
      days: span,
      floorMs: median(times.floor),
      figureMs: median(times.figure),
      askedMs: median(times.asked),
      points: seriesOf(store, request).points.length,
    });
  }
  await reader.close();
  store.close();
  record.dispose();
  return figures;
}

if (import.meta.main) {
  for (const { days: span, floorMs, figureMs, askedMs, points } of await measureSeries()) {
    console.log(
      `${span} days, ${points} points: floor ${floorMs.toFixed(2)} ms, ` +
        `series ${figureMs.toFixed(2)} ms, asked of the thread ${askedMs.toFixed(2)} ms`,
    );
  }
}
