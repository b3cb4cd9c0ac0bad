/**
 * One signal's samples taken slice by slice as time moves on, each chunk decoded once.
 *
 * Chunks overlap where data came late: those that reach into the slice are at hand, the rest are
 * fetched as their time comes.
 */
import type { EpochMs } from '#rules/signal/sample.ts';
import { Column } from './columns.ts';
import type { ReadOnlyStore } from './read-only.ts';
import { type BodyRow, type Damage, decodeBody, reasonOf } from './stretch.ts';

export interface SweptSpan {
  readonly sinceMs: EpochMs;
  readonly untilMs: EpochMs;
  /** Segments after it were sealed later than the open log was read. */
  readonly lastSegment: number;
}

interface SweptChunk {
  readonly t0: EpochMs;
  readonly t1: EpochMs;
  readonly segment: number;
  readonly part: number;
  readonly body: number;
}

const pageRows = 64;

export class SweptSignal {
  private readonly signal: number;
  private readonly span: SweptSpan;
  private readonly page;
  private readonly body;
  /** Fetched, not yet reached; ascending by t0. */
  private ahead: SweptChunk[] = [];
  private last: SweptChunk | null = null;
  private ended = false;
  /** Reached and decoded, in the order they were sealed; the open log stands last. */
  private active: { readonly chunk: SweptChunk; readonly column: Column }[] = [];
  private readonly open: Column;
  private openNext = 0;

  /** `open`: what is not sealed, ascending by `at`. */
  constructor(store: ReadOnlyStore, signal: number, span: SweptSpan, open: Column) {
    this.signal = signal;
    this.span = span;
    this.open = open;
    this.page = store.db.prepare(
      `SELECT t0, t1, segment, part, body FROM chunk
       WHERE signal = ?1 AND (t0, segment, part) > (?2, ?3, ?4) AND t0 < ?5 AND t1 >= ?6
       AND segment <= ?7 ORDER BY t0, segment, part LIMIT ${pageRows}`,
    );
    this.body = store.db.prepare('SELECT codec, crc, data FROM body WHERE id = ?');
    while (this.openNext < open.count && open.at[this.openNext]! < span.sinceMs) this.openNext += 1;
  }

  /** No sample of it that is still to come is earlier; Infinity where none comes. */
  nextMs(): EpochMs {
    if (this.active.length > 0) return Number.NEGATIVE_INFINITY;
    this.fetch();
    const sealedMs = this.ahead[0]?.t0 ?? Number.POSITIVE_INFINITY;
    const hasOpen = this.openNext < this.open.count;
    return Math.min(sealedMs, hasOpen ? this.open.at[this.openNext]! : Number.POSITIVE_INFINITY);
  }

  /** Adds the samples of [fromMs, toMs) to `into`, in the order they were sealed. */
  take(fromMs: EpochMs, toMs: EpochMs, into: Column): Omit<Damage, 'signal'>[] {
    const damage = this.reach(toMs);
    for (const { column } of this.active) copyWithin(column, fromMs, toMs, into);
    this.active = this.active.filter(({ chunk }) => chunk.t1 >= toMs);
    const { open } = this;
    let end = this.openNext;
    while (end < open.count && open.at[end]! < toMs) end += 1;
    for (; this.openNext < end; this.openNext += 1) copyOne(open, this.openNext, into);
    return damage;
  }

  private reach(toMs: EpochMs): Omit<Damage, 'signal'>[] {
    const damage: Omit<Damage, 'signal'>[] = [];
    for (;;) {
      this.fetch();
      const chunk = this.ahead[0];
      if (chunk === undefined || chunk.t0 >= toMs) break;
      this.ahead.shift();
      const column = new Column();
      try {
        decodeBody(this.body.get(chunk.body) as unknown as BodyRow | undefined, column);
        this.active.push({ chunk, column });
      } catch (error) {
        damage.push({ fromMs: chunk.t0, toMs: chunk.t1, reason: reasonOf(error) });
      }
    }
    this.active.sort((a, b) => a.chunk.segment - b.chunk.segment || a.chunk.part - b.chunk.part);
    return damage;
  }

  private fetch(): void {
    if (this.ahead.length > 0 || this.ended) return;
    const { sinceMs, untilMs, lastSegment } = this.span;
    const { t0, segment, part } = this.last ?? { t0: Number.MIN_SAFE_INTEGER, segment: 0, part: 0 };
    this.ahead = this.page.all(
      ...[this.signal, t0, segment, part, untilMs, sinceMs, lastSegment],
    ) as unknown as SweptChunk[];
    this.last = this.ahead.at(-1) ?? null;
    this.ended = this.ahead.length < pageRows;
  }
}

function copyWithin(from: Column, fromMs: EpochMs, toMs: EpochMs, into: Column): void {
  for (let i = 0; i < from.count; i += 1) {
    const at = from.at[i]!;
    if (at >= fromMs && at < toMs) copyOne(from, i, into);
  }
}

function copyOne(from: Column, i: number, into: Column): void {
  into.push(from.at[i]!, from.judged[i]!, from.value[i]!, from.quality[i]!, from.flags[i]!);
}
