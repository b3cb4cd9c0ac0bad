import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StoredSignal } from '../../../agent/store/contract.ts';
import { type RecordItem, type RecordOptions, readRecord } from '../../../agent/store/reader.ts';
import { type Input, inputOrder } from '../../../rules/input.ts';
import { SampleBatch, sampleFlag } from '../../../rules/signal/sample.ts';
import { epoch } from './patterns.ts';
import { type RecordBuilder, type SignalSample, withRecord } from './record-builder.ts';

/** Names and ids are in different orders; 'z/z/derived' is not part of the record. */
const signals: StoredSignal[] = [
  { id: 1, name: 'm/s/c', unit: 'Cel', digits: 1, kind: 'measured' },
  { id: 2, name: 'm/s/B', unit: 'Cel', digits: 1, kind: 'measured' },
  { id: 5, name: 'm/s/a', unit: 'Cel', digits: null, kind: 'manual' },
  { id: 3, name: 'm/s/derived', unit: 'Cel', digits: 2, kind: 'derived' },
];
const measuredCount = 3;
/** Plain code-unit order of the names: B before a before c. */
const placeOf = [2, 0, 1];

interface Step {
  readonly waitMs: number;
  readonly seal: boolean;
  readonly clean: boolean;
  /** [signal, how long before the beat it held, value] */
  readonly samples: readonly (readonly [number, number, number])[];
  readonly input: 'gap' | 'site' | 'command' | 'rebase' | null;
}

const anyStep: fc.Arbitrary<Step> = fc.record({
  waitMs: fc.constantFrom(0, 20, 20, 20, 40, 1_000, 70_000),
  seal: fc.integer({ min: 0, max: 5 }).map((n) => n === 0),
  clean: fc.boolean(),
  samples: fc.array(
    fc.tuple(
      fc.integer({ min: 0, max: measuredCount - 1 }),
      fc.constantFrom(0, 10, 30, 30, 500, 5_000, 700_000),
      fc.integer({ min: -50, max: 50 }).map((k) => k / 10 + 0),
    ),
    { maxLength: 5 },
  ),
  input: fc.oneof(
    { weight: 8, arbitrary: fc.constant(null) },
    {
      weight: 2,
      arbitrary: fc.constantFrom<Step['input']>('gap', 'site', 'command', 'command', 'rebase'),
    },
  ),
});

/** Signal 1 has a hold of 2 s, signal 2 of 50 ms, signal 0 is stamped on arrival. */
const holdsMs = [0, 2_000, 50];
const setBackMs = 700_000;

function sampleAt(beatMs: number, [signal, ageMs, value]: Step['samples'][number]): SignalSample {
  const holdMs = holdsMs[signal]!;
  const at = holdMs === 0 ? beatMs : beatMs - ageMs;
  const late = beatMs - at > 600_000;
  const judged = late ? beatMs : Math.max(at + holdMs, beatMs);
  return { signal, at, judged, value, quality: 0, flags: late ? sampleFlag.late : 0 };
}

function inputAt(kind: NonNullable<Step['input']>, judged: number, n: number): Input {
  if (kind === 'gap') return { kind, judged, fromMs: judged - 20, toMs: judged };
  if (kind === 'site') return { kind, judged, revision: `r${n}` };
  if (kind === 'rebase') return { kind, judged, deltaMs: -setBackMs };
  return { kind, judged, verb: 'acknowledge', occurrence: `o${n}`, by: 'p' };
}

type Written =
  | { readonly seq: number; readonly sample: SignalSample }
  | { readonly seq: number; readonly input: Input };

/** Writes the steps and returns all that was written, in the order of arrival. */
function play(record: RecordBuilder, steps: readonly Step[]): Written[] {
  const written: Written[] = [];
  let beatMs = epoch;
  for (const step of steps) {
    beatMs += step.waitMs;
    const samples = step.samples.map((drawn) => sampleAt(beatMs, drawn));
    if (samples.length > 0) {
      record.samples(beatMs, samples);
      written.push(...samples.map((sample) => ({ seq: record.seq, sample })));
      const derived = new SampleBatch(1);
      derived.push(measuredCount, beatMs, beatMs, 1, 0, 0);
      record.derived(derived);
    }
    if (step.input !== null) {
      const input = inputAt(step.input, beatMs, record.seq + 1);
      record.input(input);
      written.push({ seq: record.seq, input });
      if (step.input === 'rebase') beatMs += 20 - setBackMs;
    }
    if (step.seal && record.hasOpenRows) record.seal(step.clean);
  }
  return written;
}

