/** A wrong station kind, and own rules that cannot be read, hide no other fault of the file. */
import { expect, test } from 'vitest';
import { readSiteText } from '#agent/site/read-site.ts';
import type { SiteProblem } from '#rules/site/problem.ts';
import { pathText } from '#rules/site/problem.ts';

/** Under each line at fault stands `#!` with the column and the path of each of its faults. */
const marked = `site: works
timezone: Europe/Dubln
#! 11 timezone
materials:
  adhesive-a: materials/none.yaml
#! 15 materials.adhesive-a
lines:
  m:
    mixer:
      kind: drum-mixr
#! 13 lines.m.mixer.kind
      material: adhesive-b
#! 17 lines.m.mixer.material
      residue_thickness: 5 bar
#! 26 lines.m.mixer.residue_thickness
      colour: red
#! 7 lines.m.mixer.colour
      signals:
        agitator:
          topic: m/mixer/#
#! 18 lines.m.mixer.signals.agitator.topic
          payload: plain
#! 20 lines.m.mixer.signals.agitator.payload
          unit: rpm
#! 17 lines.m.mixer.signals.agitator.unit
          resolution: 0.5
#! 23 lines.m.mixer.signals.agitator.resolution
        wall:
          topic: m/+/wall
#! 18 lines.m.mixer.signals.wall.topic
          payload: { kind: json, value: v }
#! 41 lines.m.mixer.signals.wall.payload.value
          unit: degC
#! 17 lines.m.mixer.signals.wall.unit
          range: [50 Cel, 10 Cel]
#! 11 lines.m.mixer.signals.wall.range
          expect_every: 60s
#! 25 lines.m.mixer.signals.wall.expect_every
          calibration: [[0, 0], [0, 5]]
#! 11 lines.m.mixer.signals.wall.calibration
        level:
#! 9 lines.m.mixer.signals.level.topic
          payload: { kind: plain }
          unit: mm
          calibrated: last week
#! 23 lines.m.mixer.signals.level.calibrated
      derived:
        pace: { kind: rat, inputs: { value: level }, unit: mm/h }
#! 23 lines.m.mixer.derived.pace.kind
      rules:
        agitator-slow: { low: 5 }
#! 31 lines.m.mixer.rules.agitator-slow.low
        slow: { kind: band, signal: agitatr, low: 20 /min, priority: urgent, consequence: C., actions: [A.] }
#! 37 lines.m.mixer.rules.slow.signal
#! 70 lines.m.mixer.rules.slow.priority
      marks:
        Filled: { what: barrel, meaning: Filled. }
#! 9 lines.m.mixer.marks.Filled
#! 25 lines.m.mixer.marks.Filled.what
    Oven 1:
#! 5 lines.m.Oven 1
#! 5 lines.m.Oven 1.kind
      signals:
        Air: { topic: m/oven/air, payload: { kind: plain }, unit: Celsius }
#! 9 lines.m.Oven 1.signals.Air
#! 67 lines.m.Oven 1.signals.Air.unit
`;

function unmark(text: string): { lines: string[]; expected: string[] } {
  const lines: string[] = [];
  const expected: string[] = [];
  for (const line of text.split('\n')) {
    const mark = /^#! (\d+) (.*)$/.exec(line);
    if (mark === null) lines.push(line);
    else expected.push(`${lines.length}:${mark[1]} ${mark[2]}`);
  }
  return { lines, expected };
}

const noFile = async (): Promise<SiteProblem> => ({
  path: [],
  problem: 'there is no such file',
  fix: 'Check the name.',
});

test('all of more than twenty faults at once, each with line, column and the way out', async () => {
  const { lines, expected } = unmark(marked);
  const reading = await readSiteText(lines.join('\n'), 'site.yaml', noFile);
  if (reading.ok) throw new Error('it was taken');
  const found = reading.problems.map((p) => `${p.line}:${p.column} ${pathText(p.path)}`);
  expect(found.sort()).toEqual([...expected].sort());
  expect(expected.length).toBeGreaterThan(20);
  for (const problem of reading.problems)
    expect(problem.fix, pathText(problem.path)).toMatch(/^[A-Z].*[.?]$/);
});

test('own rules that cannot be read hide no fault of another kind', async () => {
  const text = `site: works
timezone: Europe/Dublin
extensions: [rules/none.ts]
lines:
  m:
    bench:
      kind: custom
      signals:
        t: { topic: t, payload: { kind: plain }, unit: bars }
      rules:
        odd: { kind: own-kind, signal: t, priority: low, consequence: C., actions: [A.] }
        warm: { kind: band, signal: tt, high: 30 Cel, priority: low, consequence: C., actions: [A.] }
`;
  const reading = await readSiteText(text, 'site.yaml', noFile);
  if (reading.ok) throw new Error('it was taken');
  const paths = reading.problems.map(({ path }) => pathText(path));
  expect(paths).toContain('lines.m.bench.signals.t.unit');
  expect(paths).toContain('lines.m.bench.rules.warm.signal');
  // Of kinds that could not be read nothing can be told.
  expect(paths.filter((path) => path.includes('.odd'))).toEqual([]);
});
