import { Command } from 'commander';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { exportCommand } from '../../../agent/cli/export.ts';
import type { StoredSignal } from '../../../agent/store/contract.ts';
import { csvText } from '../../../agent/web/csv-cell.ts';
import { quality } from '../../../rules/signal/quality.ts';
import { epoch } from '../store/patterns.ts';
import { RecordBuilder } from '../store/record-builder.ts';

const signals: StoredSignal[] = [
  { id: 1, name: 'm/s/air', unit: 'Cel', digits: 1, kind: 'measured' },
  { id: 2, name: '-m/s/odd', unit: '=1+1', digits: 1, kind: 'measured' },
];

async function call(folder: string, ...words: string[]) {
  let [text, exit] = ['', -1];
  const warnings: string[] = [];
  const program = new Command().exitOverride().configureOutput({ writeErr: () => {} });
  exportCommand(program, {
    defaultFolder: folder,
    write: async (more) => {
      text += more;
      return true;
    },
    warn: (line) => warnings.push(line),
    setExitCode: (code) => {
      exit = code;
    },
  });
  await program.parseAsync(['export', ...words], { from: 'user' });
  return { text, warnings, exit };
}

function fill(record: RecordBuilder): void {
  const add = (ms: number, signal: number, value: number, code: number): void => {
    const at = epoch + ms;
    record.samples(at, [{ signal, at, judged: at, value, quality: code, flags: 0 }]);
  };
  add(0, 0, -5.5, 0);
  add(20, 1, 1, quality.jump);
  record.seal();
  add(3_600_000, 0, 0, quality.outOfRange);
}

const whole =
  'time,signal,value,unit,quality,cause\r\n' +
  '2026-01-01T00:00:00.000Z,m/s/air,-5.5,Cel,good,\r\n' +
  "2026-01-01T00:00:00.020Z,'-m/s/odd,1,'=1+1,uncertain,changed faster than it plausibly can\r\n" +
  '2026-01-01T01:00:00.000Z,m/s/air,,Cel,bad,outside what the sensor can read\r\n';

const run = async (work: (record: RecordBuilder) => Promise<void>): Promise<void> => {
  const record = new RecordBuilder(signals);
  try {
    fill(record);
    await work(record);
  } finally {
    record.dispose();
  }
};

test('all signals, sealed and open, numbers as numbers and no text a formula', () =>
  run(async ({ folder }) => {
    expect(await call(folder)).toEqual({ text: whole, warnings: [], exit: 0 });
  }));

test('chosen signals of a span', () =>
  run(async ({ folder }) => {
    const words = ['--signal', 'm/s/air', '--signal=-m/s/odd', '--format', 'csv'];
    const span = ['--since', '2026-01-01T00:00:00.010Z', '--until', '2026-01-01T02:00:00+01:00'];
    const { text } = await call(folder, ...words, ...span);
    expect(text.split('\r\n')).toEqual([
      'time,signal,value,unit,quality,cause',
      "2026-01-01T00:00:00.020Z,'-m/s/odd,1,'=1+1,uncertain,changed faster than it plausibly can",
      '',
    ]);
  }));

test('a span without samples is a header alone', () =>
  run(async ({ folder }) => {
    const { text, exit } = await call(folder, '--since', '2030-01-01T00:00:00Z');
    expect([text, exit]).toEqual(['time,signal,value,unit,quality,cause\r\n', 0]);
  }));

test('what could not be read is said, and the exit code is 1', () =>
  run(async ({ folder, db }) => {
    db.exec('UPDATE body SET crc = crc + 1 WHERE id = 1');
    const { text, warnings, exit } = await call(folder, '--signal', 'm/s/air');
    expect(text.split('\r\n')).toHaveLength(3);
    expect(warnings).toEqual([
      'left out: m/s/air from 2026-01-01T00:00:00.000Z to 2026-01-01T00:00:00.000Z: ' +
        'Stored samples cannot be read: the checksum does not hold.',
    ]);
    expect(exit).toBe(1);
  }));

test.each([
  ['--since', 'yesterday'],
  ['--format', 'xml'],
])('%s %s is refused', (...words) =>
  run(async ({ folder }) => {
    await expect(call(folder, ...words)).rejects.toMatchObject({
      code: 'commander.invalidArgument',
    });
  }),
);

test('a cell of text comes back from a reader of RFC 4180 as it was, or with an apostrophe before it', () => {
  const texts = ['plain', 'a,b', 'a "b"', 'two\r\nlines', '=1+1', '+1', '-1', '@x', '\tx'];
  const [cells] = parse(texts.map(csvText).join(',')) as string[][];
  expect(cells).toEqual(texts.map((text) => (/^[=+\-@\t]/.test(text) ? `'${text}` : text)));
});
