import { readFileSync } from 'node:fs';
import { mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readSite, readSiteText } from '#agent/site/read-site.ts';
import { pathText } from '#rules/site/problem.ts';
import { broken, expected } from './broken-site.ts';

const sample = 'docs/examples/sample-works/site.yaml';
const noFiles = async (file: string) => ({
  path: [],
  problem: `${file} cannot be read: there is no such file`,
  fix: 'Check the name.',
});

const problemsIn = async (text: string): Promise<string[]> => {
  const reading = await readSiteText(text, 'site.yaml', noFiles);
  if (reading.ok) return [];
  return reading.problems.map((p) => `${p.line}:${p.column} ${pathText(p.path)}: ${p.problem}`);
};

/** The site file of the outside contract, as it is fixed there. */
const contractSite = `site: demo-works
timezone: Europe/Dublin
materials:
  adhesive-a: materials/adhesive-a.yaml
lines:
  mounts-2:
    store-1:
      kind: adhesive-store
      material: adhesive-a
      signals:
        wall:
          topic: mounts-2/store-1/wall
          payload: { kind: json, value: /v, time: /t }
          unit: Cel
          resolution: 0.1
          expect_every: 60 s
        air:
          topic: mounts-2/store-1/air
          payload: { kind: plain }
          unit: "[degF]"
          calibration: [[32.0, 32.4], [77.0, 76.8]]
      rules:
        cold-adhesive: { low: 7 Cel, low_low: 5 Cel, on_delay: 10 min, deadband: 1 K }
    bench:
      kind: custom
      signals:
        t: { topic: "bench/+/t", names: [cell], payload: { kind: plain }, unit: Cel }
      rules:
        warm: { kind: band, signal: t, high: 30 Cel, on_delay: 0 s, priority: low, consequence: "…", actions: ["…"] }
`;

describe('a unit in brackets without its quotes', () => {
  const siteWith = (range: string, high: string): string => `site: works
timezone: Europe/Dublin
lines:
  a:
    bench:
      kind: custom
      signals:
        t: { topic: b/t, payload: { kind: plain }, unit: "[degF]", range: ${range} }
        y: { topic: b/y, payload: { kind: plain }, unit: Cell }
      rules:
        warm: { kind: band, signal: t, high: ${high}, priority: low, consequence: W, actions: [L] }
`;
  const cell = '9:58 lines.a.bench.signals.y.unit: "Cell" is no unit we take';

  test('is one line each, and nothing behind it is hidden', async () => {
    expect(await problemsIn(siteWith('["32 [degF]", "212 [degF]"]', '86 [degF]'))).toEqual([
      cell,
      '11:46 (file): 86 [degF] lacks its quotes',
    ]);
    expect(await problemsIn(siteWith('[32 [degF], 212 [degF]]', '30 Cel'))).toEqual([
      '8:76 (file): 32 [degF] lacks its quotes',
      '8:87 (file): 212 [degF] lacks its quotes',
      cell,
    ]);
    const bare = (await problemsIn(siteWith('32 [degF]', '-4.5 [degF]'))).map((line) =>
      line.replace(/^\S+ /, ''),
    );
    expect(bare).toEqual([
      '(file): 32 [degF] lacks its quotes',
      'lines.a.bench.signals.t.range: "32 [degF]" is not a list',
      'lines.a.bench.signals.y.unit: "Cell" is no unit we take',
      '(file): -4.5 [degF] lacks its quotes',
    ]);
  });

  test('the way out is written out', async () => {
    const reading = await readSiteText(siteWith('32 to 212', '86 [degF]'), 'site.yaml', noFiles);
    const fixes = reading.ok ? [] : reading.problems.map(({ fix }) => fix);
    expect(fixes).toContain('Write "86 [degF]".');
    expect(fixes.join()).toContain('as [0 Cel, 100 Cel] or ["32 [degF]", "212 [degF]"]');
  });
});

test('a unit taken for a list', async () => {
  const text = contractSite.replace('unit: "[degF]"', 'unit: [degF]');
  const reading = await readSiteText(text, 'site.yaml', noFiles);
  expect(reading.ok ? [] : reading.problems).toContainEqual(
    expect.objectContaining({ problem: '[degF] is taken for a list', fix: 'Write "[degF]".' }),
  );
});

