import { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { type CheckedSite, checkCommand, problemLine } from '#agent/cli/check.ts';
import { readSite, readSiteText } from '#agent/site/read-site.ts';
import { siteWritten } from '#rules/site/schema.ts';
import { drumMixer } from '#rules/stations/drum-mixer.ts';
import type { StationDerived } from '#rules/stations/station.ts';

const sample = 'docs/examples/sample-works/site.yaml';

async function run(
  args: readonly string[],
  read: (file: string) => Promise<CheckedSite> = readSite,
): Promise<{ lines: string[]; exitCode: number | null }> {
  const lines: string[] = [];
  let exitCode: number | null = null;
  const program = new Command();
  checkCommand(program, {
    readSite: read,
    print: (line) => lines.push(line),
    setExitCode: (code) => {
      exitCode = code;
    },
  });
  await program.parseAsync(['check', ...args], { from: 'user' });
  return { lines, exitCode };
}

describe('a sound file', () => {
  test('exit 0, what is watched and what is not', async () => {
    const { lines, exitCode } = await run([sample]);
    expect(exitCode).toBe(0);
    expect(lines[0]).toMatch(/^sample-works: \d+ signals, \d+ rules armed$/);
    expect(lines).toContain('  1 wildcard will add signals and rules as values come');
    expect(lines.join('\n')).toMatch(
      /^mounts-1\/store-1 \(adhesive-store\): \d+ hazards? watched, \d+ not watched$/m,
    );
    expect(lines.some((line) => line.startsWith('  not watched  Oil vapour'))).toBe(true);
  });
  test('--json: one object', async () => {
    const { lines, exitCode } = await run([sample, '--json']);
    expect(exitCode).toBe(0);
    expect(lines).toHaveLength(1);
    const answer: unknown = JSON.parse(lines[0]!);
    expect(answer).toMatchObject({ ok: true, site: 'sample-works' });
  });
  test('numbers nobody confirmed, rules not armed, rules off and unnoticed silence are told', async () => {
    const text = `
site: s
timezone: UTC
lines:
  l:
    m:
      kind: drum-mixer
      signals:
        level: { topic: a, payload: { kind: plain }, unit: mm }
        agitator: { topic: b, payload: { kind: plain }, unit: /min }
      rules:
        agitator-slow: { off: true, reason: the drum is hand-cranked }
        agitator-fast: { suppress_while: { signal: level, low: 1 mm, because: it is being flushed } }
`;
    const { lines, exitCode } = await run(['x.yaml'], (file) =>
      readSiteText(text, file, async () => ''),
    );
    expect(exitCode).toBe(0);
    expect(lines).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^ {2}not armed {4}l\/m\/blade-uncovered: needs the level/),
        expect.stringMatching(
          /^ {2}unconfirmed {2}l\/m\/agitator-rest: on_delay 1 h rests on engineering judgement alone; to confirm, enter/,
        ),
        '  suppressed   l/m/agitator-fast while it is being flushed: its hazard is not watched then',
        '  off          l/m/agitator-slow: the drum is hand-cranked',
        '  silence      l/m/level: nobody would notice; give it expect_every',
      ]),
    );
  });
});

test('what is not worked out for want of a number is told', async () => {
  const kind = drumMixer as { derived: readonly StationDerived[] };
  const { derived } = kind;
  const blade = { setting: 'blade_diameter', value: null, needs: 'the diameter of the blade' };
  const basis = { mark: 'SITE', note: 'from the drawing', source: null } as const;
  kind.derived = [
    ...derived,
    {
      name: 'tip',
      kind: 'tip-speed',
      inputs: { speed: 'agitator' },
      numbers: [{ ...blade, basis }],
      meaning: 'for this test',
    },
  ];
  const text = `
site: s
timezone: UTC
lines:
  l:
    m:
      kind: drum-mixer
      signals:
        agitator: { topic: b, payload: { kind: plain }, unit: /min }
`;
  const { lines, exitCode } = await run(['x.yaml'], (file) =>
    readSiteText(text, file, async () => ''),
  ).finally(() => {
    kind.derived = derived;
  });
  expect(exitCode).toBe(0);
  expect(lines).toContain('  not derived  l/m/tip: needs the diameter of the blade');
});

