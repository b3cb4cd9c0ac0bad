/** What a load in the drying oven can suffer: too little heat, too much, a conveyor that stands. */
import type { Sheet } from '../material/read-sheet.ts';
import { firePlanFacts } from './fire-plan.ts';
import {
  type Basis,
  judgement,
  plainClass,
  type RuleTemplate,
  type TemplateNumber,
} from './station.ts';

const minutes = (ms: number): string => `${Number((ms / 60_000).toFixed(3))} min`;
const celsius = (value: number): string => `${Number(value.toFixed(3))} Cel`;

const dataSheet = (note: string): Basis => ({ mark: 'DS', note, source: null });

const fromDataSheet = (
  setting: string,
  note: string,
  key: string,
  fromSheet: (sheet: Sheet) => string | null,
): TemplateNumber => ({
  setting,
  value: null,
  basis: dataSheet(note),
  confirm: 'DS',
  needs: `${note} (${key} of the material sheet)`,
  fromSheet,
});
const temperature = (value: number | null): string | null =>
  value === null ? null : celsius(value);
const time = (ms: number | null): string | null => (ms === null ? null : minutes(ms));

const gloves = 'Parts and racks are hot; gloves as the data sheet says.';

export const underDried: RuleTemplate = {
  name: 'under-dried',
  kind: 'dry',
  signals: ['metal', 'loaded'],
  numbers: [
    fromDataSheet('above', 'the metal temperature at which the coat dries', 'dry_above', (sheet) =>
      temperature(sheet.dryAboveC),
    ),
    fromDataSheet('above_for', 'the least time at or above it', 'dry_for', (sheet) =>
      time(sheet.dryForMs),
    ),
    {
      setting: 'dwell',
      value: null,
      basis: { mark: 'SITE', note: 'time from entry to exit at this speed', source: null },
      confirm: 'SITE',
      optional: true,
      needs:
        'the time from entry to exit (rule under-dried: dwell), without which it is told only at the exit',
    },
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: 'under-drying',
  hold: 'rack',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}, load of {$clock}: metal {$reached} above {$limit}, {$required} needed, and only {$left} left before exit; the drying can no longer be met.',
    consequence:
      'Water can stay in the coat: it blisters, or the rubber sweeps it off in the mould; the bond may fail although the parts look right.',
    steps: [
      'Tag the rack “hold” at the exit.',
      'Compare set temperature, line speed, exhaust and load with the run card; load no more until explained.',
      'The process engineer decides: dry again only inside the allowed total heat, test, or scrap.',
    ],
    doNot: [
      'raise the heat to catch up: the limits of dried residue come first',
      'stack it wet, or mould held parts',
    ],
    caution: gloves,
  },
};

export const overBaked: RuleTemplate = {
  name: 'over-baked',
  kind: 'dry',
  signals: ['metal', 'loaded'],
  numbers: [
    {
      ...fromDataSheet('upper', 'a metal temperature that ages the coat', 'bake_upper', (sheet) =>
        sheet.bakeUpperForMs === null ? null : temperature(sheet.bakeUpperC),
      ),
      optional: true,
    },
    {
      ...fromDataSheet('upper_for', 'the longest time at or above it', 'bake_upper_for', (sheet) =>
        sheet.bakeUpperC === null ? null : time(sheet.bakeUpperForMs),
      ),
      optional: true,
    },
    {
      ...fromDataSheet(
        'peak',
        'the highest metal temperature the coat may see before rubber',
        'bake_peak',
        (sheet) => temperature(sheet.bakePeakC),
      ),
      unless: 'upper',
    },
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '30 min',
  hazard: 'over-bake',
  hold: 'rack',
  label: {
    word: 'NOTICE',
    sentence: '{$station}, load of {$clock}: metal reached {$value}; limit {$limit}.',
    consequence: 'A film that cured in the oven looks perfect, and the rubber does not hold on it.',
    steps: [
      'Tag the rack “hold” at the exit.',
      'Mark it as over-baked, with the peak and the time.',
      'The process engineer decides on a trial bond.',
    ],
    doNot: ['bake it again to be sure', 'mould held parts'],
    caution: gloves,
  },
};

export const conveyorStopped: RuleTemplate = {
  name: 'conveyor-stopped',
  kind: 'band',
  signals: ['conveyor'],
  numbers: [
    {
      setting: 'low',
      value: '1 1',
      basis: judgement('the conveyor stands while a load is inside'),
    },
    {
      setting: 'on_delay',
      value: '60 s',
      basis: judgement('a jog is no stop; with infrared heat 10 s, for the part heats within them'),
      follows: (given) =>
        given.heating === 'infrared' ? { written: '10 s', confirmed: true } : null,
    },
  ],
  gate: { signal: 'loaded', low: '1 1' },
  class: plainClass,
  priority: ['high', 'high'],
  respond: '5 min',
  hazard: 'soak',
  hold: null,
  firePlan: true,
  facts: firePlanFacts,
  label: {
    word: 'WARNING',
    sentence:
      '{$station}: the conveyor has stood since {$clock}, for {$duration}, with a load inside.',
    consequence:
      'The load stays in the heat and over-bakes; dried residue on racks and floor heats up and can light itself.',
    steps: [
      'Smoke, glow or burning smell: leave, fire alarm, site fire plan{$plan}.',
      'Otherwise turn the heat off at the oven’s outside control.',
      'Restart the conveyor by its instruction, or follow the site’s plan for a stopped load; tag the load “hold”.',
    ],
    doNot: ['reach in', 'leave the load standing in the heat'],
    caution: 'Hot surfaces; a chain that can start without warning. Lock out by local rules.',
  },
};