test('a payload’s kind where its block belongs: both forms are told', async () => {
  const text = contractSite.replace('payload: { kind: plain }', 'payload: plain');
  const reading = await readSiteText(text, 'site.yaml', noFiles);
  expect(reading.ok ? [] : reading.problems).toContainEqual(
    expect.objectContaining({
      fix: expect.stringContaining('{ kind: plain } where it is a bare number'),
    }),
  );
});

test('the site file of the contract compiles', async () => {
  const reading = await readSiteText(contractSite, 'site.yaml', async (file) => {
    expect(file).toBe('materials/adhesive-a.yaml');
    return 'name: A\nsource: made for this test\n';
  });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  expect(reading.compiled.plan.signals.map((signal) => signal.id)).toEqual([
    'mounts-2/store-1/air',
    'mounts-2/store-1/cold-degree-hours',
    'mounts-2/store-1/drum-time-left',
    'mounts-2/store-1/drum-wall',
    'mounts-2/store-1/mean-kinetic-temperature',
    'mounts-2/store-1/wall',
    'mounts-2/store-1/warm-degree-hours',
  ]);
  const cold = reading.compiled.plan.rules.find((r) => r.id === 'mounts-2/store-1/cold-adhesive');
  expect(cold?.settings).toMatchObject({
    limits: [
      { low: 7, lowHold: 8, high: null },
      { low: 5, lowHold: 6, high: null },
    ],
    onDelayMs: 600_000,
  });
  expect(reading.compiled.bindings.map((binding) => [binding.id, binding.filter])).toEqual([
    ['mounts-2/bench/t', 'bench/+/t'],
    ['mounts-2/store-1/air', 'mounts-2/store-1/air'],
    ['mounts-2/store-1/wall', 'mounts-2/store-1/wall'],
  ]);
});

test('the sample works is sound, and says that it is invented', async () => {
  const reading = await readSite(sample);
  expect(reading.ok ? [] : reading.problems).toEqual([]);
  expect(readFileSync(sample, 'utf8')).toMatch(/invented/);
});

describe('a broken site file', () => {
  test('has all its faults told at once, each in its place and with a fix', async () => {
    const reading = await readSiteText(broken.join('\n'), 'site.yaml', noFiles);
    if (reading.ok) throw new Error('it was taken');
    const found = reading.problems.map((p) => `${p.line}:${p.column} ${pathText(p.path)}`);
    expect(found.sort()).toEqual([...expected].sort());
    expect(expected.length).toBeGreaterThanOrEqual(15);
    for (const problem of reading.problems) {
      expect(problem.fix, pathText(problem.path)).toMatch(/^[A-Z].*[.?]$/);
      expect(problem.problem).not.toBe('');
    }
  });

  const yamlFaults = [
    ['a: [1', 'a bracket or brace is not closed'],
    ['a: "x', 'a character is missing'],
    ['~', 'the file says nothing'],
    ['a: 1\na: 2', 'a second time'],
    ['\ta: 1', 'a tab in the indentation'],
    ['a: @x', 'cannot begin with this character'],
    ['a: !!js/function "x"', 'tags are not used here'],
    ['a: *x', 'no anchor is called "x"'],
    ['a: &x [*x]', 'an alias leads back into itself'],
    ['__proto__: 1', '"__proto__" may not be a key'],
    ['a: &x {b: 1}\nc:\n  <<: *x', '"<<" may not be a key'],
    ['a: 1\n---\nb: 2', 'a second document begins here'],
    ['? [a]\n: 1', 'a key must be a word'],
    ['a: b: c', 'a block stands where a value belongs'],
    [`a: ${'['.repeat(50)}`, 'deep'],
    [`${'- '.repeat(5_000)}x`, 'deep'],
    [`a: &x 1\nb: [${'*x, '.repeat(101)}]`, 'more than 100 aliases'],
    ['', 'the file is empty'],
    ['# only a comment\n', 'the file is empty'],
    [`a: ${'x'.repeat(1_048_577)}`, 'over 1048576 bytes'],
  ] as const;
  test.each(yamlFaults.map(([text, words]) => [words, text]))('%s', async (words, text) => {
    expect(await problemsIn(text)).toContainEqual(expect.stringContaining(words));
  });

  test('a bomb of aliases is refused, not filled in', async () => {
    const levels = Array.from({ length: 12 }, (_, i) =>
      i === 0 ? 'l0: &l0 [x, x, x, x, x, x, x, x]' : `l${i}: &l${i} [${`*l${i - 1}, `.repeat(8)}]`,
    );
    const found = await problemsIn(levels.join('\n'));
    expect(found.some((problem) => /aliases/.test(problem))).toBe(true);
  });

  test('two faults at one place are one line each, none twice', async () => {
    const found = await problemsIn(broken.join('\n'));
    expect(new Set(found).size).toBe(found.length);
  });

  test('hundreds of faults are cut and counted', async () => {
    const many = Array.from({ length: 700 }, (_, i) => `x${i}: 1`).join('\n');
    const reading = await readSiteText(many, 'site.yaml', noFiles);
    if (reading.ok) throw new Error('it was taken');
    expect(reading.problems).toHaveLength(500);
    expect(reading.more).toBe(203);
  });
});

