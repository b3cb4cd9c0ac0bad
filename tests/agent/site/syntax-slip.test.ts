/** After a slip of the YAML itself nothing else can be told of a site file; own rules that come to no end. */
import { expect, test } from 'vitest';
import { probe } from '#agent/site/extensions/probe.ts';
import { readExtensions } from '#agent/site/read-extensions.ts';
import { readSiteText } from '#agent/site/read-site.ts';
import { readYaml } from '#agent/site/yaml.ts';

const site = `site: works
timezone: Europe/Dublin
lines:
  a:
    bench:
      kind: custom
      signals:
        t: { topic: b/t, payload: { kind: plain }, unit: Cel }
      rules:
        warm:
          kind: band
          signal: t
          high: 30 Cel
          priority: low
          consequence: The pieces leave their range.
          actions: [Shade the bench.]
`;
const noFiles = async () => ({ path: [], problem: 'there is no such file', fix: 'Write it.' });

async function linesOf(text: string): Promise<string[]> {
  const reading = await readSiteText(text, 'site.yaml', noFiles);
  return reading.ok ? [] : reading.problems.map((p) => `${p.line} ${p.problem}`);
}

test('the site is sound without a slip', async () => {
  expect(await linesOf(site)).toEqual([]);
});

test.each([
  [
    'a bracket left open',
    site.replace('actions: [Shade the bench.]', 'actions: [Shade the bench.'),
  ],
  ['a line that stands out', site.replace('          priority: low', '         priority: low')],
  ['a quote left open', site.replace('high: 30 Cel', 'high: "30 Cel')],
  ['a colon inside a text', site.replace('The pieces leave', 'The pieces: they leave')],
  ['a tab', site.replace('          signal: t', '\t\tsignal: t')],
])('%s: only what the YAML lacks is told', async (_, text) => {
  const lines = await linesOf(text);
  expect(lines.length).toBeGreaterThan(0);
  // Nothing that the slip makes of the rest: "has no priority", names that are none.
  for (const line of lines)
    expect(line).not.toMatch(/no priority|no consequence|not known|is needed/);
  const own = readYaml(text, 'site.yaml').problems.map((p) => `${p.line} ${p.problem}`);
  expect(new Set(lines)).toEqual(new Set(own));
});

test('a key written twice hides no other fault', async () => {
  const text = site.replace('high: 30 Cel', 'high: 30 Cell\n          high: 31 Cell');
  const lines = await linesOf(text);
  expect(lines.some((line) => line.includes('a second time'))).toBe(true);
  expect(lines.some((line) => line.includes('Cell"'))).toBe(true);
});

const source = {
  site: { site: 'works', timezone: 'UTC', extensions: ['own.ts'], lines: {} },
  materials: {},
  extensions: { 'own.ts': 'export default {}' },
};

test('own rules whose time was over while none was called: the place is the list of them', async () => {
  // No time at all: over before any of them is called.
  const fault = await probe(source, 0);
  expect(fault).toMatchObject({ name: null });
  const yaml = readYaml('site: works\nextensions: [own.ts]\n', 'site.yaml');
  const problems: Parameters<typeof readExtensions>[4] = [];
  await readExtensions(
    source,
    'site.yaml',
    yaml,
    async () => 'export default {}',
    problems,
    async () => fault,
  );
  expect(problems).toMatchObject([{ path: ['extensions'], file: 'site.yaml', line: 2, column: 1 }]);
  expect(problems[0]!.problem).toMatch(/could not be tried within/);
});
