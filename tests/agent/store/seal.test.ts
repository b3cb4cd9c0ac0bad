import { describe, expect, test } from 'vitest';
import { decodeChunk } from '../../../agent/store/chunk.ts';
import { Column, OpenColumns } from '../../../agent/store/columns.ts';
import type { StoredSignal } from '../../../agent/store/contract.ts';
import { seal } from '../../../agent/store/seal.ts';
import { epochOf } from '../../../agent/store/segment.ts';
import { SampleBatch } from '../../../rules/signal/sample.ts';
import { epoch, samplesOf } from './patterns.ts';

const signals: StoredSignal[] = [3, 5].map((id) => ({
  ...{ id, unit: 'Cel', digits: 1, kind: 'measured' },
  name: `l/s/${id}`,
}));
const ids = Int32Array.from([3, 5, -1]);
const span = { firstSeq: 1, lastSeq: 2, judgedFrom: epoch, judgedTo: epoch + 9_000 };

function batchOf(count: number, beginMs = epoch, value = 20): SampleBatch {
  const batch = new SampleBatch(count);
  for (let i = 0; i < count; i += 1) {
    batch.push(i % 3, beginMs + i * 20, beginMs + i * 20, value + (i % 7) / 10, 0, 0);
  }
  return batch;
}

const decoded = (chunks: Awaited<ReturnType<typeof seal>>['chunks'], signal: number) => {
  const column = new Column();
  for (const each of chunks.filter((chunk) => chunk.signal === signal)) {
    decodeChunk(each.codec, each.crc, each.data, column);
  }
  return samplesOf(column);
};

describe('open columns', () => {
  test('hand out what was appended, by stored id, and nothing of signals without one', () => {
    const open = new OpenColumns(0);
    open.append(batchOf(300), ids);
    const [part, ...none] = open.copyOf(3);
    expect(none).toEqual([]);
    expect(part?.afterSeq).toBe(0);
    expect(samplesOf(part!.column).map((each) => each.at)).toEqual(
      Array.from({ length: 100 }, (_, i) => epoch + i * 60),
    );
    expect(open.copyOf(4)).toEqual([]);
  });

  test('what was handed out does not change as more arrives', () => {
    const open = new OpenColumns(0);
    open.append(batchOf(30), ids);
    const before = open.copyOf(3)[0]!.column;
    const seen = samplesOf(before);
    open.append(batchOf(3_000, epoch + 1_000, 50), ids);
    expect(before.count).toBe(10);
    expect(samplesOf(before)).toEqual(seen);
  });

  test('frozen columns stay in sight until they are released', () => {
    const open = new OpenColumns(0);
    open.append(batchOf(30), ids);
    const frozen = open.freeze(span);
    open.append(batchOf(3, epoch + 9_000), ids);
    expect(open.copyOf(3).map((part) => [part.afterSeq, part.column.count])).toEqual([
      [0, 10],
      [2, 1],
    ]);
    open.release(frozen);
    expect(open.copyOf(3).map((part) => [part.afterSeq, part.column.count])).toEqual([[2, 1]]);
  });
});

describe('a sealed segment', () => {
  test('holds what the columns held', async () => {
    const open = new OpenColumns(0);
    open.append(batchOf(3_000), ids);
    const before = samplesOf(open.copyOf(5)[0]!.column);
    const sealed = await seal(open.freeze(span), signals);
    expect(sealed).toMatchObject(span);
    expect(sealed.chunks.map((chunk) => chunk.signal)).toEqual([3, 5]);
    expect(decoded(sealed.chunks, 5)).toEqual(before);
  });

  test('keeps what came before and after the clock was set back apart', async () => {
    const open = new OpenColumns(0);
    open.append(batchOf(3), ids);
    open.rebase();
    open.append(batchOf(3, epoch - 900_000), ids);
    const sealed = await seal(open.freeze(span), signals);
    expect(sealed.chunks.map((chunk) => [chunk.signal, epochOf(chunk.part)])).toEqual([
      [3, 0],
      [5, 0],
      [3, 1],
      [5, 1],
    ]);
  });

  test('of nothing has no chunks', async () => {
    expect((await seal(new OpenColumns(0).freeze(span), signals)).chunks).toEqual([]);
  });
});

describe('when sealing fails', () => {
  test('the cause is named, the columns are whole, and it may be tried again', async () => {
    const open = new OpenColumns(0);
    open.append(batchOf(30), ids);
    // A time that is no whole millisecond cannot be encoded.
    const broken = new SampleBatch();
    broken.push(0, epoch + 0.5, epoch, 1, 0, 0);
    open.append(broken, ids);
    const frozen = open.freeze(span);
    await expect(seal(frozen, signals)).rejects.toMatchObject({
      code: 'STORE_SEAL_FAILED',
      message: expect.stringContaining('as a whole number'),
      cause: expect.any(Error),
    });
    frozen.epochs[0]![3]!.at[10] = epoch + 1_000;
    expect((await seal(frozen, signals)).chunks.map((chunk) => chunk.n)).toEqual([11, 10]);
  });

  test('a signal that is not known is named', async () => {
    const open = new OpenColumns(0);
    open.append(batchOf(3), ids);
    await expect(seal(open.freeze(span), signals.slice(0, 1))).rejects.toThrow('a signal 5');
  });

  test('stopping it ends the thread and keeps the columns', async () => {
    const open = new OpenColumns(0);
    open.append(batchOf(3), ids);
    const frozen = open.freeze(span);
    const stop = new AbortController();
    const sealing = seal(frozen, signals, stop.signal);
    stop.abort();
    await expect(sealing).rejects.toMatchObject({ code: 'STORE_SEAL_FAILED' });
    expect(open.copyOf(3)).toHaveLength(1);
  });
});
