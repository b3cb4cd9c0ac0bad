/** Whatever stands in a site file, reading it answers: never a throw, never a problem without place. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { readSiteText } from '#agent/site/read-site.ts';

// Each compiles hundreds of sites.
vi.setConfig({ testTimeout: 120_000 });

const sample = readFileSync('docs/examples/sample-works/site.yaml', 'utf8');
const sheet = readFileSync('docs/examples/sample-works/materials/adhesive-a.yaml', 'utf8');
const sampleLines = sample.split('\n');

async function holds(text: string, material = sheet): Promise<void> {
  const reading = await readSiteText(text, 'site.yaml', async () => material);
  if (reading.ok) {
    expect(reading.compiled.problems).toEqual([]);
    return;
  }
  expect(reading.problems.length).toBeGreaterThan(0);
  for (const { line, column, problem, fix } of reading.problems) {
    expect(Number.isInteger(line) && line >= 1 && Number.isInteger(column) && column >= 1).toBe(
      true,
    );
    expect(problem.length).toBeGreaterThan(0);
    expect(fix).toMatch(/[.?]$/);
  }
}

/** A value where another belongs. */
const odd = fc.constantFrom(
  ...[
    '',
    '~',
    '7',
    '-1',
    '1e400',
    '.nan',
    'true',
    '[]',
    '{}',
    '[1, 2]',
    '{ a: b }',
    '"x"',
    '*a',
    '&a b',
  ],
  ...[
    '7 Cel',
    '7 bar',
    '0 s',
    '10 min',
    'Cel',
    '"[degF]"',
    'wall',
    'constructor',
    '__proto__',
    'toString',
  ],
  ...[
    '{ kind: plain }',
    '{ kind: json }',
    'none',
    '!!str x',
    '- x',
    '|',
    '>',
    '? x',
    '#',
    'bench/+/t',
  ],
);

test('a value replaced by another', async () => {
  const withValue = sampleLines.flatMap((line, i) => (/^\s*[\w-]+: \S/.test(line) ? [i] : []));
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.constantFrom(...withValue), odd), { minLength: 1, maxLength: 4 }),
      async (changes) => {
        const lines = [...sampleLines];
        for (const [i, value] of changes) lines[i] = lines[i]!.replace(/: .*/, `: ${value}`);
        await holds(lines.join('\n'));
      },
    ),
    { seed: 20261, numRuns: 120 },
  );
});

test('keys renamed, lines dropped, doubled, swapped and indented anew', async () => {
  const change = fc.tuple(
    fc.nat(sampleLines.length - 1),
    fc.nat(sampleLines.length - 1),
    fc.constantFrom('drop', 'double', 'swap', 'indent', 'outdent', 'rename'),
    fc.constantFrom(
      'kind',
      'signals',
      'rules',
      'wall',
      'constructor',
      '__proto__',
      'hasOwnProperty',
      'A b',
      '1',
    ),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 6 }), async (changes) => {
      const lines = [...sampleLines];
      for (const [i, j, how, name] of changes) {
        const [a, b] = [lines[i] ?? '', lines[j] ?? ''];
        if (how === 'drop') lines[i] = '';
        if (how === 'double') lines[i] = `${a}\n${a}`;
        if (how === 'swap') [lines[i], lines[j]] = [b, a];
        if (how === 'indent') lines[i] = `  ${a}`;
        if (how === 'outdent') lines[i] = a.replace(/^ {2}/, '');
        if (how === 'rename') lines[i] = a.replace(/[\w-]+(?=:)/, name);
      }
      await holds(lines.join('\n'));
    }),
    { seed: 20262, numRuns: 120 },
  );
});

test('characters of any kind, in the site file and in the sheet', async () => {
  const noise = fc.string({ unit: 'binary', maxLength: 6 });
  const yamlish = fc.array(fc.constantFrom(...'[]{}:-#&*!|>\'"%@`?,\n\t \\'), { maxLength: 6 });
  const piece = fc.oneof(
    noise,
    yamlish.map((characters) => characters.join('')),
  );
  const at = fc.nat(sample.length);
  await fc.assert(
    fc.asyncProperty(at, at, piece, piece, async (i, j, one, two) => {
      const text = `${sample.slice(0, i)}${one}${sample.slice(i)}`;
      const k = j % sheet.length;
      await holds(text, `${sheet.slice(0, k)}${two}${sheet.slice(k + 2)}`);
    }),
    { seed: 20263, numRuns: 120 },
  );
});

test('text that was never a site file', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 200 }), async (text) => {
      await holds(text);
    }),
    { seed: 20264, numRuns: 100 },
  );
  await fc.assert(
    fc.asyncProperty(fc.json(), async (text) => {
      await holds(text, text);
    }),
    { seed: 20265, numRuns: 100 },
  );
});

test.each([
  ['brackets', '['.repeat(20_000)],
  ['braces', '{'.repeat(20_000)],
  ['dashes', '- '.repeat(10_000)],
  ['question marks', '? '.repeat(10_000)],
  ['anchors', '&a '.repeat(10_000)],
  ['one long key', `${'a'.repeat(500_000)}: 1`],
  ['quotes', '"'.repeat(19_999)],
])('a wall of %s', async (_, text) => {
  await holds(text);
});