test('what a hot place leaves unjudged, and what an armed rule lacks, are told', async () => {
  const text = `
site: s
timezone: UTC
lines:
  l:
    r:
      kind: residue
      process_temperature: 95 Cel
      signals:
        surface: { topic: a, payload: { kind: plain }, unit: Cel }
      rules:
        at-limit: { high: 110 Cel }
`;
  const { lines } = await run(['x.yaml'], (file) => readSiteText(text, file, async () => ''));
  expect(lines).toContain(
    '  not judged   l/r/early: The place itself runs at 95 Cel, past this warning; the ones nearer the limit stand.',
  );
  expect(lines).toContain(
    '  lacks        l/r/at-limit: the site’s fire plan: telephone and muster point (fire_plan)',
  );
});

test('what the site changes of a station’s rules, and what it switches off, is told line by line', async () => {
  const text = `
site: s
timezone: UTC
lines:
  l:
    a:
      kind: compressed-air
      signals: { pdp: { topic: d, payload: { kind: plain }, unit: Cel } }
      rules:
        air-dew-point: { on_delay: 10 h }
    r:
      kind: residue
      signals: { surface: { topic: a, payload: { kind: plain }, unit: Cel, range: [0 Cel, 200 Cel] } }
      rules:
        early: { actions: ["Ring the gate house."] }
        at-limit: { off: true, reason: the guard system does it, signed_by: A. Byrne }
`;
  const { lines, exitCode } = await run(['x.yaml'], (file) =>
    readSiteText(text, file, async () => ''),
  );
  expect(exitCode).toBe(0);
  expect(lines).toContain('  changed      l/a/air-dew-point: on_delay 10 min → 10 h');
  expect(lines).toContain(
    '  changed      l/r/surface: range -20 Cel to 400 Cel → 0 Cel to 200 Cel',
  );
  expect(lines).toContain(
    '  changed      l/r/early: actions of the station → of the station, and behind it: Ring the gate house.',
  );
  expect(lines).toContain(
    '  off          l/r/at-limit: the guard system does it (A. Byrne answers for it); people can be hurt by what it would watch',
  );
  expect(lines.filter((line) => line.startsWith('  not watched  ')).join()).toContain(
    'at-limit is switched off by A. Byrne: the guard system does it.',
  );
});

describe('a broken file', () => {
  const broken = (file: string) =>
    readSiteText('site: S\ntimezone: UTC\nlines: {}\nx: 1\n', file, async () => '');
  test('exit 1, one line a problem: FILE:LINE:COLUMN path: what is wrong. fix', async () => {
    const { lines, exitCode } = await run(['works/site.yaml'], broken);
    expect(exitCode).toBe(1);
    expect(lines).toEqual([
      'works/site.yaml:1:7 site: "S" cannot be read. Use lower case letters, digits and single hyphens, as oven-1.',
      `works/site.yaml:4:1 x: "x" is not known here. Known here: ${Object.keys(siteWritten.shape).join(', ')}.`,
    ]);
  });
  test('--json: the same as data', async () => {
    const { lines, exitCode } = await run(['s.yaml', '--json'], broken);
    expect(exitCode).toBe(1);
    expect(JSON.parse(lines[0]!)).toMatchObject({
      ok: false,
      problems: [
        { file: 's.yaml', line: 1, column: 7, path: 'site' },
        { file: 's.yaml', line: 4, column: 1, path: 'x' },
      ],
      more: 0,
    });
  });
  test('a file that is not there', async () => {
    const { lines, exitCode } = await run(['no/such.yaml']);
    expect(exitCode).toBe(1);
    expect(lines[0]).toMatch(/^no\/such\.yaml:1:1 \(file\): .*there is no such file/);
  });
  test('more than are shown are counted', async () => {
    const { lines } = await run(['x'], async () => ({ ok: false, problems: [], more: 3 }));
    expect(lines).toEqual(['and 3 more']);
  });
});

test('text from a file cannot break a line or steer a terminal', () => {
  const line = problemLine({
    file: 'a\u001b[2Jb',
    line: 1,
    column: 1,
    path: ['x\ny'],
    problem: 'bad\u0007.',
    fix: 'Mend it.',
  });
  expect(line).toBe('a\\u001b[2Jb:1:1 x\\ny: bad\\u0007. Mend it.');
});
