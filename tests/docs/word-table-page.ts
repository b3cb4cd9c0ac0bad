/** The part of the table that is about the page, and the standards behind fields of the site file. */
import type { SectionWords } from './word-table.ts';

const ours = 'ours';
const trade = 'trade use';
const alarmStandard = 'ISA-18.2 / IEC 62682';
const labelStandard = 'ANSI Z535.4 / ISO 3864';

export const fieldOrigins: Readonly<Record<string, string>> = {
  timezone: 'IANA time zone database',
  'station basket_test': 'EN 15188',
  'signal topic': 'MQTT 3.1.1',
  'signal unit': 'UCUM',
  'signal calibration': trade,
  'payload json value': 'RFC 6901',
  'payload json time': 'RFC 6901',
  'payload json time_format': 'RFC 3339; POSIX time',
  'payload json unit': 'RFC 6901',
  'payload json quality': 'RFC 6901',
  'rule priority': alarmStandard,
  'rule latching': alarmStandard,
  'rule highly_managed': alarmStandard,
  'rule consequence': alarmStandard,
  'rule respond': `${alarmStandard} (time to respond)`,
  'rule signal_word': labelStandard,
  'rule do_not': labelStandard,
  'rule hold': trade,
};

export const pageMeanings: Readonly<Record<string, SectionWords>> = {
  'Places at the foot of the page': {
    origin: ours,
    meanings: {
      Attention: 'What is wrong now, the most urgent first.',
      Line: 'The stations in the order a part passes them, each with what is nearest to a limit.',
      Due: 'What waits for a person: holds, resets, silenced alarms, missing numbers.',
      'Look back': 'The week’s alarms, and the way to oven runs, holds, what is watched, units.',
    },
  },
  'Views of the page': {
    origin: ours,
    meanings: {
      '#/': 'Attention: what is wrong now.',
      '#/alarm': 'One alarm: what it is, what to do and not to do, and your answer.',
      '#/line': 'The stations of a line.',
      '#/station': 'One station: its alarms, its readings, and what nobody watches there.',
      '#/signal': 'One signal: its reading, its record, and where the number comes from.',
      '#/due': 'What waits for a person.',
      '#/back': 'The alarms of the last seven days.',
      '#/runs': 'Oven runs, the newest first.',
      '#/run': 'One oven run: how hot the metal was from entry to exit.',
      '#/holds': 'What is on hold, and the form to put on hold or lift.',
      '#/aside': 'What is shelved, suppressed by design or out of service, with reasons and ends.',
      '#/coverage': 'Every hazard of every station, watched or not.',
      '#/rules': 'The rule sheet: every rule with its limits, its reasons and its first steps.',
      '#/performance': 'Whether there are more alarms than people can answer, and which.',
      '#/phone': 'Push on, off and tried on this phone.',
      '#/telling': 'Who would be told of an alarm now: first, next, up to everyone.',
      '#/me': 'Who is signed in here and where else, signing out, and another password.',
      '#/people': 'Everybody who may use the page, for administrators: invite, change, remove.',
      '#/reader': 'Your units, light or dark, and when shifts change; on this phone alone.',
    },
  },
  'Words on the page': {
    origin: ours,
    origins: {
      Holds: trade,
      'Do not': labelStandard,
      Caution: labelStandard,
      Acknowledge: alarmStandard,
      Shelve: alarmStandard,
      'End the shelving': alarmStandard,
      Reset: alarmStandard,
      'Put on hold': trade,
      'Lift the hold': trade,
    },
    meanings: {
      'What is watched': 'Every hazard the stations can have, and whether a rule looks for it.',
      Holds: 'What may not be used until quality says what becomes of it.',
      'Oven runs': 'One load through an oven, from entry to exit, and how it was heated.',
      'Language, units, light and shifts': 'How this phone shows things.',
      'People can be hurt': 'First band: a hazard to people, whatever its priority.',
      'Before the shift ends, {$clock}':
        'Second band: it starts to matter before the shift changes.',
      'These can wait': 'Third band: it matters later.',
      'Already over, not closed yet: {$n}':
        'After all that stands: alarms by which nobody is hurt, that wait for an answer or a reset.',
      'Put aside': 'Shelved, out of service, or meaningless in the line’s present state.',
      'Nearest to a limit': 'Of all readings of the station, the one with least room to its limit.',
      'not answered': 'Nobody has said that they have it.',
      'Cannot tell whether this is over.':
        'Its sensor is lost or not usable since the alarm was raised. Treat it as not over.',
      'Do not': 'What makes it worse or injures somebody.',
      Caution: 'How the steps themselves can hurt somebody.',
      'est.': 'Worked out, not measured.',
      'by hand': 'Read and entered by a person.',
      'Not sent.': 'No answer came from the agent: nobody else knows what you pressed.',
      'Not watched': 'No rule looks for these hazards here.',
      'Rules that do not run yet': 'These rules cannot judge until a number is given.',
      'Still to be confirmed for this site':
        'These rules judge; data sheet or site still has to confirm their limits.',
      'Left out here': 'Rules that would tell nothing at this place, each with its reason.',
      'Last seen {$clock}, {$age} ago; no connection.':
        'The page has lost the agent; all on it may have changed since then.',
      'no reading since {$clock}': 'The sensor has been silent since then.',
      'reading not usable: {$cause}': 'A message came, but its value may not be believed.',
      Acknowledge: 'Say that you have it. It stops nothing and mends nothing.',
      Shelve: 'Silence an alarm for a time, with a reason. The hazard stays.',
      'End the shelving': 'Let a silenced alarm be heard again before its time is up.',
      Reset: 'Close an alarm that stays, once it is over and somebody has looked.',
      'Put on hold': 'Stop a container, rack, lot or press cycle from being used.',
      'Lift the hold': 'Say what becomes of it. For quality alone.',
    },
  },
};
