/** Rows of a CSV file that give no usable reading: counted, and the first named with line and reason. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forebond, scratchFolder, siteFile } from '#tests/agent-process.ts';

const works = {
  site: 'works',
  timezone: 'Etc/UTC',
  lines: {
    m: {
      room: {
        kind: 'custom',
        signals: { air: { topic: 'm/air', payload: { kind: 'plain' }, unit: 'Cel' } },
      },
    },
  },
};

function scene(rows: readonly string[]) {
  const folder = scratchFolder();
  const csv = join(folder, 'recorded.csv');
  const line = (row: string, i: number): string =>
    `${new Date(Date.UTC(2026, 0, 5, 0, i)).toISOString()},m/room/air,${row}`;
  writeFileSync(csv, `time,signal,value,unit,quality\n${rows.map(line).join('\n')}\n`);
  return ['replay', '--site', siteFile(folder, works), '--from', csv, '--bad-rows', '9'];
}

const seven = ['35,bar,', '36,bar,', 'warm,,', '37,bar,', '38,bar,', '39,bar,', '40,bar,'];
const rows = ['20,Cel,', ...seven, '21,,', ',,bad'];

test('they are counted apart from the samples, and the first five named at the end', async () => {
  const { code, stdout } = await forebond(scene(rows));
  expect(code).toBe(0);
  expect(stdout.split('\n').slice(-8)).toEqual(
    [
      expect.stringMatching(/^3 samples, 0.2 h of data, /),
      '7 rows gave no usable reading:',
      '  line 3: m/room/air: it came in another unit than promised',
      '  line 4: m/room/air: it came in another unit than promised',
      '  line 5: "warm" is no number',
      '  line 6: m/room/air: it came in another unit than promised',
      '  line 7: m/room/air: it came in another unit than promised',
      '  and 2 more',
      '',
    ].slice(-8),
  );
});

test('as JSON, and in a comparison', async () => {
  const words = scene(rows.slice(0, 3));
  const last = (text: string): Record<string, unknown> =>
    JSON.parse(text.trim().split('\n').at(-1)!);
  const bad = { count: 2, first: [{ line: 3 }, { line: 4 }] };
  const { stdout } = await forebond([...words, '--json']);
  expect(last(stdout)).toMatchObject({ samples: 1, bad_rows: bad });
  const both = [...words, '--compare', words[2]!];
  expect(last((await forebond([...both, '--json'])).stdout)).toMatchObject({ bad_rows: bad });
  expect((await forebond(both)).stdout).toMatch(/^2 rows gave no usable reading:\n {2}line 3: /m);
});

test('a file without one says nothing of it', async () => {
  const { stdout } = await forebond(scene(['20,Cel,', '21,,']));
  expect(stdout).not.toMatch(/usable/);
});
