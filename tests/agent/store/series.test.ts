import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { limits } from '../../../agent/limits.ts';
import type { OpenPart } from '../../../agent/store/columns.ts';
import type { SeriesPoint, StoredSignal } from '../../../agent/store/contract.ts';
import { ReadOnlyStore } from '../../../agent/store/read-only.ts';
import { seriesOf } from '../../../agent/store/series.ts';
import { SeriesReader } from '../../../agent/store/series-reader.ts';
import { quality } from '../../../rules/signal/quality.ts';
import { SampleBatch, sampleFlag } from '../../../rules/signal/sample.ts';
import { epoch } from './patterns.ts';
import { RecordBuilder, type SignalSample, withRecord } from './record-builder.ts';

const signals: StoredSignal[] = [
  { id: 4, name: 'm/s/air', unit: 'Cel', digits: 1, kind: 'measured' },
  { id: 2, name: 'm/s/flow', unit: 'm3/h', digits: null, kind: 'measured' },
  { id: 9, name: 'm/s/dew', unit: 'Cel', digits: 2, kind: 'derived' },
];

const anySample: fc.Arbitrary<Omit<SignalSample, 'judged'>> = fc
  .record({
    signal: fc.integer({ min: 0, max: 1 }),
    ageMs: fc.constantFrom(0, 0, 0, 0, 90_000, 9_000_000),
    value: fc.integer({ min: -100, max: 400 }).map((k) => k / 10 + 0),
    quality: fc.constantFrom<number>(0, 0, 0, 0, quality.jump, quality.outOfRange),
    flags: fc.constantFrom<number>(0, 0, 0, 0, sampleFlag.late, sampleFlag.conflict),
  })
  .map(({ ageMs, ...drawn }) => ({
    ...drawn,
    at: -ageMs,
    value: drawn.quality >= 100 ? 0 : drawn.value,
  }));

const anyStep = fc.record({
  waitMs: fc.constantFrom(20, 1_000, 1_000, 20_000, 61_000, 600_000, 5_000_000),
  seal: fc.integer({ min: 0, max: 6 }).map((n) => n === 0),
  samples: fc.array(anySample, { maxLength: 12 }),
});

/** 400 ms to 40 days, and any number of points. */
const anySpan = fc.record({
  fromMs: fc.integer({ min: -10_000_000, max: 40_000_000 }),
  spanMs: fc.oneof(
    fc.constantFrom(400, 60_000, 3_600_000, 86_400_000, 41 * 86_400_000),
    fc.integer({ min: 1, max: 100_000_000 }),
  ),
  points: fc.oneof(fc.constantFrom(1, 2, 60, 1_000), fc.integer({ min: 1, max: 3_000 })),
});

function play(record: RecordBuilder, steps: readonly StepOf[]): SignalSample[] {
  const written: SignalSample[] = [];
  let beatMs = epoch;
  for (const step of steps) {
    beatMs += step.waitMs;
    const samples = step.samples.map((drawn) => ({
      ...drawn,
      at: beatMs + drawn.at,
      judged: beatMs,
    }));
    if (samples.length > 0) record.samples(beatMs, samples);
    written.push(...samples);
    if (step.seal && record.hasOpenRows) record.seal();
  }
  return written;
}

type StepOf = typeof anyStep extends fc.Arbitrary<infer Step> ? Step : never;

/** By definition: whole minutes from two minutes a bucket on. */
function naively(
  samples: readonly SignalSample[],
  sinceMs: number,
  untilMs: number,
  points: number,
): { stepMs: number; points: SeriesPoint[]; inDoubt: number[] } {
  let [fromMs, toMs, stepMs] = [sinceMs, untilMs, Math.ceil((untilMs - sinceMs) / points)];
  if (stepMs >= 120_000) {
    fromMs -= ((fromMs % 60_000) + 60_000) % 60_000;
    while (toMs % 60_000 !== 0) toMs += 1;
    stepMs = Math.ceil((toMs - fromMs) / points / 60_000) * 60_000;
  }
  const within = samples.filter(({ at }) => at >= fromMs && at < toMs);
  const groups = Map.groupBy(within, ({ at }) => Math.floor((at - fromMs) / stepMs));
  const buckets = [...groups].toSorted(([a], [b]) => a - b);
  const doubtful = ({ quality: code, flags }: SignalSample): boolean =>
    code < 100 && (code > 0 || (flags & (sampleFlag.late | sampleFlag.conflict)) !== 0);
  return {
    stepMs,
    inDoubt: buckets.map(([, group]) => group.filter(doubtful).length),
    points: buckets.map(([bucket, group]): SeriesPoint => {
      const usable = group.filter((each) => each.quality < 100 && (each.flags & 2) === 0);
      const values = usable.map((each) => each.value);
      const bad = group.filter((each) => each.quality >= 100).length;
      const at = fromMs + bucket * stepMs;
      if (values.length === 0) return [at, null, null, null, group.length, bad];
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return [at, Math.min(...values), Math.max(...values), mean, group.length, bad];
    }),
  };
}

