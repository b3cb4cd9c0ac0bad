/** The real command: its exit codes, and what a broken site file makes it say. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forebond, scratchFolder, siteFile } from '#tests/agent-process.ts';
import { worksSite } from './works-site.ts';

const broken = `site: Works
timezone: Europe/Dublinn
lines:
  mounts:
    store-1:
      kind: adhesive-stor
    bench:
      kind: custom
      signals:
        t:
          topic: bench/t
          payload: { kind: plain }
          unit: Celsius
      rules:
        warm: { kind: band, signal: tt, high: 30 Cel, priority: urgent }
`;
/** Line, and the path that the problem names, for each fault written above. */
const faults: readonly (readonly [number, string])[] = [
  [1, 'site'],
  [2, 'timezone'],
  [6, 'lines.mounts.store-1.kind'],
  [13, 'lines.mounts.bench.signals.t.unit'],
  [15, 'lines.mounts.bench.rules.warm.consequence'],
  [15, 'lines.mounts.bench.rules.warm.actions'],
  [15, 'lines.mounts.bench.rules.warm.signal'],
  [15, 'lines.mounts.bench.rules.warm.priority'],
];

test.each(['check', 'run', 'replay'])(
  '%s lists every problem of a broken site file',
  async (name) => {
    const folder = scratchFolder();
    const file = join(folder, 'site.yaml');
    writeFileSync(file, broken);
    const data = ['--data', join(folder, 'data'), '--http', '127.0.0.1:0', '--mqtt', '127.0.0.1:0'];
    const words = {
      check: ['check', file],
      run: ['run', '--site', file, ...data],
      replay: ['replay', '--site', file, '--from', folder],
    }[name]!;
    const { code, stdout, stderr } = await forebond(words);
    expect(code).toBe(1);
    // check answers on standard output; the others complain.
    const lines = (name === 'check' ? stdout : stderr).trimEnd().split('\n');
    expect(name === 'check' ? stderr : stdout).toBe('');
    for (const line of lines) expect(line).toMatch(/^\S+site\.yaml:\d+:\d+ \S+: .+\. \S.+$/);
    for (const [line, path] of faults)
      expect(
        lines.filter((each) => each.startsWith(`${file}:${line}:`) && each.includes(` ${path}: `)),
      ).toHaveLength(1);
    expect(lines).toHaveLength(faults.length);
  },
);

test('exit codes: 0 done, 1 the input is at fault, 2 the command line is', async () => {
  const folder = scratchFolder();
  const site = siteFile(join(folder, 'works'), worksSite);
  const data = join(folder, 'data');
  const csv = join(folder, 'recorded.csv');
  writeFileSync(csv, 'time,signal,value\n2026-01-01T00:00:00Z,m/room/air,20\n');
  const nothing = join(folder, 'nothing');
  const text = join(folder, 'text');
  siteFile(text, {});
  writeFileSync(join(text, 'forebond.sqlite'), 'a text');
  const cases: readonly (readonly [number, readonly string[]])[] = [
    [0, ['--version']],
    [0, ['--help']],
    [0, ['help']],
    [0, ['run', '--help']],
    [2, []],
    [2, ['--nonsense']],
    [2, ['nonsense']],
    [2, ['run']],
    [2, ['run', '--site', site, '--http', 'nowhere']],
    [2, ['run', '--site', site, '--mqtt', '127.0.0.1:70000']],
    [2, ['run', '--site', site, '--clock', 'sun']],
    [2, ['run', '--site', site, '--space-gb', '-1']],
    [1, ['run', '--site', nothing, '--data', data]],
    [1, ['run', '--site', site, '--data', data, '--clock', 'samples']],
    [1, ['run', '--site', site, '--data', csv]],
    [1, ['run', '--site', site, '--data', data, '--http', '0.0.0.0:0', '--mqtt', '127.0.0.1:0']],
    [1, ['run', '--site', site, '--data', data, '--http', '127.0.0.1:0', '--mqtt', '0.0.0.0:0']],
    [0, ['check', site]],
    [1, ['check', nothing]],
    [2, ['check']],
    [0, ['replay', '--site', site, '--from', csv]],
    [0, ['replay', '--site', site, '--from', csv, '--json']],
    [1, ['replay', '--site', site, '--from', nothing]],
    [1, ['replay', '--site', site, '--from', text]],
    [2, ['replay', '--site', site]],
    [2, ['replay', '--site', site, '--from', csv, '--since', 'yesterday']],
    [2, ['replay', '--site', site, '--from', csv, '--bad-rows', 'some']],
    [
      1,
      [
        'export',
        '--data',
        nothing,
        '--signal',
        'm/room/air',
        '--since',
        '2026-01-01T00:00:00Z',
        '--until',
        '2026-01-02T00:00:00Z',
        '--format',
        'csv',
      ],
    ],
    [2, ['export', '--format', 'parquet']],
    [1, ['ledger', 'verify', '--data', nothing]],
    [2, ['ledger']],
    [0, ['device', 'add', 'oven', '--publish', 'oven/#', '--data', data]],
    [1, ['device', 'add', 'oven', '--publish', 'oven/#', '--data', data]],
    [2, ['device', 'add', 'lamp', '--data', data]],
    [0, ['device', 'list', '--data', data]],
    [0, ['device', 'remove', 'oven', '--data', data]],
    [1, ['device', 'remove', 'oven', '--data', data]],
    [2, ['device', 'remove']],
  ];
  const found: (readonly [number | null, string])[] = [];
  const said: string[] = [];
  for (const [, words] of cases) {
    const { code, stderr } = await forebond(words);
    found.push([code, words.join(' ')]);
    // One line of what is wrong; usage may take two.
    if (code === 1 && stderr.trimEnd().split('\n').length !== 1) said.push(stderr);
  }
  expect(found).toEqual(cases.map(([code, words]) => [code, words.join(' ')]));
  expect(said).toEqual([]);
}, 90_000);

test('settings that come from the environment are checked like the flags', async () => {
  const folder = scratchFolder();
  const site = siteFile(folder, worksSite);
  const { code, stderr } = await forebond(['run', '--site', site], '', {
    FOREBOND_HTTP: 'nowhere',
  });
  expect(code).toBe(2);
  expect(stderr).toMatch(/FOREBOND_HTTP/);
  expect((await forebond(['check', site], '', { FOREBOND_HTTP: 'nowhere' })).code).toBe(0);
});

test('a site without a fault is told in a few lines', async () => {
  const folder = scratchFolder();
  const { code, stdout } = await forebond(['check', siteFile(folder, worksSite)]);
  expect(code).toBe(0);
  expect(stdout).toContain('works: ');
});
