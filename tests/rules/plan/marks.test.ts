/** What people write down at a station, and the rules that judge it. */
import { describe, expect, test } from 'vitest';
import { stationMarks } from '#rules/plan/compile-marks.ts';
import type { SiteProblem } from '#rules/site/problem.ts';
import { custom } from '#rules/stations/custom.ts';
import { compiled, signalLine } from './site.ts';

const own = 'priority: low, consequence: Rust., actions: [Blast it again.]';
const marks = `
      blasted: { what: rack, meaning: The rack came out of the blaster. }
      coated: { what: rack, meaning: The rack was coated., by_whom: whoever sprays }
      weighed: { what: lot, meaning: The lot was weighed. }
      emptied: { what: none, meaning: The bin was emptied., topic: l/bin }`;
const site = (rule: string, more = marks) =>
  compiled(`
l:
  t:
    kind: custom
    signals: { rh: ${signalLine('rh', '%')}, closed: ${signalLine('c', '1')} }
    marks: ${more}
    rules: { old: ${rule} }
`);
const said = (of: ReturnType<typeof compiled>) =>
  of.problems.map(({ path, problem }) => `${path.slice(5).join('.')}: ${problem}`);
const aged = `kind: age, limit: 4 h, ${own}`;

describe('a rule of marks', () => {
  test('is armed without any signal, and is about its first mark', () => {
    const of = site(`{ ${aged}, marks: [blasted, coated], hold: { what: rack } }`);
    expect(of.problems).toEqual([]);
    expect(of.plan.marks).toEqual([
      { id: 'l/t/blasted', what: 'rack' },
      { id: 'l/t/coated', what: 'rack' },
      { id: 'l/t/emptied', what: null },
      { id: 'l/t/weighed', what: 'lot' },
    ]);
    expect(of.plan.rules[0]).toMatchObject({ id: 'l/t/old', inputs: [], marks: [0, 1] });
    expect(of.rules[0]).toMatchObject({
      readiness: 'armed',
      signal: 'l/t/blasted',
      signals: [],
      marks: ['l/t/blasted', 'l/t/coated'],
    });
  });
  test('takes a signal besides, where its kind has a use for one', () => {
    const damp = 'signal: rh, damp_limit: 2 h, damp_above: "60 %"';
    const of = site(`{ ${aged}, marks: [blasted], ${damp} }`);
    expect(of.problems).toEqual([]);
    expect(of.plan.rules[0]!.inputs).toHaveLength(1);
    const mixed = site(
      `{ kind: sequence, marks: [emptied], signal: closed, then_low: 1 1, within: 1 min, ${own} }`,
    );
    expect(mixed.problems).toEqual([]);
  });
  test('of other marks is another rule for its memory', () => {
    const of = (names: string) => site(`{ ${aged}, marks: [${names}] }`).plan.rules[0]!.fingerprint;
    expect(of('blasted')).not.toBe(of('coated'));
  });
  test('is watched only as far as people write it down, and coverage says so', () => {
    const { watched } = site(`{ ${aged}, marks: [blasted, coated] }`).coverage.stations[0]!;
    expect(watched).toMatchObject([{ hazard: 'old', marks: ['l/t/blasted', 'l/t/coated'] }]);
  });
  test.each([
    [`${aged}, marks: [blastd]`, 'marks: this station has no mark "blastd"'],
    [`${aged}, marks: [blasted, blasted]`, 'marks: one mark is named twice'],
    [`${aged}`, 'marks: age takes 1 to 3 marks, not 0'],
    [
      `${aged}, marks: [blasted, weighed]`,
      ': it begins with a mark of rack and ends with one of lot',
    ],
    [
      `kind: band, signal: rh, high: "60 %", marks: [blasted], ${own}`,
      'marks: band judges no marks',
    ],
    [
      `${aged}, marks: [blasted], gate: { signal: closed, low: 1 1 }`,
      'gate: a rule that judges a mark takes no gate: what was written down stays so',
    ],
    [
      `kind: sequence, within: 5 s, ${own}`,
      ': 2 of first and then have no bounds and so are marks, and it names 0',
    ],
  ])('{ %s }', (rule, problem) => {
    expect(said(site(`{ ${rule} }`))).toEqual([problem]);
  });
});

describe('a mark', () => {
  test('has what a person and a device need', () => {
    const of = site(`{ ${aged}, marks: [blasted] }`);
    expect(of.marks.find(({ name }) => name === 'coated')).toEqual({
      id: 'l/t/coated',
      station: 'l/t',
      name: 'coated',
      what: 'rack',
      meaning: 'The rack was coated.',
      byWhom: 'whoever sprays',
      topic: null,
    });
    expect(of.markBindings).toEqual([
      { station: 'l/t', mark: 'emptied', what: null, topic: 'l/bin', payload: { kind: 'plain' } },
    ]);
  });
  test.each([
    ['{ x: { meaning: It. } }', ['x.what: the mark "x" has no what']],
    ['{ x: { what: rack } }', ['x.meaning: the mark "x" has no meaning']],
    ['{ rh: { what: rack, meaning: It. } }', ['rh: "rh" is a mark of this station already']],
    [
      '{ x: { what: rack, meaning: It., topic: l/+/x } }',
      ['x.topic: the topic of a mark has no +'],
    ],
    [
      '{ x: { what: rack, meaning: It., payload: { kind: plain } } }',
      ['x.payload: a payload without a topic says nothing'],
    ],
  ])('%s', (words, problems) => {
    const of = compiled(`
l:
  t:
    kind: custom
    signals: { rh: ${signalLine('rh', '%')} }
    marks: ${words}
`);
    expect(
      of.problems.map(({ path, problem }) => `${path.slice(4).join('.')}: ${problem}`),
    ).toEqual(problems);
  });
});

describe('a mark the station kind knows', () => {
  const kind = {
    ...custom,
    marks: [{ name: 'blasted', what: 'rack', meaning: 'It.', byWhom: 'the blaster' }] as const,
  };
  const of = (words: object): { known: unknown; problems: string[] } => {
    const problems: SiteProblem[] = [];
    const marks = { blasted: words };
    const found = stationMarks('l/t', kind, { kind: 'custom', marks }, [], (p) => problems.push(p));
    return { known: found.get('blasted'), problems: problems.map(({ problem }) => problem) };
  };
  test('takes a topic and who writes it down from the site, and no more', () => {
    expect(of({ topic: 'a/b', by_whom: 'the gate' })).toMatchObject({
      known: {
        what: 'rack',
        byWhom: 'the gate',
        said: { topic: 'a/b', payload: { kind: 'plain' } },
      },
      problems: [],
    });
    expect(of({ what: 'lot' }).problems).toEqual([
      'blasted is a mark the station kind knows, with a what of its own',
    ]);
  });
  test('misspelt is no mark of its own', () => {
    const problems: SiteProblem[] = [];
    const words = { kind: 'custom', marks: { blastd: { topic: 'a' } } };
    stationMarks('l/t', kind, words, [], (problem) => problems.push(problem));
    expect(problems).toMatchObject([
      { problem: 'this station has no mark "blastd"', fix: expect.stringMatching(/blasted/) },
    ]);
  });
});
