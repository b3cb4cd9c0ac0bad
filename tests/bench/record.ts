/**
 * Reading the record of 500 signals at 1 Hz, in the order of judgement: two hours sealed, and one
 * hour still in the log. And packing a beat, and encoding and decoding a chunk, alone.
 *
 * Floor of reading: the same bodies fetched from SQLite and inflated, not looked at. Run alone:
 * `node --conditions=forebond-source tests/bench/record.ts`
 */
import { inflateRawSync } from 'node:zlib';
import { decodeChunk, encodeColumn } from '../../agent/store/chunk.ts';
import { Column } from '../../agent/store/columns.ts';
import { FramePacker, unpackFrame } from '../../agent/store/frame.ts';
import { ReadOnlyStore } from '../../agent/store/read-only.ts';
import { readRecord } from '../../agent/store/reader.ts';
import { SampleBatch } from '../../rules/signal/sample.ts';
import { epoch, processColumn } from '../agent/store/patterns.ts';
import { RecordBuilder } from '../agent/store/record-builder.ts';

const signalCount = 500;
const hourS = 3_600;
const signals = Array.from({ length: signalCount }, (_, i) => ({
  ...{ id: i + 1, unit: 'Cel', digits: 1, kind: 'measured' as const },
  name: `line/station/signal-${String((i * 7) % signalCount).padStart(3, '0')}`,
}));

function build(sealedHours: number, openHours: number): RecordBuilder {
  const record = new RecordBuilder(signals);
  const columns = signals.map((_, i) => processColumn(hourS, { seed: i, jitterMs: 0 }));
  const batch = new SampleBatch(64);
  record.db.exec('BEGIN');
  for (let hour = 0; hour < sealedHours + openHours; hour += 1) {
    for (let second = 0; second < hourS; second += 1) {
      // Fifty beats a second, ten signals in each.
      for (let beat = 0; beat < 50; beat += 1) {
        const judged = epoch + (hour * hourS + second) * 1_000 + beat * 20;
        batch.clear();
        for (let i = beat; i < signalCount; i += 50) {
          batch.push(i, judged, judged, columns[i]!.value[second]!, 0, 0);
        }
        record.batch(judged, batch);
      }
    }
    if (hour >= sealedHours) continue;
    record.db.exec('COMMIT');
    record.seal();
    record.db.exec('BEGIN');
  }
  record.db.exec('COMMIT');
  return record;
}

/** ms of one call: the median of five, after one that does not count. */
function msOf(work: () => void): number {
  work();
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.toSorted((a, b) => a - b)[2]!;
}

function floor(folder: string): void {
  const store = ReadOnlyStore.open(folder);
  const bodies = store.db.prepare('SELECT data FROM body WHERE id = ?');
  for (const { id } of store.db.prepare('SELECT id FROM body').all()) {
    const data = bodies.get(id as number)?.data;
    if (data instanceof Uint8Array) inflateRawSync(data);
  }
  store.close();
}

function readAll(folder: string): number {
  let count = 0;
  for (const item of readRecord(folder)) if (item.kind === 'samples') count += item.batch.count;
  return count;
}

const millions = (samples: number, ms: number): string =>
  `${(samples / ms / 1_000).toFixed(1)} M samples/s (${((ms * 1e6) / samples).toFixed(0)} ns)`;

function codec(): string[] {
  const batch = new SampleBatch(signalCount);
  for (let i = 0; i < signalCount; i += 1) batch.push(i, epoch, epoch, 20 + (i % 50) / 10, 0, 0);
  const stored = {
    ids: Int32Array.from(signals, ({ id }) => id),
    digits: new Int8Array(signalCount).fill(1),
  };
  const packer = new FramePacker();
  const frame = packer.pack(batch, stored, epoch).slice();
  const out = new SampleBatch(signalCount);
  const times = 2_000;
  const packMs = msOf(() => {
    for (let i = 0; i < times; i += 1) packer.pack(batch, stored, epoch);
  });
  const unpackMs = msOf(() => {
    for (let i = 0; i < times; i += 1) {
      out.clear();
      unpackFrame(frame, epoch, out);
    }
  });
  const column = processColumn(hourS);
  const chunk = encodeColumn(1, 1, 0, column)[0]!;
  const decoded = new Column(hourS);
  const encodeMs = msOf(() => {
    for (let i = 0; i < 100; i += 1) encodeColumn(1, 1, 0, column);
  });
  const decodeMs = msOf(() => {
    for (let i = 0; i < 500; i += 1) {
      decoded.count = 0;
      decodeChunk(chunk.codec, chunk.crc, chunk.data, decoded);
    }
  });
  const bytes = (chunk.data.length + chunk.minutes.length) / hourS;
  return [
    `pack: ${millions(signalCount * times, packMs)}, ${(frame.length / signalCount).toFixed(2)} bytes a sample`,
    `unpack: ${millions(signalCount * times, unpackMs)}`,
    `encode: ${millions(hourS * 100, encodeMs)}, ${bytes.toFixed(2)} bytes a sample`,
    `decode: ${millions(hourS * 500, decodeMs)}`,
  ];
}

export function measureRecord(): string[] {
  const lines = codec();
  const sealed = build(2, 0);
  const samples = 2 * hourS * signalCount;
  lines.push(
    `sealed record, floor: ${millions(
      samples,
      msOf(() => floor(sealed.folder)),
    )}`,
    `sealed record, read and merged: ${millions(
      samples,
      msOf(() => readAll(sealed.folder)),
    )}`,
  );
  sealed.dispose();
  const open = build(0, 1);
  const openSamples = hourS * signalCount;
  lines.push(
    `open log, read and merged: ${millions(
      openSamples,
      msOf(() => readAll(open.folder)),
    )}`,
  );
  open.dispose();
  return lines;
}

if (import.meta.main) for (const line of measureRecord()) console.log(line);
