/** What a dip tank works out once its numbers are given, each number written once. */
import { expect, test } from 'vitest';
import { compiled, signalLine } from './site.ts';

const lot = {
  target_solids: '35 %',
  oven_solids: '35 %',
  oven_solids_u: '0.3 %',
  oven_density: '1.10 g/mL',
  oven_density_u: '0.001 g/mL',
  oven_temperature: '23 Cel',
};
const tank = (more = '', sheet: object = {}) =>
  compiled(
    `l: { t: { kind: dip-tank, material: adhesive-a, signals: {
      density: { unit: g/mL, by_hand: true }, sample-temperature: { unit: Cel, by_hand: true },
      flow: ${signalLine('f', 'L/min')}, filter-dp: ${signalLine('d', 'bar')},
      strokes: ${signalLine('s', '/min')}, withdrawal: ${signalLine('w', 'm/min')} } ${more} } }`,
    {},
    sheet,
  );
const workedOut = (site: ReturnType<typeof tank>) =>
  site.coverage.stations[0]!.workedOut.map(({ signal }) => signal.slice('l/t/'.length));

test('nothing is worked out while its numbers are missing, and coverage says which', () => {
  const site = tank();
  expect(site.problems).toEqual([]);
  expect(workedOut(site)).toEqual([]);
  const lacking = site.coverage.stations[0]!.notWorkedOut;
  expect(lacking.map(({ signal }) => signal.slice('l/t/'.length)).sort()).toEqual([
    'density-solids',
    'film',
    'filter-share',
    'flow-share',
    'solids-margin',
    'turnover',
  ]);
});

test('the sheet’s oven test and the rules’ own targets give solids, margin and shares', () => {
  const rules =
    ', rules: { circulation-lost: { target: 40 L/min }, filter-loaded: { target: 0.2 bar } }';
  const site = tank(rules, lot);
  expect(site.problems).toEqual([]);
  expect(workedOut(site).sort()).toEqual([
    'density-solids',
    'filter-share',
    'flow-share',
    'solids-margin',
  ]);
  const margin = site.coverage.stations[0]!.workedOut.find(({ signal }) =>
    signal.endsWith('/solids-margin'),
  )!;
  expect(margin.settings).toEqual(
    expect.arrayContaining([
      expect.objectContaining({ setting: 'target', written: '35 %' }),
      expect.objectContaining({ setting: 'allowed', written: '1 %' }),
    ]),
  );
  const rule = site.rules.find(({ id }) => id === 'l/t/bath-solids-density')!;
  expect(rule.readiness).toBe('armed-limit-unconfirmed');
  expect(rule.needs.join()).toContain('how well this density is read');
});

test('a target written for the solids serves the density too', () => {
  const site = tank(', rules: { bath-solids: { target: 34 %, below: 2 % } }', lot);
  expect(site.problems).toEqual([]);
  const margin = site.coverage.stations[0]!.workedOut.find(({ signal }) =>
    signal.endsWith('/solids-margin'),
  )!;
  expect(margin.settings).toEqual(
    expect.arrayContaining([
      expect.objectContaining({ setting: 'target', written: '34 %' }),
      expect.objectContaining({ setting: 'allowed', written: '2 %' }),
    ]),
  );
});

test('panels give the film, and the pump’s data sheet the turnover', () => {
  const panels =
    '[["0.6 m/min", "15 um"], ["1 m/min", "19.4 um"], ["1.4 m/min", "23 um"], ["2 m/min", "27.4 um"]]';
  const site = tank(
    `, derived: { film: { panels: ${panels} }, turnover: { stroke_volume: 0.2 L, tank_volume: 300 L } }`,
  );
  expect(site.problems).toEqual([]);
  expect(workedOut(site).sort()).toEqual(['film', 'turnover']);
});
