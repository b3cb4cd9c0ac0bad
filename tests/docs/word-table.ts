/**
 * What the code itself does not say of its words: where each comes from, and the meanings of those that
 * stand in the code as a bare word. `origin` holds for a whole section, `origins` for single words.
 */
import { fieldOrigins, pageMeanings } from './word-table-page.ts';

export interface SectionWords {
  readonly origin: string;
  readonly origins?: Readonly<Record<string, string>>;
  readonly meanings?: Readonly<Record<string, string>>;
}

const trade = 'trade use';
const ours = 'ours';
const alarmStandard = 'ISA-18.2 / IEC 62682';
const labelStandard = 'ANSI Z535.4 / ISO 3864';

export const wordTable: Readonly<Record<string, SectionWords>> = {
  'Signal words': {
    origin: labelStandard,
    meanings: {
      DANGER: 'Somebody will be killed or badly hurt if it is not avoided.',
      WARNING: 'Somebody could be killed or badly hurt if it is not avoided.',
      CAUTION: 'Somebody could be slightly or moderately hurt if it is not avoided.',
      NOTICE: 'Nobody is hurt by it; material, parts or equipment can be spoilt.',
    },
  },
  'Parts of an alarm': {
    origin: labelStandard,
    origins: { sentence: ours, deferral: ours, advice: ours },
    meanings: {
      sentence: 'What is wrong and where, the limit, and since when or how soon.',
      consequence: 'What it leads to if nobody acts.',
      steps: 'The first three things to do, in order.',
      'do not': 'What makes it worse or injures somebody. Stands first where people can be hurt.',
      caution: 'How the steps themselves can hurt somebody.',
      deferral: 'Whose word comes before this page: data sheet, maker, site plan, local codes.',
      advice: 'The page tells and advises; it stops nothing and is no safety system.',
    },
  },
  'Alarm states': {
    origin: alarmStandard,
    meanings: {
      normal: 'Nothing is wrong, and nothing is left to answer.',
      unacknowledged: 'It is wrong now, and nobody has answered.',
      acknowledged: 'It is wrong now, and somebody has said that they have it.',
      'returned-unacknowledged': 'It is over, and nobody had answered. It waits for an answer.',
      'latched-unacknowledged': 'It is over but stays. It waits for an answer, then for a reset.',
      'latched-acknowledged': 'It is over and answered but stays, until somebody resets it.',
      shelved: 'A person has silenced it for a time, with a reason. It is judged all the same.',
      'suppressed-by-design':
        'Not called for, because in the plant’s present state it means nothing.',
      'out-of-service': 'Taken out for maintenance until somebody puts it back.',
    },
  },
  Transitions: {
    origin: alarmStandard,
    origins: { removed: ours, 'passed-on': ours },
    meanings: {
      raised: 'It went wrong, for as long as the rule waits.',
      returned: 'What was wrong is well again.',
      acknowledged: 'A person said: I have it. That stops nothing.',
      reset: 'A person closed an alarm that stays, after it was over.',
      realarmed: 'Told again: it got worse, or nothing improved in the time there was to act.',
      shelved: 'A person silenced it for a time.',
      unshelved: 'The silence ended, by a person or because its time was up.',
      suppressed: 'The plant went into a state in which it means nothing.',
      released: 'The plant came back from that state; the alarm counts again.',
      'removed-from-service': 'Taken out for maintenance.',
      'returned-to-service': 'Put back after maintenance.',
      'passed-on': 'Whoever was asked cannot take it: the next person is asked.',
      removed: 'Its rule is no longer in the site file.',
    },
  },
  Priorities: {
    origin: alarmStandard,
    meanings: {
      high: 'Act at once. How soon, not who can be hurt.',
      medium: 'Act soon, within the time the rule gives.',
      low: 'Can wait, within the time the rule gives.',
    },
  },
  'Grades of a reading': {
    origin: trade,
    meanings: {
      good: 'The reading is judged as it came.',
      uncertain: 'The reading is judged and marked with its cause.',
      bad: 'The reading has no value that may be used; it is kept with its cause, never judged.',
    },
  },
  'Why a reading is not good': {
    origin: ours,
    meanings: {
      '0': 'Nothing is known against it.',
      '1': 'The computer’s clock could not be trusted when it came; its time may be wrong.',
      '2': 'The broker had kept it from earlier (an MQTT retained message); it may be old.',
      '3': 'The sensor is past the date of its next calibration.',
      '4': 'It changed faster than max_rate in the site file allows.',
      '5': 'The sensor sent the word “uncertain” with it.',
      '6': 'It was worked out, not measured.',
      '7': 'It was worked out from at least one reading that is uncertain.',
      '8': 'Two different values came for the same time. This one is kept and not judged.',
      '9': 'It rests on a number that this site has not confirmed, or a model not fitted to it.',
      '10': 'It adds up over a time, and nobody measured during a part of it.',
      '11': 'The current of its 4 to 20 mA loop is beyond the measuring range and not yet a fault (NE 43).',
      '12': 'Its thermocouple is read against a cold junction, and that has been silent for too long.',
      '100': 'The message is not of the kind that the site file promises.',
      '101': 'The message held no number that can be one.',
      '102': 'It lies outside the range in the site file: the sensor cannot read that.',
      '103': 'It says it was taken later than now: a clock is wrong.',
      '104': 'The sensor sent the word “bad” with it.',
      '105': 'It would be worked out from a reading that cannot be used.',
      '106': 'The formula holds only in a range, and a reading lies outside it.',
      '107': 'The message names another unit than the site file.',
      '108': 'It must have seen more before it can tell.',
      '109':
        'The current of its loop says fault, but has not for 4 s; it is no value either (NE 43).',
      '110': 'The current of its loop has been at 3.6 mA or less for 4 s: a fault (NE 43).',
      '111': 'The current of its loop has been at 21 mA or more for 4 s: a fault (NE 43).',
      '112':
        'No such sensor sends that: look for an open circuit, then for the wrong type in the site file.',
      '113':
        'No such sensor has so little resistance: look for a short circuit in sensor or cable.',
      '114': 'A thermocouple cannot be read without the temperature of its cold junction.',
      '115':
        'The site’s own file that works it out gave nothing that can be used, or is switched off.',
      '116':
        'Said of a lost sensor whose readings come too late to be judged: its clock is behind, or they wait on the way.',
    },
  },
  'Readiness of a rule': {
    origin: ours,
    meanings: {
      armed: 'The rule judges, and its limits are confirmed.',
      'armed-limit-unconfirmed':
        'The rule judges, on a limit that the data sheet or the site still has to confirm.',
      'not-armed':
        'The rule cannot judge: a number it needs has not been given. It says which, under “needs”.',
    },
  },
  'States of a hazard': {
    origin: ours,
    meanings: {
      watched: 'At least one rule looks for it.',
      'not-watched': 'No rule looks for it, and the reason is given.',
      unjudged: 'A rule looks for it, but its sensor gives nothing usable now.',
    },
  },
  'What can be held': {
    origin: trade,
    meanings: {
      container: 'A drum, pail or tank of adhesive or primer.',
      rack: 'A rack of parts.',
      lot: 'Parts or material of one lot number.',
      shot: 'The parts of one press cycle.',
    },
  },
  Dispositions: {
    origin: trade,
    meanings: {
      released: 'Fit for use as it is.',
      'released-after-test': 'Fit for use, because a test says so.',
      reworked: 'Made right, as stripped and coated anew.',
      scrapped: 'Thrown away as local rules say.',
      returned: 'Sent back to its supplier.',
    },
  },
  'Where a number comes from': {
    origin: ours,
    meanings: {
      STD: 'A published standard.',
      PUB: 'Another published source, named beside it.',
      DS: 'The material’s or the equipment’s data sheet.',
      CP: 'Common practice of the trade, without a published source.',
      EJ: 'Our judgement, to be proved on the line.',
      SITE: 'Set by this site, in its review, drawing or site file.',
    },
  },
  'Kinds of signals': {
    origin: ours,
    meanings: {
      measured: 'A sensor sends it.',
      derived: 'Worked out from other signals.',
      manual: 'A person reads it and enters it.',
    },
  },
  'Conditions of the agent': {
    origin: 'NE 107',
    meanings: {
      good: 'It works.',
      'maintenance-required': 'It works, and somebody should see to it soon.',
      'out-of-specification': 'It works outside what it was made for; do not rely on all of it.',
      'function-check': 'It is being set up or tested; what it tells is not the plant.',
      failure: 'A part does not work; what it does is not done.',
    },
  },
  'Station kinds': { origin: trade, origins: { custom: ours } },
  Signals: {
    origin: trade,
    origins: {
      'compressed-air: pdp': 'ISO 8573-1 (pressure dew point)',
      'dip-tank: withdrawing': ours,
      'drum-mixer: in-use': ours,
      'drying-oven: loaded': ours,
      'drying-oven: zone-1-check': ours,
      'drying-oven: zone-2-check': ours,
      'drying-oven: zone-3-check': ours,
    },
  },
  'Signals worked out': {
    origin: trade,
    origins: { 'residue: self-heat-excess': ours, 'residue: bin-excess': ours },
  },
  'Kinds of derived signals': { origin: ours },
  'Rule kinds': {
    origin: ours,
    origins: { band: trade, deviation: `${alarmStandard} (deviation alarm)` },
  },
  Rules: { origin: ours },
  Hazards: { origin: trade },
  Placeholders: { origin: 'ours; written as in Unicode MessageFormat 2' },
  'Site file': { origin: ours, origins: fieldOrigins },
  'Material sheet': {
    origin: trade,
    origins: { source: ours, residue_limit: ours, residue_kind: ours },
  },
  ...pageMeanings,
  Commands: { origin: ours },
  Flags: {
    origin: ours,
    origins: { 'replay --timezone': 'IANA time zone database' },
    meanings: { 'export --format': 'How the samples are written: csv (RFC 4180).' },
  },
  Routes: {
    origin: 'ours, over HTTP (RFC 9110)',
    origins: {
      'GET /metrics': 'OpenMetrics 1.0',
      'GET /api/stream': 'ours, as server-sent events (WHATWG HTML)',
    },
  },
  'Fields of note': {
    origin: ours,
    origins: {
      'Health.condition': 'NE 107',
      'Signal.unit': 'UCUM',
      'Site.timezone': 'IANA time zone database',
      'Label.word': labelStandard,
      'Alarm.priority': alarmStandard,
      'Problem.detail': 'RFC 9457',
    },
  },
  'Stream events': {
    origin: ours,
    meanings: {
      sample: 'A signal has a new reading; at most four a second, the latest wins.',
      alarm: 'An alarm changed, with the whole alarm as it is now.',
      hold: 'A hold was set or lifted.',
      aside: 'An alarm was put aside, or is put aside no more.',
      mark: 'Somebody said that something happened, or a device did.',
      site: 'Another site file holds from here on.',
      health: 'The agent’s condition; the first event, and again when it changes.',
      reset: 'What was missed is not kept any more: read everything again.',
    },
  },
};
