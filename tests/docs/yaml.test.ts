import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readSiteText } from '#agent/site/read-site.ts';
import { projectFiles, readText, top } from '../tidy/source.ts';

// Every YAML example of the pages passes the check a site file has to pass; a fragment is put
// where it belongs in a small site first.

const indented = (text: string, spaces: number): string =>
  text.replaceAll(/^(?=.)/gm, ' '.repeat(spaces));

const head = 'site: demo\ntimezone: Europe/Dublin\n';
const wall = `        wall:
          topic: a/wall
          unit: Cel
`;
const air = '        air: { topic: a/air, payload: { kind: plain }, unit: Cel }\n';
const plain = '          payload: { kind: plain }\n';
const store = `lines:
  a:
    store-1:
      kind: adhesive-store
      signals:
`;

/** By the first key of a fragment: the whole site it stands in. */
const places: Readonly<Record<string, (fragment: string) => string>> = {
  site: (text) => text,
  materials: (text) => `${head}${text}${store}${wall}${plain}`,
  telling: (text) => `${head}${text}${store}${wall}${plain}`,
  payload: (text) => `${head}${store}${wall}${indented(text, 10)}`,
  calibration: (text) => `${head}${store}${wall}${plain}${indented(text, 10)}`,
  sensor: (text) => `${head}${store}${wall.replace('Cel', 'Ohm')}${plain}${indented(text, 10)}`,
  rules: (text) => `${head}${store}${wall}${plain}${air}${indented(text, 6)}`,
  derived: (text) =>
    `${head}lines:
  a:
    b:
      kind: drum-mixer
      signals:
        agitator: { topic: a/b, payload: { kind: plain }, unit: /min }
${indented(text, 6)}`,
  basket_test: (text) =>
    `${head}lines:
  a:
    oven-floor:
      kind: residue
${indented(text, 6)}      signals:
        surface: { topic: a/b, payload: { kind: plain }, unit: Cel }
`,
  bench: (text) => `${head}lines:\n  a:\n${indented(text, 4)}`,
  t: (text) =>
    `${head}lines:\n  a:\n    b:\n      kind: custom\n      signals:\n${indented(text, 8)}`,
};

function blocksOf(path: string): { path: string; line: number; text: string }[] {
  const markdown = readText(path);
  return [...markdown.matchAll(/^```yaml\n([\s\S]*?)^```$/gm)].map((match) => ({
    path,
    line: markdown.slice(0, match.index).split('\n').length + 1,
    text: match[1]!,
  }));
}

const blocks = projectFiles.filter((path) => path.endsWith('.md')).flatMap(blocksOf);
const sheets = async (file: string): Promise<string> =>
  readFileSync(
    join(top, 'docs/examples', file.startsWith('rules/') ? 'own-rules' : 'sample-works', file),
    'utf8',
  );

async function problemsIn(fragment: string): Promise<readonly string[]> {
  const key = /^[\w-]+/.exec(fragment)?.[0] ?? '';
  const place = places[key];
  if (place === undefined) return [`no place is known for a fragment that begins with "${key}"`];
  const read = await readSiteText(place(fragment), 'site.yaml', sheets);
  return read.ok ? [] : read.problems.map((each) => `${each.path.join('.')}: ${each.problem}`);
}

describe('YAML in the pages', () => {
  test('there is some', () => expect(blocks.length).toBeGreaterThan(4));
  test.each(blocks)('$path:$line passes the check', async ({ text }) => {
    expect(await problemsIn(text)).toEqual([]);
  });
  test('a broken example is found', async () => {
    expect(await problemsIn('payload: { kind: jsonn, value: /v }\n')).not.toEqual([]);
    expect(await problemsIn('odd: 1\n')).toHaveLength(1);
  });
});
