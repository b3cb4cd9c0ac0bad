/**
 * Loads one stretch of the record: a sealed segment, or the open log.
 *
 * A stretch falls into epochs, at whose borders the clock was set back. Its samples go where the
 * caller says; all else comes back as entries. What cannot be read is named and left out.
 */
import { type Input, inputOrder } from '#rules/input.ts';
import { type EpochMs, SampleBatch } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { inputCrc } from './checksum.ts';
import { decodeChunk } from './chunk.ts';
import type { Column } from './columns.ts';
import { inputKind } from './contract.ts';
import { unpackFrame } from './frame.ts';
import type { ReadOnlyStore } from './read-only.ts';
import { epochOf } from './segment.ts';

/** An input that is not a sample. */
export interface Entry {
  readonly seq: number;
  readonly judged: EpochMs;
  readonly input: Input;
}

/** What could not be read; `signal` is null where it may have been any. */
export interface Damage {
  readonly signal: number | null;
  readonly fromMs: EpochMs;
  readonly toMs: EpochMs;
  readonly reason: string;
}

export interface SegmentPlace {
  readonly id: number;
  readonly firstSeq: number;
  readonly lastSeq: number;
}

/** Where samples of a signal go; null: they are not wanted. */
export type Into = (epoch: number, signal: number) => Column | null;

export interface Loaded {
  /** In the order of the log. */
  readonly entries: Entry[];
  readonly damage: Damage[];
}

/** `wanted` is asked once the entries are known. */
export function loadSegment(
  store: ReadOnlyStore,
  segment: SegmentPlace,
  wanted: (entries: readonly Entry[]) => Into,
): Loaded {
  const damage: Damage[] = [];
  const entries = sealedEntries(store, segment, damage);
  const into = wanted(entries);
  const chunks = store.db.prepare(
    `SELECT c.signal, c.part, c.t0, c.t1, c.body FROM chunk c JOIN signal s ON s.id = c.signal
     WHERE c.segment = ? AND s.kind <> 'derived'`,
  );
  const bodies = store.db.prepare('SELECT codec, crc, data FROM body WHERE id = ?');
  // Bodies stand in the order of parts.
  const rows = (chunks.all(segment.id) as unknown as ChunkPlace[]).sort((a, b) => a.body - b.body);
  for (const { signal, part, t0, t1, body } of rows) {
    const column = into(epochOf(part), signal);
    if (column === null) continue;
    try {
      decodeBody(bodies.get(body) as unknown as BodyRow | undefined, column);
    } catch (error) {
      damage.push({ signal, fromMs: t0, toMs: t1, reason: reasonOf(error) });
    }
  }
  return { entries, damage };
}

interface ChunkPlace {
  readonly signal: number;
  readonly part: number;
  readonly t0: EpochMs;
  readonly t1: EpochMs;
  readonly body: number;
}

export interface BodyRow {
  readonly codec: number;
  readonly crc: number;
  readonly data: Uint8Array | null;
}

/** Adds a body's samples to `column`. Throws AgentError STORE_FRAME_UNREADABLE. */
export function decodeBody(body: BodyRow | undefined, column: Column): void {
  const unreadable = (reason: string) => new AgentError('STORE_FRAME_UNREADABLE', { reason });
  if (body === undefined) throw unreadable('they are gone');
  if (body.data === null) throw unreadable('only their summaries were kept, to make room');
  decodeChunk(body.codec, body.crc, body.data, column);
}

/** Why it was unreadable; anything else passes through. */
export function reasonOf(error: unknown): string {
  if (error instanceof AgentError && error.code === 'STORE_FRAME_UNREADABLE') return error.message;
  throw error;
}

function sealedEntries(store: ReadOnlyStore, segment: SegmentPlace, damage: Damage[]): Entry[] {
  const rows = store.db
    .prepare('SELECT seq, judged, body FROM command WHERE seq BETWEEN ? AND ? ORDER BY seq')
    .all(segment.firstSeq, segment.lastSeq) as unknown as {
    readonly seq: number;
    readonly judged: EpochMs;
    readonly body: string;
  }[];
  return rows.flatMap(({ seq, judged, body }) => entryOf(seq, judged, body, damage));
}

function entryOf(seq: number, judged: EpochMs, body: string, damage: Damage[]): Entry[] {
  try {
    const input: unknown = JSON.parse(body);
    if (isInput(input)) return [{ seq, judged, input }];
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
  }
  damage.push({ signal: null, fromMs: judged, toMs: judged, reason: `input ${seq} is unreadable` });
  return [];
}

/** The store wrote it from an Input; what damage could have left of it is told apart by its kind. */
const isInput = (value: unknown): value is Input =>
  typeof value === 'object' &&
  value !== null &&
  'kind' in value &&
  value.kind !== 'sample' &&
  Object.hasOwn(inputOrder, String(value.kind));

/** Rows of the log after `afterSeq`; to be called within one read transaction. */
export function loadOpenLog(store: ReadOnlyStore, afterSeq: number, into: Into): Loaded {
  const entries: Entry[] = [];
  const damage: Damage[] = [];
  const batch = new SampleBatch();
  let epoch = 0;
  let columns: Place[] = [];
  for (const [seq, judged, kind, body, crc] of openRows(store, afterSeq)) {
    if (inputCrc({ seq, judged, kind, body }) !== crc) {
      damage.push({
        signal: null,
        fromMs: judged,
        toMs: judged,
        reason: `input ${seq} is damaged`,
      });
    } else if (kind === inputKind.samples) {
      try {
        batch.clear();
        unpackFrame(body, judged, batch);
        scatter(batch, columns, (id) => into(epoch, id));
      } catch (error) {
        damage.push({ signal: null, fromMs: judged, toMs: judged, reason: reasonOf(error) });
      }
    } else {
      entries.push(...entryOf(seq, judged, Buffer.from(body).toString('utf8'), damage));
      if (kind === inputKind.rebase) {
        epoch += 1;
        columns = [];
      }
    }
  }
  return { entries, damage };
}

type OpenRow = readonly [seq: number, judged: EpochMs, kind: number, body: Uint8Array, crc: number];
const pageRows = 1_000;

/** Page by page: the fastest way through many small rows, with few of them in memory. */
function* openRows(store: ReadOnlyStore, afterSeq: number): Generator<OpenRow> {
  const page = store.db.prepare(
    `SELECT seq, judged, kind, body, crc FROM input WHERE seq > ? ORDER BY seq LIMIT ${pageRows}`,
  );
  page.setReturnArrays(true);
  for (let place = afterSeq; ; ) {
    const rows = page.all(place) as unknown as OpenRow[];
    yield* rows;
    const last = rows.at(-1);
    if (last === undefined || rows.length < pageRows) return;
    place = last[0];
  }
}

/** Where a signal's samples go, by stored id; undefined until it is known. */
type Place = Column | null | undefined;

function scatter(batch: SampleBatch, columns: Place[], into: (id: number) => Column | null): void {
  for (let i = 0; i < batch.count; i += 1) {
    const id = batch.signal[i]!;
    let column = columns[id];
    if (column === undefined) {
      column = into(id);
      columns[id] = column;
    }
    column?.push(
      batch.at[i]!,
      batch.judged[i]!,
      batch.value[i]!,
      batch.quality[i]!,
      batch.flags[i]!,
    );
  }
}
