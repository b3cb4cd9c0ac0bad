/** Recorded data as people have them: encodings, separators, decimal signs, times, bad rows. */
import { expect, test } from 'vitest';
import { AgentError } from '#agent/errors.ts';
import { type BadRow, type CsvOptions, type RecordedRow, readRecorded } from '#agent/replay/csv.ts';
import { quality } from '#rules/signal/quality.ts';

async function* inChunks(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let i = 0; i < bytes.length; i += size) yield bytes.subarray(i, i + size);
}

interface Read {
  readonly rows: RecordedRow[];
  readonly bad: BadRow[];
}

async function read(
  file: string | Uint8Array,
  options: Partial<CsvOptions> = {},
  chunkBytes = 7,
): Promise<Read> {
  const bad: BadRow[] = [];
  const rows: RecordedRow[] = [];
  const bytes = typeof file === 'string' ? Buffer.from(file, 'utf8') : file;
  const all = { path: 'run.csv', onBadRow: (row: BadRow) => bad.push(row), ...options };
  for await (const block of readRecorded(inChunks(bytes, chunkBytes), all)) rows.push(...block);
  return { rows, bad };
}

const refusal = async (file: string | Uint8Array, options: Partial<CsvOptions> = {}) => {
  const error = await read(file, options).catch((thrown: unknown) => thrown);
  if (!(error instanceof AgentError)) throw new Error('not refused', { cause: error });
  return { code: error.code, message: error.message };
};

const t0 = Date.UTC(2026, 10, 25, 9, 0, 0);
const row = (line: number, timeMs: number, signal: string, value: number): RecordedRow => ({
  line,
  timeMs,
  signal,
  value,
  unit: null,
  quality: quality.good,
});
const air = 'mounts-2/store-1/air';

const utf16 = (text: string, bigEndian: boolean): Uint8Array => {
  const bytes = Buffer.from(`\ufeff${text}`, 'utf16le');
  return bigEndian ? bytes.swap16() : bytes;
};
const long = `time,signal,value\n2026-11-25T09:00:00Z,${air},-21.5\n${t0 + 1000},${air},22\n`;
const semicolon = long.replaceAll(',', ';').replace('-21.5', '-21,5');
const encodings: readonly (readonly [string, string | Uint8Array])[] = [
  ['UTF-8', long],
  ['UTF-8 with a mark', `\ufeff${long}`],
  ['UTF-16 little-endian', utf16(long, false)],
  ['UTF-16 big-endian', utf16(long, true)],
  ['CRLF', long.replaceAll('\n', '\r\n')],
  ['no end of the last line', long.trimEnd()],
  ['semicolon and decimal comma', semicolon],
  ['semicolon and decimal point', long.replaceAll(',', ';')],
  ['tab and decimal comma, UTF-16', utf16(semicolon.replaceAll(';', '\t'), false)],
  ['quoted cells', long.replace(/[^,\n]+/g, '"$&"')],
  ['spaces around cells', long.replaceAll(',', ' , ')],
  ['capitals in the header', long.replace('time,signal,value', 'Time,Signal,Value')],
];
test.each(encodings)('%s', async (_, file) => {
  for (const chunkBytes of [1, 2, 3, 64, 100_000]) {
    expect(await read(file, {}, chunkBytes)).toEqual({
      rows: [row(2, t0, air, -21.5), row(3, t0 + 1000, air, 22)],
      bad: [],
    });
  }
});

test('empty lines count as lines and are no rows', async () => {
  const { rows, bad } = await read(`\n${long.replaceAll('\n', '\n \n')}`);
  expect(rows.map((read) => read.line)).toEqual([4, 6]);
  expect(bad).toEqual([]);
});