/** Sums in another order differ in the last digits. */
const rounded = (points: readonly SeriesPoint[]): SeriesPoint[] =>
  points.map(([at, lo, hi, mean, n, bad]) => [
    at,
    lo === null ? null : lo + 0,
    hi === null ? null : hi + 0,
    mean === null ? null : Math.round(mean * 1e9) / 1e9 + 0,
    n,
    bad,
  ]);

function asked(
  folder: string,
  request: Omit<Parameters<typeof seriesOf>[1], 'open'>,
  open: readonly OpenPart[],
) {
  const store = ReadOnlyStore.open(folder);
  try {
    return seriesOf(store, { ...request, open });
  } finally {
    store.close();
  }
}

test('a series equals adding up the samples one by one, over any span', () => {
  fc.assert(
    fc.property(
      fc.array(anyStep, { minLength: 1, maxLength: 20 }),
      fc.array(anySpan, { minLength: 4, maxLength: 4 }),
      (steps, spans) => {
        withRecord(signals, (record) => {
          const written = play(record, steps);
          for (const { fromMs, spanMs, points } of spans) {
            for (const [i, { id, name }] of signals.slice(0, 2).entries()) {
              const [sinceMs, untilMs] = [epoch + fromMs, epoch + fromMs + spanMs];
              const open = record.columns.copyOf(id);
              const got = asked(record.folder, { signal: name, sinceMs, untilMs, points }, open);
              const mine = written.filter((sample) => sample.signal === i);
              const wanted = naively(mine, sinceMs, untilMs, points);
              expect(got.stepMs).toBe(wanted.stepMs);
              expect(rounded(got.points)).toEqual(rounded(wanted.points));
              expect(got.inDoubt).toEqual(wanted.inDoubt);
              expect(got.points.length).toBeLessThanOrEqual(points);
              expect(got.damage).toEqual([]);
            }
          }
        });
      },
    ),
    { numRuns: 300 },
  );
}, 120_000);

describe('between open and sealed', () => {
  const ask = { signal: 'm/s/air', sinceMs: epoch, untilMs: epoch + 60_000, points: 1 };
  const countNow = (record: RecordBuilder, open: readonly OpenPart[]) =>
    asked(record.folder, ask, open).points[0]?.[4] ?? 0;
  const add = (record: RecordBuilder, ms: number) =>
    record.samples(epoch + ms, [
      { signal: 0, at: epoch + ms, judged: epoch + ms, value: 1, quality: 0, flags: 0 },
    ]);

  test('no sample is missed or doubled, whenever the copy was made and whenever it is read', () => {
    withRecord(signals, (record) => {
      const copies: { readonly open: OpenPart[]; readonly count: number }[] = [];
      let count = 0;
      const look = (): void => {
        copies.push({ open: record.columns.copyOf(4), count });
        for (const copy of copies) {
          const seen = countNow(record, copy.open);
          expect(seen).toBeGreaterThanOrEqual(copy.count);
          expect(seen).toBeLessThanOrEqual(count);
        }
        expect(countNow(record, record.columns.copyOf(4))).toBe(count);
      };
      const more = (ms: number): void => {
        add(record, ms);
        count += 1;
        look();
      };
      look();
      for (const hour of [0, 1_000, 2_000]) {
        more(hour);
        more(hour + 20);
        const frozen = record.freeze();
        look();
        more(hour + 40);
        record.seal(hour !== 0, frozen);
        look();
        more(hour + 60);
      }
    });
  });

  test('derived samples of the open hour are there too', () => {
    withRecord(signals, (record) => {
      const derived = new SampleBatch();
      derived.push(2, epoch, epoch, 7.25, 0, 0);
      record.derived(derived);
      const got = asked(record.folder, { ...ask, signal: 'm/s/dew' }, record.columns.copyOf(9));
      expect(got.points).toEqual([[epoch, 7.25, 7.25, 7.25, 1, 0]]);
    });
  });
});

