import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StoredSignal } from '../../../agent/store/contract.ts';
import { readRange } from '../../../agent/store/range.ts';
import { SampleBatch } from '../../../rules/signal/sample.ts';
import { epoch } from './patterns.ts';
import { type RecordBuilder, type SignalSample, withRecord } from './record-builder.ts';

const signals: StoredSignal[] = [
  { id: 6, name: 'm/s/b', unit: 'Cel', digits: 1, kind: 'measured' },
  { id: 2, name: 'm/s/a', unit: 'Cel', digits: null, kind: 'measured' },
];

const anyStep = fc.record({
  waitMs: fc.constantFrom(20, 1_000, 60_000, 1_800_000, 90_000_000),
  seal: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
  /** Whether the log's rows that a seal made dead go at once. */
  clean: fc.boolean(),
  /** [signal, age, value] */
  samples: fc.array(
    fc.tuple(
      fc.integer({ min: 0, max: 1 }),
      fc.constantFrom(0, 0, 0, 40, 4_000_000, 200_000_000),
      fc.integer({ min: 0, max: 99 }),
    ),
    { maxLength: 6 },
  ),
});
type Step = typeof anyStep extends fc.Arbitrary<infer T> ? T : never;

function play(record: RecordBuilder, steps: readonly Step[]): SignalSample[] {
  const written: SignalSample[] = [];
  let beatMs = epoch;
  for (const step of steps) {
    beatMs += step.waitMs;
    const samples = step.samples.map(([signal, ageMs, value]) => ({
      ...{ signal, value, judged: beatMs, quality: 0, flags: 0 },
      at: beatMs - ageMs,
    }));
    if (samples.length > 0) record.samples(beatMs, samples);
    written.push(...samples);
    if (step.seal && record.hasOpenRows) record.seal(step.clean);
  }
  return written;
}

interface Out {
  readonly name: string;
  readonly at: number;
  readonly value: number;
}

function read(folder: string, names: string[], sinceMs: number, untilMs: number): Out[] {
  const out: Out[] = [];
  for (const item of readRange(folder, { signals: names, sinceMs, untilMs })) {
    if (item.kind === 'damage') throw new Error(item.reason);
    for (let i = 0; i < item.batch.count; i += 1) {
      out.push({
        name: item.signals[item.batch.signal[i]!]!.name,
        at: item.batch.at[i]! - epoch,
        value: item.batch.value[i]!,
      });
    }
  }
  return out;
}

const nameOf = (sample: SignalSample): string => signals[sample.signal]!.name;

test('a range holds exactly its samples, in the order of their own time', () => {
  fc.assert(
    fc.property(
      fc.array(anyStep, { maxLength: 20 }),
      fc.subarray(['m/s/a', 'm/s/b'], { minLength: 1 }),
      fc.integer({ min: -200_000_000, max: 300_000_000 }),
      fc.constantFrom(1, 20_000, 3_600_000, 300_000_000),
      (steps, names, fromMs, spanMs) => {
        withRecord(signals, (record) => {
          const written = play(record, steps);
          const [sinceMs, untilMs] = [epoch + fromMs, epoch + fromMs + spanMs];
          const wanted = written
            .filter((each) => each.at >= sinceMs && each.at < untilMs)
            .filter((each) => names.includes(nameOf(each)))
            .toSorted(
              (a, b) =>
                a.at - b.at || (nameOf(a) < nameOf(b) ? -1 : 1) * Number(nameOf(a) !== nameOf(b)),
            )
            .map((each) => ({ name: nameOf(each), at: each.at - epoch, value: each.value }));
          expect(read(record.folder, names, sinceMs, untilMs)).toEqual(wanted);
        });
      },
    ),
    { numRuns: 500 },
  );
}, 120_000);

test('what is sealed meanwhile is neither missed nor doubled', () => {
  withRecord(signals, (record) => {
    const add = (hour: number): void => {
      const at = epoch + hour * 3_600_000;
      record.samples(at, [{ signal: 0, at, judged: at, value: hour, quality: 0, flags: 0 }]);
    };
    // More chunks than are fetched at a time.
    const sealedHours = 100;
    for (let hour = 0; hour < sealedHours; hour += 1) {
      add(hour);
      record.seal();
    }
    for (const hour of [100, 101]) add(hour);
    const values: number[] = [];
    const ask = { signals: ['m/s/b'], sinceMs: epoch, untilMs: epoch + 1e9 };
    for (const item of readRange(record.folder, ask)) {
      if (item.kind === 'samples') values.push(...item.batch.value.subarray(0, item.batch.count));
      if (values.length !== 1) continue;
      record.seal();
      add(102);
      record.seal();
    }
    expect(values).toEqual([...Array(102).keys()]);
  });
});

test('many chunks that reach into one another are each read once', () => {
  withRecord(signals, (record) => {
    const batch = new SampleBatch();
    for (let n = 0; n < 150; n += 1) {
      batch.clear();
      const judged = epoch + n * 1_000;
      batch.push(0, judged, judged, n, 0, 0);
      batch.push(0, judged - 100_000, judged, n + 1_000, 0, 0);
      record.batch(judged, batch);
      record.seal();
    }
    const all = read(record.folder, [], epoch - 200_000, epoch + 200_000);
    expect(all.map((each) => each.value).toSorted((a, b) => a - b)).toEqual([
      ...Array(150).keys(),
      ...Array.from({ length: 150 }, (_, n) => n + 1_000),
    ]);
  });
});

describe('what cannot be read', () => {
  test('is named, and the rest comes', () => {
    withRecord(signals, (record) => {
      for (const hour of [0, 1]) {
        const at = epoch + hour * 3_600_000;
        record.samples(at, [{ signal: 0, at, judged: at, value: hour, quality: 0, flags: 0 }]);
        record.seal();
      }
      record.db.exec('UPDATE body SET crc = crc + 1 WHERE id = 1');
      const ask = { signals: [], sinceMs: epoch, untilMs: epoch + 1e9 };
      const items = [];
      for (const item of readRange(record.folder, ask)) {
        items.push(item.kind === 'samples' ? item.batch.value[0] : item);
      }
      expect(items).toEqual([
        {
          ...{ kind: 'damage', signal: 'm/s/b', fromMs: epoch, toMs: epoch },
          reason: 'Stored samples cannot be read: the checksum does not hold.',
        },
        1,
      ]);
    });
  });

  test('a signal that is not there is refused', () => {
    withRecord(signals, ({ folder }) => {
      const ask = { signals: ['m/s/x'], sinceMs: 0, untilMs: 1 };
      expect(() => [...readRange(folder, ask)]).toThrow('The store has no signal "m/s/x".');
    });
  });
});
