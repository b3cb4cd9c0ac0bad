/** The real command: its exit codes, and what a broken site file makes it say. */
import { mkdirSync, writeFileSync } from 'node:fs';
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

/** Exit code and command line; names in capitals are paths that the test makes, or leaves unmade. */
const cases: readonly (readonly [number, string])[] = [
  [0, '--version'],
  [0, '--help'],
  [0, 'help'],
  [0, 'run --help'],
  [2, ''],
  [2, '--nonsense'],
  [2, 'nonsense'],
  [2, 'run'],
  [2, 'run --site SITE --http nowhere'],
  [2, 'run --site SITE --mqtt 127.0.0.1:70000'],
  [2, 'run --site SITE --clock sun'],
  [2, 'run --site SITE --space-gb -1'],
  [1, 'run --site NOTHING --data DATA'],
  [1, 'run --site SITE --data DATA --clock samples'],
  [1, 'run --site SITE --data CSV'],
  [1, 'run --site SITE --data DATA --http 0.0.0.0:0 --mqtt 127.0.0.1:0'],
  [1, 'run --site SITE --data DATA --http 127.0.0.1:0 --mqtt 0.0.0.0:0'],
  [0, 'check SITE'],
  [1, 'check NOTHING'],
  [2, 'check'],
  [0, 'replay --site SITE --from CSV'],
  [0, 'replay --site SITE --from CSV --json'],
  [1, 'replay --site SITE --from NOTHING'],
  [1, 'replay --site SITE --from TEXT'],
  [2, 'replay --site SITE'],
  [2, 'replay --site SITE --from CSV --since yesterday'],
  [2, 'replay --site SITE --from CSV --bad-rows some'],
  [1, 'export --data NOTHING --signal m/room/air --since 2026-01-01T00:00:00Z'],
  [2, 'export --data NOTHING --format tape'],
  [1, 'ledger verify --data NOTHING'],
  [2, 'ledger'],
  [0, 'device add oven --publish oven/# --data DATA'],
  [1, 'device add oven --publish oven/# --data DATA'],
  [2, 'device add lamp --data DATA'],
  [0, 'device list --data DATA'],
  [0, 'device remove oven --data DATA'],
  [1, 'device remove oven --data DATA'],
  [2, 'device remove'],
  [2, 'export --data EMPTY'],
  [2, 'replay --site SITE --from EMPTY'],
  [1, 'export --data NOTHING'],
  [1, 'ledger verify --data NOTHING'],
  [1, 'user list --data NOTHING'],
  [1, 'run --site SITE --data /proc/forebond'],
];

test('exit codes: 0 done, 1 the input is at fault, 2 the command line is', async () => {
  const folder = scratchFolder();
  const paths: Readonly<Record<string, string>> = {
    SITE: siteFile(join(folder, 'works'), worksSite),
    DATA: join(folder, 'data'),
    CSV: join(folder, 'recorded.csv'),
    NOTHING: join(folder, 'nothing'),
    TEXT: join(folder, 'text'),
    EMPTY: '',
  };
  writeFileSync(paths.CSV!, 'time,signal,value\n2026-01-01T00:00:00Z,m/room/air,20\n');
  mkdirSync(paths.DATA!);
  mkdirSync(paths.TEXT!);
  writeFileSync(join(paths.TEXT!, 'forebond.sqlite'), 'a text');
  const found: (readonly [number | null, string])[] = [];
  const longWinded: string[] = [];
  for (const [, line] of cases) {
    const words = line.split(' ').filter((word) => word !== '');
    const { code, stderr } = await forebond(words.map((word) => paths[word] ?? word));
    found.push([code, line]);
    if (code === 1 && stderr.trimEnd().split('\n').length !== 1) longWinded.push(stderr);
  }
  expect(found).toEqual(cases);
  expect(longWinded).toEqual([]);
}, 240_000);

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