const text = (written: Written, held = false): string =>
  'input' in written
    ? `input ${written.seq} ${written.input.kind} ${written.input.judged - epoch}`
    : `${held ? 'held ' : ''}${signals[written.sample.signal]!.name} at ${written.sample.at - epoch}` +
      ` judged ${written.sample.judged - epoch} = ${written.sample.value} ${written.sample.flags}`;

const momentOf = (written: Written): number[] =>
  'input' in written
    ? [written.input.judged, inputOrder[written.input.kind], 0, 0, written.seq]
    : [
        written.sample.judged,
        inputOrder.sample,
        placeOf[written.sample.signal]!,
        written.sample.at,
        written.seq,
      ];

const byMoment = (a: Written, b: Written): number => {
  const [left, right] = [momentOf(a), momentOf(b)];
  return left.map((part, i) => part - right[i]!).find((difference) => difference !== 0) ?? 0;
};

/** The order by definition: sort everything; where the clock was set back, take what waits first. */
function naively(written: readonly Written[]): string[] {
  const out: string[] = [];
  let waiting: Written[] = [];
  for (const each of written) {
    if (!('input' in each) || each.input.kind !== 'rebase') {
      waiting.push(each);
      continue;
    }
    waiting.sort(byMoment);
    const due = waiting.filter((other) => byMoment(other, each) < 0);
    const held = waiting.filter((other) => byMoment(other, each) > 0 && 'sample' in other);
    waiting = waiting.filter((other) => byMoment(other, each) > 0 && 'input' in other);
    out.push(...due.map((other) => text(other)), ...held.map((other) => text(other, true)));
    out.push(text(each));
  }
  return [...out, ...waiting.toSorted(byMoment).map((other) => text(other))];
}

function read(folder: string, options: RecordOptions = {}): string[] {
  const out: string[] = [];
  for (const item of readRecord(folder, options)) out.push(...lines(item));
  return out;
}

function lines(item: RecordItem): string[] {
  if (item.kind === 'input') return [text(item)];
  if (item.kind === 'damage') return [`damage ${item.signal} ${item.fromMs} ${item.reason}`];
  const { batch } = item;
  return Array.from({ length: batch.count }, (_, i) =>
    text(
      {
        seq: 0,
        sample: {
          signal: signals.findIndex((signal) => signal.id === batch.signal[i]),
          at: batch.at[i]!,
          judged: batch.judged[i]!,
          value: batch.value[i]!,
          quality: batch.quality[i]!,
          flags: batch.flags[i]!,
        },
      },
      item.held,
    ),
  );
}

test('the record is read in the order of judgement, wherever it was sealed', () => {
  fc.assert(
    fc.property(fc.array(anyStep, { maxLength: 30 }), (steps) => {
      withRecord(signals, (record) => {
        const written = play(record, steps);
        expect(read(record.folder)).toEqual(naively(written));
      });
    }),
    { numRuns: 1_000 },
  );
}, 120_000);

test('a part by time is the whole record’s part', () => {
  const withoutRebase = anyStep.map((step) =>
    step.input === 'rebase' ? { ...step, input: null } : step,
  );
  fc.assert(
    fc.property(
      fc.array(withoutRebase, { maxLength: 30 }),
      fc.integer({ min: -1_000, max: 200_000 }),
      fc.integer({ min: 0, max: 200_000 }),
      (steps, fromMs, spanMs) => {
        withRecord(signals, (record) => {
          const written = play(record, steps);
          const [sinceMs, untilMs] = [epoch + fromMs, epoch + fromMs + spanMs];
          const wanted = written.filter((each) => {
            const [judged] = momentOf(each);
            return judged! >= sinceMs && judged! < untilMs;
          });
          expect(read(record.folder, { sinceMs, untilMs })).toEqual(naively(wanted));
        });
      },
    ),
    { numRuns: 300 },
  );
}, 120_000);

