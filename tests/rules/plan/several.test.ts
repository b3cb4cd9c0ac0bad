/** Rules that name several signals, and those a station joins by itself. */
import { describe, expect, test } from 'vitest';
import { compiled, signalLine } from './site.ts';

const cel = (topic: string) => signalLine(topic, 'Cel');
const own = 'priority: low, consequence: Blind., actions: [Compare them.]';
const custom = (rule: string, extra = '') => `
l:
  t:
    kind: custom
    signals: { a: ${cel('a')}, b: ${cel('b')}, c: ${cel('c')}, p: ${signalLine('p', 'bar')}${extra} }
    rules: { apart: ${rule} }
`;
const said = (site: ReturnType<typeof compiled>) =>
  site.problems.map(({ path, problem }) => `${path.slice(5).join('.')}: ${problem}`);

describe('a rule of its own', () => {
  test('judges all it names, the first being what it is about', () => {
    const site = compiled(custom(`{ kind: stray, signals: [b, a, c], limit: 5 K, ${own} }`));
    expect(site.problems).toEqual([]);
    const rule = site.plan.rules.find(({ id }) => id === 'l/t/apart')!;
    expect(rule.inputs.map((i) => site.plan.signals[i]!.id)).toEqual(['l/t/b', 'l/t/a', 'l/t/c']);
    const card = site.rules.find(({ id }) => id === 'l/t/apart')!;
    expect([card.signal, card.signals]).toEqual(['l/t/b', ['l/t/b', 'l/t/a', 'l/t/c']]);
  });
  test('another list of signals is another rule for its memory', () => {
    const of = (list: string) =>
      compiled(custom(`{ kind: stray, signals: [${list}], limit: 5 K, ${own} }`)).plan.rules[0]!
        .fingerprint;
    expect(of('a, b')).not.toBe(of('a, c'));
    expect(of('a, b')).toBe(of('a, b'));
  });
  test.each([
    ['signals: [a, d]', 'signals: this station has no signal "d"'],
    ['signals: [a, a]', 'signals: one signal is named twice'],
    ['signals: [a, p]', 'signals.1: "p" is a pressure, where stray takes a temperature'],
    ['signal: a', 'signal: stray judges several signals together'],
    ['signal: a, signals: [a, b]', 'signal: it names signal and signals'],
  ])('{ kind: stray, %s }', (names, problem) => {
    expect(said(compiled(custom(`{ kind: stray, ${names}, limit: 5 K, ${own} }`)))).toEqual([
      problem,
    ]);
  });
  test('a kind of one takes one', () => {
    const site = compiled(custom(`{ kind: band, signals: [a, b], high: 5 Cel, ${own} }`));
    expect(said(site)).toEqual(['signals: band judges one signal']);
  });
  test('a kind of roles takes them in its order', () => {
    const loaded = `, loaded: ${signalLine('x', '1')}`;
    const rule = (signals: string) =>
      compiled(custom(`{ kind: dry, signals: [${signals}], peak: 90 Cel, ${own} }`, loaded));
    expect(said(rule('a, loaded'))).toEqual([]);
    expect(said(rule('loaded, a'))).toEqual([
      'signals.0: "loaded" is a bare number, where dry takes a temperature',
    ]);
    expect(said(rule('a, loaded, b'))).toEqual(['signals: dry takes 2 signals, not 3']);
  });
  test('wildcards of the same names give a rule for each value', () => {
    const wild = (topic: string, name: string) =>
      `{ topic: "${topic}/+", names: [${name}], payload: { kind: plain }, unit: Cel }`;
    const extra = `, x: ${wild('x', 'cell')}, y: ${wild('y', 'cell')}, z: ${wild('z', 'place')}`;
    const rule = (signals: string) =>
      compiled(custom(`{ kind: stray, signals: [${signals}], limit: 5 K, ${own} }`, extra), {
        'l/t/x': ['one', 'two'],
        'l/t/y': ['two', 'three'],
        'l/t/z': ['one'],
      });
    const ids = (site: ReturnType<typeof compiled>) =>
      site.plan.rules.map(({ id, inputs }) => [id, ...inputs.map((i) => site.plan.signals[i]!.id)]);
    expect(ids(rule('x, y, a'))).toEqual([['l/t/apart-two', 'l/t/x-two', 'l/t/y-two', 'l/t/a']]);
    expect(said(rule('x, z'))).toEqual([': its signals have wildcards of different names']);
  });
});

describe('a station’s rule', () => {
  const oven = (signals: string, rules = '{}') =>
    compiled(`l: { o: { kind: drying-oven, signals: { ${signals} }, rules: ${rules} } }`);
  test('with roles exists where all of them are bound', () => {
    const heat = '{ under-dried: { above: 65 Cel, above_for: 10 min } }';
    const metal = `metal: ${cel('m')}`;
    const loaded = `loaded: ${signalLine('l', '1')}`;
    const ids = (site: ReturnType<typeof compiled>) => site.plan.rules.map(({ id }) => id);
    expect(ids(oven(`${metal}, ${loaded}`, heat))).toEqual(['l/o/profile-late', 'l/o/under-dried']);
    const alone = oven(metal, heat);
    expect(ids(alone)).toEqual(['l/o/profile-late']);
    expect(said(alone)).toEqual([
      ': under-dried judges metal and loaded, which this station does not have',
    ]);
    expect(
      oven(metal).coverage.stations[0]!.unwatched.find(({ hazard }) => hazard === 'under-drying'),
    ).toMatchObject({ missing: [{ signal: 'l/o/loaded' }] });
  });
  test('of a group judges those that are bound', () => {
    const two = oven(`zone-1-air: ${cel('a')}, zone-1-check: ${cel('b')}, zone-2-air: ${cel('c')}`);
    expect(two.rules.map(({ id }) => id)).toEqual([
      'l/o/profile-late',
      'l/o/sensors-disagree-1',
      'l/o/zone-1-high',
      'l/o/zone-2-high',
    ]);
  });
  test('may be told which signals', () => {
    const site = oven(
      `a: ${cel('a')}, b: ${cel('b')}, c: ${cel('c')}`,
      '{ sensors-disagree-1: { signals: [a, b, c] } }',
    );
    expect(site.problems).toEqual([]);
    expect(site.plan.rules.map(({ id, inputs }) => [id, inputs])).toEqual([
      ['l/o/profile-late', []],
      ['l/o/sensors-disagree-1', [0, 1, 2]],
    ]);
  });
  test('a lost sensor is as urgent as the rules that lean on it, whichever input it is', () => {
    const site = compiled(`
l:
  r:
    kind: residue
    signals:
      surface: ${cel('s').replace(/ \}$/, ', expect_every: 5 s }')}
      air: ${cel('a').replace(/ \}$/, ', expect_every: 5 s }')}
`);
    const priority = (id: string) => site.rules.find((rule) => rule.id === id)?.priority[0];
    expect(priority('l/r/lost-air')).toBe('medium');
    expect(priority('l/r/lost-surface')).toBe('medium');
  });
});