test('wide: a column a signal, an empty cell is no reading', async () => {
  const file = `time;a/b/c;a/b/d\n${t0};1,5;\n${t0 + 1};;-2\n${t0 + 2};;\n${t0 + 3};NaN;3\n`;
  expect(await read(file)).toEqual({
    rows: [
      row(2, t0, 'a/b/c', 1.5),
      row(3, t0 + 1, 'a/b/d', -2),
      row(5, t0 + 3, 'a/b/c', Number.POSITIVE_INFINITY),
      row(5, t0 + 3, 'a/b/d', 3),
    ],
    bad: [],
  });
});

test('wide: a row of thousands of signals', async () => {
  const signals = Array.from(
    { length: 4_000 },
    (_, i) => `line-with-a-long-name/station/signal-${i}`,
  );
  const file = `time,${signals.join(',')}\n${t0}${',1'.repeat(4_000)}\n`;
  expect(file.indexOf('\n')).toBeGreaterThan(128_000);
  const { rows, bad } = await read(file, {}, 65_536);
  expect(bad).toEqual([]);
  expect(rows).toHaveLength(4_000);
});

test('long: unit and quality in either order', async () => {
  const file = [
    'time,signal,value,quality,unit',
    `${t0},a/b/c,70.7,good,[degF]`,
    `${t0},a/b/c,70.7,uncertain,`,
    `${t0},a/b/c,,bad,`,
    `${t0},a/b/c,1,,Cel`,
    `${t0},a/b/c,1e400,,`,
  ].join('\n');
  const { rows, bad } = await read(file);
  expect(bad).toEqual([]);
  expect(rows.map(({ value, unit, quality: code }) => [value, unit, code])).toEqual([
    [70.7, '[degF]', quality.good],
    [70.7, null, quality.sensorUncertain],
    [Number.NaN, null, quality.sensorBad],
    [1, 'Cel', quality.good],
    [Number.POSITIVE_INFINITY, null, quality.good],
  ]);
});

const goodRows = (count: number): string =>
  Array.from({ length: count }, (_, i) => `${t0 + i},a/b/c,1,good\n`).join('');
const header = 'time,signal,value,quality\n';

test.each([
  ['nothing like a row', 'it has 1 cell and the header 4'],
  [`${t0},a/b/c,1`, 'it has 3 cells and the header 4'],
  [`${t0},a/b/c,1,5,good`, 'it has 5 cells and the header 4'],
  ['yesterday,a/b/c,1,good', '"yesterday" is no time'],
  ['1969-12-31T23:59:59Z,a/b/c,1,good', '"1969-12-31T23:59:59Z" is no time'],
  [`${t0},,1,good`, 'it names no signal'],
  [`${t0},a/b/c,,good`, 'it has no value'],
  [`${t0},a/b/c,hot,good`, '"hot" is no number'],
  [`${t0},a/b/c,"1,5",good`, '"1,5" is no number'],
  [`${t0},a/b/c,1,0`, '"0" is no quality: good, uncertain or bad'],
  [`${t0},a/b/c,"1,good`, 'its quotes do not match'],
  [`${t0},a/b/c,1"2,good`, 'its quotes do not match'],
  [`${t0},a/b/c,1,"good" x`, 'its quotes do not match'],
  ['x'.repeat(300_000), 'it is longer than any row'],
])('a bad row is told with its line, and costs no other: %.40s', async (text, problem) => {
  const file = `${header}${goodRows(150)}${text}\n${goodRows(150)}`;
  for (const chunkBytes of [1000, 1_000_000]) {
    const { rows, bad } = await read(file, {}, chunkBytes);
    expect(bad).toEqual([{ line: 152, problem }]);
    expect(rows).toHaveLength(300);
    expect(rows[150]?.line).toBe(153);
  }
});

test('one row in a hundred may be bad; more stop, at the end', async () => {
  const { bad } = await read(`${header}hot\n${goodRows(99)}`);
  expect(bad).toHaveLength(1);
  expect(await refusal(`${header}${goodRows(1)}hot\n${goodRows(97)}`)).toEqual({
    code: 'CSV_BAD_ROWS',
    message:
      '1 of the 99 rows of run.csv cannot be read, the first in line 3: it has 1 cell and the header 4.',
  });
});

