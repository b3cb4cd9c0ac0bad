/** What ages or spoils adhesive besides cold: a warm store, the way it came, its date. */
import type { Label } from '../alarm/label.ts';
import type { Sheet } from '../material/read-sheet.ts';
import { parseDuration } from '../quantity/duration.ts';
import { liftCaution, storageLimit, storeFacts } from './adhesive-store-cold.ts';
import { celsius, fromDataSheet } from './sheet-number.ts';
import {
  commonPractice,
  judgement,
  plainClass,
  type RuleTemplate,
  type TemplateNumber,
  tuning,
} from './station.ts';

const warnBelowHigh = 5;
const msPerD = 86_400_000;
const earlyD = 30;

const low = { gate: null, class: plainClass, priority: ['low', 'low'], respond: '8 h' } as const;

const warm: RuleTemplate = {
  ...low,
  name: 'warm-store',
  kind: 'band',
  signals: ['air', 'wall', 'bottom'],
  numbers: [
    {
      setting: 'high',
      value: '30 Cel',
      basis: commonPractice('5 K below the highest storage temperature'),
      confirm: 'DS',
      needs: storageLimit,
      fromSheet: (sheet) =>
        celsius(sheet.storageHighC === null ? null : sheet.storageHighC - warnBelowHigh),
    },
    {
      setting: 'high_high',
      value: '35 Cel',
      basis: commonPractice('highest storage temperature of waterborne adhesives'),
      confirm: 'DS',
      needs: storageLimit,
      fromSheet: (sheet) => celsius(sheet.storageHighC),
    },
    tuning('on_delay', '1 h'),
    tuning('deadband', '1 K'),
  ],
  hazard: 'heat',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: '{$signal} at {$value}, above {$limit}, for {$duration}.',
    consequence: 'Heat ages the adhesive: it thickens or gels, and its shelf life shortens.',
    steps: [
      'Confirm with a second thermometer at the containers.',
      'Cool the store: shade, ventilation, doors against the sun.',
      'Have the process engineer work out the use-by date anew; heat may shorten it, never lengthen it.',
    ],
    doNot: ['extend a date'],
    caution: liftCaution,
  },
  facts: storeFacts,
};

const onTheDock = { ...low, respond: '1 h', hazard: 'freight', hold: 'container' } as const;
const freightLabel: Label = {
  word: 'NOTICE',
  sentence:
    '{$station}: the logger of a delivery shows {$value}; the limit is {$limit}. What came with it is on hold.',
  consequence: 'Adhesive that froze or overheated on the way looks right and is spoilt.',
  steps: [
    'Measure at the wall of each drum and enter the readings; keep the logger.',
    'Tag them all and put them in a hold area between {$low} and {$high}.',
    'Tell quality and the buyer: the carrier must hear of it now.',
  ],
  doNot: [
    'leave it on a cold or sunny dock',
    'send it back before quality has the logger’s record',
  ],
  caution: liftCaution,
};

const freight = (name: string, signal: string, limit: TemplateNumber): RuleTemplate => ({
  ...onTheDock,
  name,
  kind: 'present',
  signals: [signal],
  marks: ['received', 'put-away'],
  numbers: [limit],
  fixed: { at_reading: true },
  label: freightLabel,
  facts: storeFacts,
});

const freightCold = freight('freight-out-of-range', 'freight-low', {
  setting: 'low',
  value: '5 Cel',
  basis: commonPractice('least storage temperature of waterborne adhesives'),
  confirm: 'DS',
  needs: storageLimit,
  fromSheet: (sheet) => celsius(sheet.storageLowC),
});

const freightHot = freight('freight-out-of-range-hot', 'freight-high', {
  setting: 'high',
  value: '40 Cel',
  basis: judgement('a short time on the way is milder than months in a store'),
});

/** The road may be colder than the works: the site says when, from the first frost on the way to the last. */
const seasonDay = (setting: string, what: string, example: string): TemplateNumber => ({
  setting,
  value: null,
  basis: { mark: 'SITE', note: `when frost ${what} on the way here`, source: null },
  confirm: 'SITE',
  needs: `the day on which the frost season ${what} on the way here, as "${example}" (rule freight-unlogged-season: ${setting}), or a sensor outside (signal outside)`,
});

const unlogged: RuleTemplate = {
  ...onTheDock,
  name: 'freight-unlogged',
  kind: 'present',
  signals: ['outside-week'],
  marks: ['received', 'logger-read'],
  numbers: [
    {
      setting: 'low',
      value: '7 Cel',
      basis: judgement('a week so cold on average has frost at night: the frost season'),
    },
    {
      setting: 'on_delay',
      value: '2 h',
      basis: judgement('time to find and read the logger at the dock'),
    },
    tuning('deadband', '1 K'),
  ],
  fixed: { needs_item: true },
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: container {$item} came in the frost season {$duration} ago, and nobody has read a logger that travelled with it.',
    consequence: 'Nobody knows whether it froze on the way; it may look right and be spoilt.',
    steps: [
      'Find the logger and enter its lowest and highest, then write down that it was read.',
      'Without one: measure at the drum’s wall, tag it “hold”, and ask quality for a test.',
      'Tell the buyer: in winter each delivery needs a logger.',
    ],
    doNot: ['take a warm wall for proof that it never froze'],
    caution: liftCaution,
  },
};

