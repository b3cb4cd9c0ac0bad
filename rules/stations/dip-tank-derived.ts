/** What is worked out at a dip tank: solids from density, film from speed, how loop and filter stand. */
import { partsSince } from './parts-since.ts';
import { fromDataSheet, fromSite, written } from './sheet-number.ts';
import { judgement, type StationDerived, type TemplateNumber } from './station.ts';

/** The same number as a rule of this station has. */
const asRule = (setting: string, rule: string, of: string, needs: string): TemplateNumber => ({
  setting,
  value: null,
  basis: { mark: 'SITE', note: `as ${of} of the rule ${rule}`, source: null },
  confirm: 'SITE',
  needs,
  follows: (given) => {
    const own = given.number(rule, of);
    return own === null ? null : { written: own, confirmed: given.confirmed(rule, of) };
  },
});

/** The oven test of the lot, which the density curve hangs on. */
const anchor: readonly TemplateNumber[] = [
  fromDataSheet('oven_solids', 'solids of this lot by oven', 'oven_solids', (sheet) =>
    written(sheet.ovenSolidsPercent, '%'),
  ),
  fromDataSheet('oven_solids_u', 'the uncertainty of that test', 'oven_solids_u', (sheet) =>
    written(sheet.ovenSolidsUPercent, '%'),
  ),
  fromDataSheet('oven_density', 'density of the same sample', 'oven_density', (sheet) =>
    written(sheet.ovenDensityKgPerM3, 'kg/m3'),
  ),
  fromDataSheet('oven_density_u', 'the uncertainty of that density', 'oven_density_u', (sheet) =>
    written(sheet.ovenDensityUKgPerM3, 'kg/m3'),
  ),
  fromDataSheet('oven_temperature', 'the temperature it was read at', 'oven_temperature', (sheet) =>
    written(sheet.ovenC, 'Cel'),
  ),
  {
    setting: 'density_u',
    value: '0.001 g/mL',
    basis: judgement(
      'half a division of a hydrometer of 0.002; in solids it is some 0.3 %, and one part of air in a hundred reads 3.4 % too low',
    ),
    confirm: 'SITE',
    needs: 'how well this density is read (derived density-solids and solids-margin: density_u)',
  },
];

export const dipTankDerived: readonly StationDerived[] = [
  {
    name: 'weir-fall',
    kind: 'weir-fall',
    inputs: { tank: 'tank-level', weir: 'weir-level' },
    meaning: 'how far the liquid falls over the return weir',
  },
  {
    name: 'density-solids',
    kind: 'solids',
    inputs: { density: 'density', temperature: 'sample-temperature' },
    numbers: anchor,
    meaning: 'solids of the bath by mass, from density at its temperature and the lot’s oven test',
  },
  {
    name: 'solids-margin',
    kind: 'solids-margin',
    inputs: { density: 'density', temperature: 'sample-temperature' },
    numbers: [
      ...anchor,
      asRule(
        'target',
        'bath-solids',
        'target',
        'the bath’s target solids (target_solids of the material sheet, or rule bath-solids: target)',
      ),
      asRule(
        'allowed',
        'bath-solids',
        'below',
        'how far solids may be off (rule bath-solids: below)',
      ),
    ],
    meaning:
      'what the solids may still move before they are out, counting what the density can be wrong by',
  },
  {
    name: 'film',
    kind: 'film-from-withdrawal',
    inputs: { withdrawal: 'withdrawal' },
    numbers: [
      {
        ...fromSite(
          'panels',
          'four panels or more drawn from this tank, each with its speed and film',
          'derived film: panels',
        ),
        unless: 'viscosity',
      },
    ],
    meaning: 'film that the speed of withdrawal leaves, by panels drawn from this tank',
  },
  {
    name: 'temperature-mean',
    kind: 'moving-average',
    inputs: { signal: 'temperature' },
    numbers: [
      {
        setting: 'span',
        value: '1 h',
        basis: judgement('long enough for the whole bath to follow'),
      },
    ],
    meaning: 'mean temperature of the bath over the last hour, to read beside a panel',
  },
  {
    name: 'flow-share',
    kind: 'flow-share',
    inputs: { flow: 'flow' },
    numbers: [
      asRule(
        'normal',
        'circulation-lost',
        'target',
        'the loop’s normal flow (rule circulation-lost: target)',
      ),
    ],
    meaning: 'flow of the loop as a share of its normal flow',
  },
  {
    name: 'filter-share',
    kind: 'filter-share',
    inputs: { drop: 'filter-dp' },
    numbers: [
      asRule(
        'clean',
        'filter-loaded',
        'target',
        'the pressure drop of the clean filter at normal flow (rule filter-loaded: target)',
      ),
    ],
    meaning: 'pressure drop of the filter as a share of the clean one',
  },
  {
    name: 'turnover',
    kind: 'turnover',
    inputs: { strokes: 'strokes' },
    startsOn: ['filled'],
    numbers: [
      fromSite(
        'stroke_volume',
        'what one stroke of the pump moves',
        'derived turnover: stroke_volume',
      ),
      fromSite('tank_volume', 'what tank and lines hold', 'derived turnover: tank_volume'),
    ],
    meaning: 'how often the loop has moved the whole tank since it was filled',
  },
  partsSince('parts-since-make-up', 'made-up', 'rack-in', 'dipped since the last make-up'),
];
