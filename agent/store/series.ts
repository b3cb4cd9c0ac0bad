/**
 * A signal over a span of time in so many points, for a chart.
 *
 * A chunk that lies within one bucket costs its row; else, where buckets are whole minutes, its
 * minute summaries; else its samples. Late data is where its own time puts it. What cannot be
 * read is named, and drawn from its minute summaries if they can be.
 *
 * Always true: sealed and open are taken from one moment, so a sample is counted once.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import { limits } from '../limits.ts';
import { Buckets } from './buckets.ts';
import { Column, type OpenPart } from './columns.ts';
import type { SeriesPoint } from './contract.ts';
import { decodeMinutes, minuteMs } from './minutes.ts';
import type { ReadOnlyStore } from './read-only.ts';
import { type BodyRow, decodeBody, reasonOf } from './stretch.ts';

export interface SeriesRequest {
  /** Its name. */
  readonly signal: string;
  readonly sinceMs: EpochMs;
  /** Not included; later than `sinceMs`. */
  readonly untilMs: EpochMs;
  /** At most so many buckets; 1 to limits.seriesPointsMax. */
  readonly points: number;
  /** What `OpenColumns.copyOf` gave for it; those sealed by now are left out. */
  readonly open: readonly OpenPart[];
}

export interface SeriesAnswer {
  /** Width of a bucket; `at` of a point is where its bucket begins. */
  readonly stepMs: number;
  /** Buckets without any sample are left out. */
  readonly points: SeriesPoint[];
  /** For each point, how many of its samples are in doubt: uncertain, late or in conflict. */
  readonly inDoubt: number[];
  readonly damage: { readonly fromMs: EpochMs; readonly toMs: EpochMs; readonly reason: string }[];
}

/** From this width on buckets are whole minutes, and a span reaches out to whole minutes. */
const wholeMinutesFromMs = 2 * minuteMs;

/** Buckets for a span. Throws RangeError on an empty span or a number of points out of range. */
export function bucketsFor(sinceMs: EpochMs, untilMs: EpochMs, points: number): Buckets {
  if (!(untilMs > sinceMs)) throw new RangeError('a series ends after it begins');
  if (!Number.isInteger(points) || points < 1 || points > limits.seriesPointsMax) {
    throw new RangeError(`a series has 1 to ${limits.seriesPointsMax} points`);
  }
  const stepMs = Math.ceil((untilMs - sinceMs) / points);
  if (stepMs < wholeMinutesFromMs) return new Buckets(sinceMs, untilMs, stepMs);
  const fromMs = Math.floor(sinceMs / minuteMs) * minuteMs;
  const toMs = Math.ceil(untilMs / minuteMs) * minuteMs;
  const minutes = Math.ceil((toMs - fromMs) / points / minuteMs);
  return new Buckets(fromMs, toMs, minutes * minuteMs);
}

/** Throws RangeError as `bucketsFor`, AgentError STORE_DISK_FAILED. */
export function seriesOf(store: ReadOnlyStore, request: SeriesRequest): SeriesAnswer {
  const buckets = bucketsFor(request.sinceMs, request.untilMs, request.points);
  const series = new Series(store, buckets);
  const { chunks, sealedSeq } = store.atOnce(() => ({
    sealedSeq: store.sealedSeq(),
    chunks: chunksWithin(store, request.signal, buckets.sinceMs, buckets.untilMs),
  }));
  for (const chunk of chunks) series.addChunk(chunk);
  for (const part of request.open) {
    if (part.afterSeq >= sealedSeq) buckets.addSamples(part.column);
  }
  return {
    stepMs: buckets.stepMs,
    points: buckets.points(),
    inDoubt: buckets.inDoubt(),
    damage: series.damage,
  };
}

/** [t0, t1, n, bad, lo, hi, sum, body, late] */
type ChunkFigures = readonly [
  t0: EpochMs,
  t1: EpochMs,
  n: number,
  bad: number,
  lo: number | null,
  hi: number | null,
  sum: number | null,
  body: number,
  inDoubt: number,
];

function chunksWithin(
  store: ReadOnlyStore,
  signal: string,
  sinceMs: EpochMs,
  untilMs: EpochMs,
): ChunkFigures[] {
  const statement = store.db.prepare(
    `SELECT t0, t1, n, bad, lo, hi, sum, body, late FROM chunk
     WHERE signal = (SELECT id FROM signal WHERE name = ?) AND t0 < ? AND t1 >= ?`,
  );
  statement.setReturnArrays(true);
  return statement.all(signal, untilMs, sinceMs) as unknown as ChunkFigures[];
}

class Series {
  readonly damage: SeriesAnswer['damage'] = [];
  private readonly buckets: Buckets;
  private readonly body;
  private readonly minutes;
  private readonly column = new Column();

  constructor(store: ReadOnlyStore, buckets: Buckets) {
    this.buckets = buckets;
    this.body = store.db.prepare('SELECT codec, crc, data FROM body WHERE id = ?');
    this.minutes = store.db.prepare('SELECT minutes FROM body WHERE id = ?');
  }

  addChunk(chunk: ChunkFigures): void {
    if (this.addWhole(chunk)) return;
    const inMinutes = this.buckets.stepMs >= wholeMinutesFromMs;
    if (inMinutes) this.addMinutes(chunk, () => this.addRaw(chunk));
    else this.addRaw(chunk, () => this.addMinutes(chunk));
  }

  /** From the row alone; false where that cannot be done. */
  private addWhole([t0, t1, n, bad, lo, hi, sum, , inDoubt]: ChunkFigures): boolean {
    const { buckets } = this;
    if (t0 < buckets.sinceMs || t1 >= buckets.untilMs) return false;
    const bucket = buckets.of(t0);
    if (bucket !== buckets.of(t1)) return false;
    if (lo === null || hi === null) buckets.add(bucket, n, bad, 0, 0, 0, 0, inDoubt);
    else if (sum === null) return false;
    else buckets.add(bucket, n, bad, n - bad, lo, hi, sum, inDoubt);
    return true;
  }

  private addMinutes(chunk: ChunkFigures, otherwise?: () => void): void {
    const row = this.minutes.get(chunk[7]);
    const bytes = row?.minutes;
    try {
      if (bytes instanceof Uint8Array) this.buckets.addMinutes(decodeMinutes(bytes));
      else otherwise?.();
    } catch (error) {
      this.note(chunk, reasonOf(error));
      otherwise?.();
    }
  }

  private addRaw(chunk: ChunkFigures, otherwise?: () => void): void {
    const row = this.body.get(chunk[7]) as unknown as BodyRow | undefined;
    if (row?.data === null && otherwise !== undefined) {
      // Retention took the samples and left the summaries: that is no damage.
      otherwise();
      return;
    }
    try {
      this.column.count = 0;
      decodeBody(row, this.column);
      this.buckets.addSamples(this.column);
    } catch (error) {
      this.note(chunk, reasonOf(error));
      otherwise?.();
    }
  }

  private note([fromMs, toMs]: ChunkFigures, reason: string): void {
    this.damage.push({ fromMs, toMs, reason });
  }
}