test('an allowed number of bad rows stands instead of the share', async () => {
  const file = `${header}hot\nhot\n${goodRows(1)}`;
  expect((await read(file, { badRowsMax: 2 })).rows).toHaveLength(1);
  expect((await refusal(file, { badRowsMax: 1 })).code).toBe('CSV_BAD_ROWS');
  expect((await refusal(`${header}hot\n${goodRows(5_000)}`, { badRowsMax: 0 })).code).toBe(
    'CSV_BAD_ROWS',
  );
});

test('the first decimal sign of a file is its sign; the other could group thousands', async () => {
  const allowed = { badRowsMax: 9 };
  const comma = await read(`time;a\n${t0};7\n${t0};1,5\n${t0};1.500\n${t0};1.500,5\n`, allowed);
  expect(comma.rows.map(({ value }) => value)).toEqual([7, 1.5]);
  expect(comma.bad.map(({ line }) => line)).toEqual([4, 5]);
  const point = await read(`time\ta\n${t0}\t1.5\n${t0}\t1,500\n${t0}\t2.5\n`, allowed);
  expect(point.rows.map(({ value }) => value)).toEqual([1.5, 2.5]);
  expect(point.bad).toEqual([{ line: 3, problem: '"1,500" of a is no number' }]);
});

test.each([
  ['', 'it is empty'],
  ['\n\n', 'it is empty'],
  ['time\n1\n', 'it has one column'],
  ['when,signal,value\n', 'its first column is "when" and not "time"'],
  ['time,a,,b\n', 'column 3 has no name'],
  ['time,a,b,a\n', 'the column "a" is there twice'],
  [
    'time,signal,value,colour\n',
    'after "time,signal,value" it may have "unit", "quality" and "cause", not "colour"',
  ],
  ['"time,a\n', 'its quotes do not match'],
])('a header that is none: %j', async (file, problem) => {
  expect(await refusal(file)).toEqual({
    code: 'CSV_HEADER',
    message: `The first line of run.csv is no header of recorded data: ${problem}.`,
  });
});

test('bytes that are no text in UTF-8 or marked UTF-16', async () => {
  const latin = Buffer.from(`${long}${t0},Öl,1\n`, 'latin1');
  expect((await refusal(latin)).code).toBe('CSV_ENCODING');
  expect((await refusal(Buffer.from(long, 'utf16le'))).code).toBe('CSV_ENCODING');
  const cut = Buffer.concat([Buffer.from(long), Buffer.of(0xc3)]);
  expect((await refusal(cut)).code).toBe('CSV_ENCODING');
});

test('local times need a zone, and a zone must exist', async () => {
  const file = 'time,a\n2026-07-01 09:00,1\n2026-07-01T09:00:30.25,2\n2026-12-01 09:00:05,3\n';
  expect((await refusal(file)).message).toBe(
    'The time "2026-07-01 09:00" in line 2 of run.csv is local, and nobody said where.',
  );
  expect((await refusal(file, { timezone: 'Atlantis/Poseidonis' })).code).toBe(
    'CSV_TIMEZONE_UNKNOWN',
  );
  const { rows } = await read(file, { timezone: 'Europe/Dublin' });
  expect(rows.map(({ timeMs }) => timeMs)).toEqual([
    Date.UTC(2026, 6, 1, 8, 0, 0),
    Date.UTC(2026, 6, 1, 8, 0, 30, 250),
    Date.UTC(2026, 11, 1, 9, 0, 5),
  ]);
  // A time with its own offset needs none, and keeps it beside local ones.
  const mixed = await read('time,a\n2026-07-01T09:00:00Z,1\n', { timezone: 'Asia/Tokyo' });
  expect(mixed.rows[0]?.timeMs).toBe(Date.UTC(2026, 6, 1, 9));
});