test('from the end of a segment on, nothing of it or of those before comes', () => {
  withRecord(signals, (record) => {
    const sample = (signal: number, at: number) => sampleAt(at, [signal, 0, 1]);
    record.samples(epoch, [sample(0, epoch)]);
    record.seal();
    const { sealedSeq } = record;
    record.samples(epoch + 20, [sample(0, epoch + 20)]);
    record.seal();
    record.samples(epoch + 40, [sample(0, epoch + 40)]);
    expect(read(record.folder, { fromSeq: sealedSeq }).map((line) => line.slice(0, 11))).toEqual([
      'm/s/c at 20',
      'm/s/c at 40',
    ]);
  });
});

describe('the plan of a reader', () => {
  const site: Input = { kind: 'site', judged: epoch + 40, revision: 'r' };
  const at = (beatMs: number) =>
    [0, 1, 2].map((signal) => ({
      ...sampleAt(epoch + beatMs, [signal, 0, signal]),
      judged: epoch + beatMs,
    }));

  test.each(['sealed', 'open'])('names the signals anew after a site input, %s', (where) => {
    withRecord(signals, (record) => {
      record.samples(epoch, at(0));
      record.input(site);
      record.samples(epoch + 60, at(60));
      if (where === 'sealed') record.seal();
      let plan = ['m/s/c', 'm/s/B'];
      const seen: [number, number][] = [];
      const indexOf = ({ name }: StoredSignal) => plan.indexOf(name);
      for (const item of readRecord(record.folder, { indexOf })) {
        if (item.kind === 'input') plan = ['m/s/a', 'm/s/c'];
        if (item.kind !== 'samples') continue;
        for (let i = 0; i < item.batch.count; i += 1) {
          seen.push([item.batch.signal[i]!, item.batch.value[i]!]);
        }
      }
      // value is the signal's place in `signals`; order within a moment is that of the names
      expect(seen).toEqual([
        [1, 1],
        [0, 0],
        [0, 2],
        [1, 0],
      ]);
    });
  });
});

describe('damage', () => {
  test('of a body is named, and everything else is read', () => {
    withRecord(signals, (record) => {
      const moments = [0, 20, 40];
      for (const ms of moments) {
        record.samples(
          epoch + ms,
          [0, 1].map((signal) => sampleAt(epoch + ms, [signal, 0, 1])),
        );
      }
      record.seal();
      const { body, data } = record.db
        .prepare('SELECT body, data FROM chunk JOIN body ON body.id = body WHERE signal = 2')
        .get() as { body: number; data: Uint8Array };
      data[3]! ^= 1;
      record.db.prepare('UPDATE body SET data = ? WHERE id = ?').run(data, body);
      const out = read(record.folder);
      expect(out).toHaveLength(1 + moments.length);
      expect(out[0]).toBe(
        `damage m/s/B ${epoch} Stored samples cannot be read: the checksum does not hold.`,
      );
      expect(out.slice(1).every((line) => line.startsWith('m/s/c'))).toBe(true);
    });
  });

  test('of a row of the log is named, and everything else is read', () => {
    withRecord(signals, (record) => {
      for (const ms of [0, 20, 40]) {
        record.samples(epoch + ms, [sampleAt(epoch + ms, [0, 0, 1])]);
      }
      record.db.exec('UPDATE input SET crc = crc + 1 WHERE seq = 2');
      expect(read(record.folder)).toEqual([
        `damage null ${epoch + 20} input 2 is damaged`,
        'm/s/c at 0 judged 0 = 1 0',
        'm/s/c at 40 judged 40 = 1 0',
      ]);
    });
  });

  test('a body given up to make room is named as that', () => {
    withRecord(signals, (record) => {
      record.samples(epoch, [sampleAt(epoch, [0, 0, 1])]);
      record.seal();
      record.db.exec('UPDATE body SET data = NULL');
      expect(read(record.folder)[0]).toContain('only their summaries were kept');
    });
  });
});

test('what is not a store is refused', () => {
  expect(() => [...readRecord('/nowhere/at/all')]).toThrow('There is no data folder');
});
