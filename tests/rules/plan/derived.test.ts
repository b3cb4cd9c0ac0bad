/** Derived signals with settings: from the site, the sheet and the station kind, or not at all. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Sheet } from '#rules/material/read-sheet.ts';
import type { CompiledSite } from '#rules/plan/compile.ts';
import { dipTank } from '#rules/stations/dip-tank.ts';
import { judgement, plainClass, type StationDerived } from '#rules/stations/station.ts';
import { compiled, signalLine } from './site.ts';

const custom = (derived: string, signals = `a: ${signalLine('a', '/min')}`): CompiledSite =>
  compiled(`l: { m: { kind: custom, signals: { ${signals} }, derived: { ${derived} } } }`);
const said = (site: CompiledSite) =>
  site.problems.map(({ path, problem }) => [path.slice(4).join('.'), problem]);
const unitOf = (site: CompiledSite, name: string) =>
  site.plan.signals.find(({ id }) => id === `l/m/${name}`)?.unit;

describe('written by the site', () => {
  test('settings in any unit of their quantity', () => {
    const site = custom('tip: { kind: tip-speed, inputs: { speed: a }, blade_diameter: 0.4 m }');
    expect(site.problems).toEqual([]);
    const now = { at: 0, inputs: Float64Array.of(30), uncertain: false, doubt: 0 };
    expect(site.plan.derived[0]?.settled?.(now)).toBeCloseTo(0.628, 3);
    expect(site.coverage.stations[0]?.workedOut).toEqual([
      {
        signal: 'l/m/tip',
        kind: 'tip-speed',
        from: ['l/m/a'],
        settings: [
          {
            setting: 'blade_diameter',
            written: '0.4 m',
            basis: { mark: 'SITE', note: 'set in the site file', source: null },
            confirmed: true,
          },
        ],
        needs: [],
      },
    ]);
  });
  test('what is missing, unknown or unfit is said with its place', () => {
    expect(said(custom('tip: { kind: tip-speed, inputs: { speed: a } }'))).toHaveLength(1);
    expect(
      said(custom('tip: { kind: tip-speed, inputs: { speed: a }, blade_diameter: 0.4 kg }')),
    ).toEqual([['tip.blade_diameter', 'limit in kg for a length (mm)']]);
    expect(
      said(
        custom('tip: { kind: tip-speed, inputs: { speed: a }, blade_diameter: 0.4 m, blade: 3 }'),
      ),
    ).toEqual([['tip.blade', '"blade" is no setting of tip-speed']]);
    expect(said(custom('tip: { inputs: { speed: a } }'))).toEqual([
      ['tip.kind', '"tip" has no kind, and is none this station works out'],
    ]);
  });
  test('a formula takes none', () => {
    const two = `a: ${signalLine('a', 'Cel')}, b: ${signalLine('b', '%')}`;
    const site = custom(
      'd: { kind: dew-point, inputs: { temperature: a, humidity: b }, over: ice }',
      two,
    );
    expect(said(site)).toEqual([['d.over', 'dew-point has no settings, and so no "over"']]);
  });
  test('the result is of the quantity of its input, where the kind takes any', () => {
    const site = custom('mean: { kind: moving-average, inputs: { signal: a }, span: 1 min }');
    expect([site.problems, unitOf(site, 'mean')]).toEqual([[], '/min']);
    const hot = custom(
      'rise: { kind: rate, inputs: { signal: a }, span: 5 min }',
      `a: ${signalLine('a', 'Cel')}`,
    );
    expect([hot.problems, unitOf(hot, 'rise')]).toEqual([[], 'K/min']);
    const none = custom(
      'rise: { kind: rate, inputs: { signal: a }, span: 5 min }',
      `a: ${signalLine('a', 'bar')}`,
    );
    expect(said(none)).toEqual([
      ['rise.inputs.signal', 'rate cannot be worked out from a pressure'],
    ]);
  });
  test('an optional input may be left out', () => {
    const run = 'run: { kind: runtime, inputs: { signal: a }, above: 5 /min }';
    expect(custom(run).problems).toEqual([]);
    expect(custom(run).plan.derived[0]?.inputs).toHaveLength(1);
  });
  test('a mark that starts it anew must be there, and of use', () => {
    const of = (derived: string): CompiledSite =>
      compiled(`
l: { m: { kind: custom, signals: { a: ${signalLine('a', '/min')} },
  marks: { changed: { what: none, meaning: a drum was changed } }, derived: { ${derived} } } }`);
    const run = 'kind: runtime, inputs: { signal: a }, above: 5 /min';
    const site = of(`run: { ${run}, starts_on: [changed] }`);
    expect(site.problems).toEqual([]);
    expect(site.plan.derived[0]).toMatchObject({ marks: [0] });
    expect(said(of(`run: { ${run}, starts_on: [chnged] }`))).toEqual([
      ['run.starts_on.0', 'this station has no mark "chnged"'],
    ]);
    const tip = 'kind: tip-speed, inputs: { speed: a }, blade_diameter: 0.4 m';
    expect(said(of(`tip: { ${tip}, starts_on: [changed] }`))).toEqual([
      ['tip.starts_on', 'tip-speed adds up nothing that a mark could start anew'],
    ]);
  });
});

describe('brought by a station kind', () => {
  const dataSheet = { mark: 'DS', note: 'solids by volume', source: null } as const;
  const brought: StationDerived = {
    name: 'dry-film',
    kind: 'wet-to-dry',
    inputs: { wet: 'tank-level' },
    numbers: [
      {
        setting: 'volume_solids',
        value: null,
        basis: dataSheet,
        confirm: 'DS',
        needs: 'solids by volume (data sheet)',
        fromSheet: (sheet: Sheet) =>
          sheet.targetSolidsPercent === null ? null : `${sheet.targetSolidsPercent} %`,
      },
    ],
    meaning: 'for this test',
  };
  const rule = {
    name: 'dry-film-thin',
    kind: 'band',
    signals: ['dry-film'],
    numbers: [{ setting: 'low', value: '12 um', basis: judgement('for this test') }],
    gate: null,
    class: plainClass,
    priority: ['medium', 'medium'],
    respond: '1 h',
    hazard: dipTank.hazards[0]!.id,
    hold: null,
    label: {
      word: 'NOTICE',
      sentence: 's',
      consequence: 'c',
      steps: ['s'],
      doNot: [],
      caution: '',
    },
  } as const;
  const kind = dipTank as { derived: readonly unknown[]; rules: readonly unknown[] };
  const { derived, rules } = kind;
  beforeEach(() => {
    kind.rules = [...rules, rule];
  });
  afterEach(() => {
    kind.derived = derived;
    kind.rules = rules;
  });
  const tank = (with_: StationDerived, sheet = {}, words = ''): CompiledSite => {
    kind.derived = [...derived, with_];
    return compiled(
      `l: { m: { kind: dip-tank, material: adhesive-a, signals: { tank-level: ${signalLine('a', 'mm')} }${words} } }`,
      {},
      sheet,
    );
  };
  const card = (site: CompiledSite) => site.rules.find(({ id }) => id === 'l/m/dry-film-thin');
  const needs = ['solids by volume (data sheet)'];

  test('without its number it does not exist, and coverage says which one it needs', () => {
    const site = tank(brought);
    expect(site.problems).toEqual([]);
    expect(unitOf(site, 'dry-film')).toBeUndefined();
    expect(card(site)).toBeUndefined();
    const [station] = site.coverage.stations;
    expect(station?.notWorkedOut).toEqual([{ signal: 'l/m/dry-film', needs }]);
    expect(station?.notArmed).toContainEqual({ rule: 'l/m/dry-film-thin', needs });
  });
  test('nor does what is worked out from it', () => {
    kind.derived = [...derived, { ...brought, name: 'other', inputs: { wet: 'dry-film' } }];
    const before = kind.derived;
    const site = compiled(
      `l: { m: { kind: dip-tank, signals: { tank-level: ${signalLine('a', 'mm')} } } }`,
    );
    expect(site.coverage.stations[0]?.notWorkedOut).toEqual([]);
    kind.derived = [...before, brought];
    const both = compiled(
      `l: { m: { kind: dip-tank, signals: { tank-level: ${signalLine('a', 'mm')} } } }`,
    );
    expect(both.coverage.stations[0]?.notWorkedOut.map(({ signal }) => signal)).toEqual([
      'l/m/dry-film',
      'l/m/other',
    ]);
  });
  test('from the material sheet it is proved, and the rule armed', () => {
    const site = tank(brought, { target_solids: '29 %' });
    expect(site.problems).toEqual([]);
    expect(
      site.plan.derived.find(({ settled }) => settled !== undefined)?.unproven,
    ).toBeUndefined();
    expect(card(site)?.readiness).toBe('armed');
  });
  test('on an unconfirmed number it is uncertain, and so is the rule', () => {
    const site = tank({ ...brought, numbers: [{ ...brought.numbers![0]!, value: '30 %' }] });
    expect(site.plan.derived.find(({ settled }) => settled !== undefined)?.unproven).toBe(true);
    expect(card(site)).toMatchObject({ readiness: 'armed-limit-unconfirmed', needs });
  });
  test('the site gives the number alone, and kind and inputs stay', () => {
    const words = ', derived: { dry-film: { volume_solids: 29 % } }';
    const site = tank(brought, {}, words);
    expect([site.problems, card(site)?.readiness]).toEqual([[], 'armed']);
    const wrong = tank(brought, {}, ', derived: { dry-film: { volume_solid: 29 % } }');
    expect(said(wrong)).toEqual([
      ['dry-film.volume_solid', '"volume_solid" is no setting of wet-to-dry'],
    ]);
  });
  test('does without an optional input that is not there, and starts on its marks', () => {
    const site = tank({
      name: 'turns',
      kind: 'runtime',
      inputs: { signal: 'tank-level', start: 'withdrawing' },
      numbers: [{ setting: 'above', value: '5 mm', basis: judgement('for this test') }],
      meaning: 'for this test',
    });
    expect(site.problems).toEqual([]);
    expect(unitOf(site, 'turns')).toBe('s');
  });
});