describe('damage and retention', () => {
  const fill = (record: RecordBuilder): void => {
    for (let minute = 0; minute < 120; minute += 1) {
      const at = epoch + minute * 60_000;
      record.samples(at, [{ signal: 0, at, judged: at, value: minute, quality: 0, flags: 0 }]);
      if (minute === 59) record.seal();
    }
    record.seal();
  };
  const hours = { signal: 'm/s/air', sinceMs: epoch, untilMs: epoch + 7_200_000 };
  const counts = (points: readonly SeriesPoint[]) => points.reduce((sum, p) => sum + p[4], 0);

  test('a damaged body is named and drawn from its minutes; the rest serves', () => {
    withRecord(signals, (record) => {
      fill(record);
      record.db.exec('UPDATE body SET crc = crc + 1 WHERE id = 1');
      const got = asked(record.folder, { ...hours, points: 120 }, []);
      expect(got.damage).toEqual([
        {
          fromMs: epoch,
          toMs: epoch + 59 * 60_000,
          reason: 'Stored samples cannot be read: the checksum does not hold.',
        },
      ]);
      expect(counts(got.points)).toBe(120);
    });
  });

  test('a body damaged throughout is named and left out', () => {
    withRecord(signals, (record) => {
      fill(record);
      record.db.exec("UPDATE body SET crc = crc + 1, minutes = x'0102030405' WHERE id = 1");
      const got = asked(record.folder, { ...hours, points: 120 }, []);
      expect(counts(got.points)).toBe(60);
      expect(got.damage.map(({ fromMs }) => fromMs)).toEqual([epoch, epoch]);
    });
  });

  test('where only minutes are left they are drawn, and that is no damage', () => {
    withRecord(signals, (record) => {
      fill(record);
      record.db.exec('UPDATE body SET data = NULL');
      for (const points of [120, 30, 7]) {
        const got = asked(record.folder, { ...hours, points }, []);
        expect(counts(got.points)).toBe(120);
        expect(got.damage).toEqual([]);
      }
    });
  });
});

test('a last bucket that is cut short takes nothing from beyond its end', () => {
  withRecord(signals, (record) => {
    for (const ms of [700, 1_000]) {
      const at = epoch + ms;
      record.samples(at, [{ signal: 0, at, judged: at, value: ms, quality: 0, flags: 0 }]);
    }
    record.seal();
    // Three buckets of 334 ms, the last of them 332 ms.
    const ask = { signal: 'm/s/air', sinceMs: epoch, untilMs: epoch + 1_000, points: 3 };
    expect(asked(record.folder, ask, []).points).toEqual([[epoch + 668, 700, 700, 700, 1, 0]]);
  });
});

test('a span that ends before it begins, or points out of range, are refused', () => {
  withRecord(signals, ({ folder }) => {
    const ask = { signal: 'm/s/air', sinceMs: epoch, untilMs: epoch + 1, points: 1 };
    for (const wrong of [{ untilMs: epoch }, { points: 0 }, { points: 1.5 }, { points: 5_001 }]) {
      expect(() => asked(folder, { ...ask, ...wrong }, [])).toThrow(RangeError);
    }
    expect(asked(folder, { ...ask, signal: 'no/such/signal' }, []).points).toEqual([]);
  });
});

describe('the thread', () => {
  const ask = { signal: 'm/s/air', sinceMs: epoch, untilMs: epoch + 60_000, points: 60 };
  const withReader = async (folder: string, work: (reader: SeriesReader) => Promise<void>) => {
    const reader = new SeriesReader(folder);
    try {
      await work(reader);
    } finally {
      await reader.close();
    }
  };

  test('answers as the same question asked here, many at once', async () => {
    const record = new RecordBuilder(signals);
    const at = epoch + 20;
    record.samples(at, [{ signal: 0, at, judged: at, value: 3, quality: 0, flags: 0 }]);
    record.seal();
    record.samples(at + 20, [{ signal: 0, at, judged: at, value: 5, quality: 0, flags: 0 }]);
    await withReader(record.folder, async (reader) => {
      const open = record.columns.copyOf(4);
      const here = asked(record.folder, ask, open);
      expect(here.points).toEqual([[epoch, 3, 5, 4, 2, 0]]);
      const all = Array.from({ length: 20 }, () => reader.series({ ...ask, open }));
      expect(await Promise.all(all)).toEqual(all.map(() => here));
      await expect(reader.series({ ...ask, points: 0, open })).rejects.toMatchObject({
        code: 'STORE_READER_FAILED',
      });
      expect(await reader.series({ ...ask, open })).toEqual(here);
    });
    record.dispose();
  });

  test('says so where there is no store, and refuses more than it can hold', async () => {
    await withReader('/nowhere/at/all', async (reader) => {
      const all = Array.from({ length: limits.seriesWaitingRequestsMax + 1 }, () =>
        reader.series({ ...ask, open: [] }),
      );
      const codes = (await Promise.allSettled(all)).map((each) =>
        each.status === 'rejected' ? each.reason.code : 'answered',
      );
      expect(new Set(codes.slice(0, -1))).toEqual(new Set(['STORE_READER_FAILED']));
      expect(codes.at(-1)).toBe('STORE_READER_BUSY');
    });
  });

  test('that dies refuses what waits, and the next question begins another', async () => {
    const reader = new SeriesReader('', new URL('./dying-thread.ts', import.meta.url));
    for (let attempt = 0; attempt < 2; attempt += 1) {
      await expect(reader.series({ ...ask, open: [] })).rejects.toThrow('ended with code 3');
    }
    await reader.close();
  });

  test('when closed refuses what waits', async () => {
    const reader = new SeriesReader('/nowhere/at/all');
    const asking = reader.series({ ...ask, open: [] });
    const closing = reader.close();
    await expect(asking).rejects.toThrow('the store is closing');
    await closing;
  });
});