/** By the calendar, where nobody measures outside. */
const unloggedSeason: RuleTemplate = {
  ...unlogged,
  name: 'freight-unlogged-season',
  kind: 'age',
  signals: [],
  moot: ({ bound }) =>
    bound('outside')
      ? 'The sensor outside tells when there may be frost; rule freight-unlogged judges by it.'
      : null,
  numbers: [
    {
      setting: 'limit',
      value: '2 h',
      basis: judgement('time to find and read the logger at the dock'),
    },
    { setting: 'early', value: '100 %', basis: judgement('told once') },
    seasonDay('season_from', 'begins', '10-15'),
    seasonDay('season_until', 'ends', '04-15'),
  ],
  fixed: {},
  label: {
    ...unlogged.label,
    sentence:
      '{$station}: container {$item} came in the frost season {$reached} ago, and nobody has read a logger that travelled with it.',
  },
};

const wayRisk: RuleTemplate = {
  ...low,
  name: 'way-too-cold',
  kind: 'band',
  signals: ['way-margin'],
  numbers: [
    {
      setting: 'low',
      value: '0 h',
      basis: judgement('the wall would be too cold before it arrives, were it so cold all the way'),
    },
  ],
  hazard: 'freight',
  hold: null,
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: on the way planned, in the coldest air forecast, the wall of an unheated drum falls below {$low} before it arrives.',
    consequence: 'The delivery may freeze on the road, or over a weekend in a yard.',
    steps: [
      'Have it sent another day, on a shorter way, or heated.',
      'Have a logger sent with it, between the drums.',
      'Have it met at the dock: measure at the wall of each drum.',
    ],
    doNot: ['count on insulation alone over a weekend'],
    caution: liftCaution,
  },
  facts: (given) => ({ low: given.number('cold-adhesive', 'low_low') ?? 'its floor' }),
};

/** So long before the limit, as an age; null where the limit is no longer than that, or nobody gave it. */
const earlier = (rule: string): TemplateNumber => ({
  setting: 'early',
  value: '80 %',
  basis: judgement(`${earlyD} days before, or at four fifths of a shorter life`),
  follows(given) {
    const read = parseDuration(given.number(rule, 'limit') ?? '');
    const ms = read.ok ? read.value - earlyD * msPerD : 0;
    return ms > 0 ? { written: `${ms / msPerD} d`, confirmed: true } : null;
  },
});

const days = (ms: number | null): string | null => (ms === null ? null : `${ms / msPerD} d`);

const life = (
  name: string,
  from: string,
  note: string,
  key: string,
  ofSheet: (sheet: Sheet) => number | null,
  sentence: string,
): RuleTemplate => ({
  ...low,
  name,
  kind: 'age',
  signals: [],
  marks: [from, 'used-up'],
  numbers: [fromDataSheet('limit', note, key, (sheet) => days(ofSheet(sheet))), earlier(name)],
  fixed: { once: true },
  hazard: 'shelf-life',
  hold: 'container',
  label: {
    word: 'NOTICE',
    sentence,
    consequence: 'Adhesive past its date may look right; film and bond are weak.',
    steps: [
      'Use the oldest first while its date lasts; past it, take it off line.',
      'Tag it “hold” and ask quality for the retest that the data sheet names.',
      'Without a retest: have it disposed of by the data sheet and the site’s rules.',
    ],
    doNot: ['put a new date on it', 'blend it into fresh adhesive'],
    caution: liftCaution,
  },
});

const lives: readonly RuleTemplate[] = [
  life(
    'shelf-life',
    'manufactured',
    'the shelf life from the day it was made',
    'shelf_life',
    (sheet) => sheet.shelfLifeMs,
    'Container {$item}, made {$clock}, is {$reached} old; it keeps {$required}.',
  ),
  life(
    'opened-life',
    'opened',
    'how long it keeps once it was first drawn from',
    'opened_life',
    (sheet) => sheet.openedLifeMs,
    'Container {$item} has been in use for {$reached}, since {$clock}; in use it keeps {$required}.',
  ),
  life(
    'let-down-life',
    'let-down',
    'how long it keeps once it was let down',
    'let_down_life',
    (sheet) => sheet.letDownLifeMs,
    'Container {$item} was let down {$reached} ago, at {$clock}; let down it keeps {$required}.',
  ),
];

export const adhesiveStoreGoods: readonly RuleTemplate[] = [
  warm,
  freightCold,
  freightHot,
  unlogged,
  unloggedSeason,
  wayRisk,
  ...lives,
];
