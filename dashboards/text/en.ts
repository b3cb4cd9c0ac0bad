/**
 * Every sentence of the page in English, whole, in Unicode MessageFormat 2 (`{$name}`, and `.match`
 * on one number). Another language is another file of this shape; nothing is glued from fragments.
 */

import { deferral } from '#rules/alarm/label.ts';
import { aside } from './en-aside.ts';
import { people } from './en-people.ts';
import { phone } from './en-phone.ts';
import { readings } from './en-readings.ts';
import { rules } from './en-rules.ts';
import { sensors } from './en-sensors.ts';
import { watch } from './en-watch.ts';
import { written } from './en-written.ts';

export const en = {
  ...phone,
  ...people,
  ...aside,
  ...readings,
  ...rules,
  ...sensors,
  ...watch,
  ...written,
  // places
  attention: 'Attention',
  line: 'Line',
  due: 'Due',
  lookBack: 'Look back',
  coverage: 'What is watched',
  holds: 'Holds',
  runs: 'Oven runs',
  reader: 'Language, units, light and shifts',
  back: 'Back',
  places: 'Places',
  skip: 'Skip to the content',

  // the link
  heard: 'heard {$clock}',
  waiting: 'Waiting for the agent.',
  waitingLong:
    'The agent does not answer. The page tries again by itself; see whether the box has power and the network is there.',
  staleLine: 'Last seen {$clock}, {$age} ago; no connection.',
  staleWhat: 'What stands here may have changed since. The page tries again by itself.',
  zone: 'Times are {$zone}.',
  boxIll: 'This box needs care: {$part}. {$note}',
  boxRecordLost:
    'Some of what was kept is lost. Look at each place whose alarm stood, and check what stands on hold.',
  boxSiteAsBefore:
    'The site file has a fault; what was accepted last goes on being watched. Tap for what to mend.',
  boxSaysMore: 'Tap for what is wrong and what to do.',
  boxPart: {
    engine: 'judging',
    disk: 'disk',
    record: 'record',
    clock: 'clock',
    mqtt: 'door for sensors',
    site: 'site file',
    rules: 'rules',
    sensors: 'sensors',
    telling: 'telling people',
  },
  noSuchPlace: 'There is no such place. Perhaps the link is old.',

  // counts
  watched: '.match $n one {{{$n} hazard watched}} * {{{$n} hazards watched}}',
  notWatched: '{$n} not watched',
  partlyWatched: '{$n} not by all their rules',
  noReading: '{$n} without a usable reading',
  hazardCounts:
    'Hazards watched: {$watched}; not watched: {$notWatched}; without a usable reading: {$unjudged}; last look {$clock}.',
  hazardCountsShort:
    'Hazards watched: {$watched}; not watched: {$notWatched}; without a usable reading: {$unjudged}.',
  nothingWatched: 'No hazard of this station is watched.',

  // bands
  people: 'People can be hurt',
  shift: 'Before the shift ends, {$clock}',
  wait: 'These can wait',
  overNotices: 'Already over, not closed yet: {$n}',
  aside: 'Put aside',
  orderChanged: 'Order changed. Show',

  // an alarm
  word: { DANGER: 'DANGER', WARNING: 'WARNING', CAUTION: 'CAUTION', NOTICE: 'NOTICE' },
  priority: { high: 'high priority', medium: 'medium priority', low: 'low priority' },
  notAnswered: 'not answered',
  answeredBy: 'answered {$clock}, {$by}',
  answeredHere: 'answered {$clock}, at this machine',
  reachedIn: 'Limit {$limit} reached in {$range} if it goes on so.',
  since: 'Since {$clock}.',
  nowReads: 'Now {$value}.',
  nowApart: 'Now {$value} apart.',
  overLatched:
    'Over since {$clock}. It stays until somebody resets it; a number that went back is no all-clear.',
  closed: 'Over since {$clock}.',
  also: 'Also on this reading',
  raisedAgain: 'It was raised again since. Go to the newer one; your answer to it is for both.',
  alsoEach: '{$rule}, limit {$limit}',
  cannotTell: 'Cannot tell whether this is over.',
  shelvedUntil: 'Shelved until {$clock}.',
  suppressed: 'Not called for now, by the line’s state.',
  outOfService: 'Taken out of service.',
  doNot: 'Do not',
  firstSteps: 'First steps',
  consequence: 'What it leads to',
  evidence: 'The last hour',
  told: 'What happened, and who answered',
  caution: 'Caution',
  why: 'Why this rule exists',
  whyKind: 'It looks for this: {$summary}',
  respond: 'Time there is to act: {$span}.',
  deferral,
  unknownFact: 'unknown',
  unknownAlarm: 'This alarm is not open any more, and not among the last that closed.',

  // answers to an alarm
  answer: 'Your answer',
  acknowledge: 'Acknowledge',
  keptNoAnswer:
    'No connection: nothing can be acknowledged from here. Act on the steps; tell the next person yourself.',
  stopsNothing: 'I have it. This stops nothing.',
  sending: 'Sending …',
  notSent: 'Not sent.',
  notSentWhat:
    'No answer came from the agent, so nobody knows that you have it. Act on the steps; tell the next person yourself; try again.',
  notSentOther:
    'No answer came from the agent, so nothing was changed that you can rely on. Try again.',
  more: 'More: pass on, shelve, reset',
  shelve: 'Shelve',
  shelveWhat: 'Silence it for a while. The hazard stays.',
  unshelve: 'End the shelving',
  reset: 'Reset',
  resetWhat: 'Close it, now that somebody has looked and it is over.',
  resetManaged:
    'EHS or an administrator resets it, with a reason of ten letters or more: who looked, and what was found. Where nobody signs in, anybody at this machine may: write your name with the reason.',
  resetNotYet: 'It can be reset once it is over and answered.',
  noShelf:
    'This alarm may not be shelved: it is about people, and highly managed: handled with special care.',
  minutes: 'For how long',
  reason: 'Why',
  reasonHint: 'In a few words; it is kept on record.',
  refused: '{$why} {$fix}',
  done: 'Done, and on record.',
  thisNeeded: 'Was this needed?',
  noted: 'Noted.',

  transition: {
    raised: 'Raised',
    returned: 'Back to normal',
    acknowledged: 'Acknowledged',
    reset: 'Reset',
    realarmed: 'Raised again',
    shelved: 'Shelved',
    unshelved: 'Shelving ended',
    suppressed: 'Suppressed by design',
    released: 'Released',
    'removed-from-service': 'Taken out of service',
    'returned-to-service': 'Back in service',
    'passed-on': 'Passed on',
    removed: 'Rule removed from the site',
  },
  thisMachine: 'at this machine',

  // due
  dueNothing: 'No hold, no reset and no missing number waits for a person here.',
  dueHolds: 'On hold, waiting for a decision',
  dueReset: 'Over, waiting to be reset',
  dueShelves: 'Shelved, and back at',

  // look back
  backDays: 'Alarms of the last seven days',
  backNone: 'No alarm was raised in the last seven days.',
  backMore: 'There are more than are shown.',
  raisedAt: 'raised {$clock}',
  overAt: 'over {$clock}',
  stillOpen: 'open',
  whereElse: 'Also here',

  // holds
  holdsNone: 'Nothing is on hold.',
  holdsLifted: 'Lifted',
  holdOthers: 'Holds on it: {$count}. It stays on hold until the last of them is lifted.',
  holdStill: 'Still on hold by others: {$count}.',
  setHold: 'Put on hold',
  holdWhat: { container: 'Container', rack: 'Rack', lot: 'Lot', shot: 'Shot' },
  holdWhatLegend: 'What',
  holdItem: 'Its name or number',
  lift: 'Lift the hold',
  liftWhat: 'Only quality lifts a hold. Say what becomes of it.',
  disposition: {
    released: 'Released',
    'released-after-test': 'Released after a test',
    reworked: 'Reworked',
    scrapped: 'Scrapped',
    returned: 'Returned',
  },
  dispositionLegend: 'What becomes of it',
  heldSince: 'on hold since {$clock}, {$by}',
  heldByRule: 'by the rule {$rule}',
  liftedAt: '{$disposition} {$clock}, {$by}: {$reason}',
  holdFor: '{$what} {$item}',
  holdAt: '{$what} at {$place}',
  openAlarm: 'Open the alarm',

  // coverage
  coverageSays: 'Every hazard the stations of this site can have, watched or not.',
  hazardState: {
    watched: 'watched',
    'not-watched': 'not watched',
    unjudged: 'no usable reading now',
  },
  watchedBy: 'by {$rules}',

  // the reader
  language: 'Language',
  languageChoice: { system: 'As the browser has it', en: 'English', de: 'Deutsch' },
  languageSays:
    'Alarm sentences, steps and cautions of the rules are written in English and stay in English. They are not translated by machine.',
  languageFailed:
    'This language could not be fetched. The page stays as it is; choose again when the link is back.',
  sound: 'Sound',
  soundChoice: { off: 'Off', on: 'On' },
  soundSays:
    'A short tone for a new unanswered alarm of high priority, while this page is open. Do not rely on it: some phones halt a page that nobody looks at.',
  temperature: 'Temperature',
  pressure: 'Pressure',
  smallLength: 'Film',
  speed: 'Speed',
  ground: 'Light or dark',
  groundChoice: { system: 'As the phone has it', light: 'Light', dark: 'Dark' },
  readerSays:
    'Kept on this phone alone. What is stored, and what a hand reading is entered in, stays in the instrument’s unit.',
  shiftEnds: 'Shifts change at',
  shiftHint: 'Site time, as 06:00 14:00 22:00.',
  shiftWrong: 'Write times as 06:00, with spaces between.',

  // what it is not
  advice: 'Advice only; this is no safety system, no fire detector and no oven or burner control.',
} as const;