describe('files', () => {
  const inFolder = async (run: (folder: string) => Promise<void>): Promise<void> => {
    const folder = await mkdtemp(join(tmpdir(), 'forebond-site-'));
    try {
      await run(folder);
    } finally {
      await rm(folder, { recursive: true });
    }
  };
  const sheet = (text: string) =>
    inFolder(async (folder) => {
      const site = join(folder, 'site.yaml');
      await writeFile(site, 'site: s\ntimezone: UTC\nmaterials: { a: a.yaml }\nlines: {}\n');
      await writeFile(join(folder, 'a.yaml'), text);
      const reading = await readSite(site);
      found = reading.ok
        ? []
        : reading.problems.map((p) => [
            p.file.slice(folder.length + 1),
            p.line,
            p.column,
            pathText(p.path),
          ]);
    });
  let found: unknown[] = [];

  test('a fault of a material sheet stands in the sheet', async () => {
    await sheet('name: A\nsource: x\nstorage_low: 5\nstorage_hihg: 30 Cel\nmax_rest: 2 Cel\n');
    expect(found).toEqual([
      ['a.yaml', 3, 14, 'storage_low'],
      ['a.yaml', 4, 1, 'storage_hihg'],
      ['a.yaml', 5, 11, 'max_rest'],
    ]);
    await sheet('name: A\nsource: x\nstorage_low: 5 bar\n');
    expect(found).toEqual([['a.yaml', 3, 14, 'storage_low']]);
    await sheet('name: A\nsource: x\nstorage_low: 5 Cel\n');
    expect(found).toEqual([]);
  });

  test('a file that is missing, a folder, or no text', async () => {
    await inFolder(async (folder) => {
      const words = async (file: string) => {
        const reading = await readSite(join(folder, file));
        return reading.ok ? '' : (reading.problems[0]?.problem ?? '');
      };
      await symlink(folder, join(folder, 'loop'));
      await writeFile(join(folder, 'latin1.yaml'), Buffer.from([0x73, 0xe9]));
      expect(await words('none.yaml')).toContain('there is no such file');
      expect(await words('loop')).toContain('it is a folder');
      expect(await words('latin1.yaml')).toContain('is not UTF-8 text');
    });
  });

  test('a byte-order mark is no fault', async () => {
    await inFolder(async (folder) => {
      const file = join(folder, 'site.yaml');
      await writeFile(file, '\ufeffsite: s\r\ntimezone: UTC\r\nlines: {}\r\n');
      expect((await readSite(file)).ok).toBe(true);
    });
  });
});

test.each([
  ['Europe/Dublin', true],
  ['UTC', true],
  ['America/Argentina/Buenos_Aires', true],
  ['Etc/GMT+1', true],
  ['+01:00', false],
  ['CET+1', false],
  ['Mars/Olympus', false],
  ['europe dublin', false],
])('time zone %s: %s', async (zone, known) => {
  const found = await problemsIn(`site: s\ntimezone: "${zone}"\nlines: {}\n`);
  expect(found.length === 0).toBe(known);
});
