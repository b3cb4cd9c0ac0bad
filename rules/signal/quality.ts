/**
 * Quality of a sample: a small integer inside, grade and cause at the border.
 *
 * 0 is good, 1 to 99 uncertain (judged, and marked), 100 and above bad (carries no value,
 * never judged as one, never dropped). The codes are stored; a code is never given a new meaning.
 */
export type QualityCode = number;
export type Grade = 'good' | 'uncertain' | 'bad';

export const quality = {
  good: 0,
  /** The agent's clock was in doubt when the sample arrived. */
  clock: 1,
  /** A retained message without a time of its own: the value may be old. */
  retained: 2,
  calibrationOverdue: 3,
  /** Changed faster than the signal's plausible rate. */
  jump: 4,
  /** The sensor itself said so. */
  sensorUncertain: 5,
  estimated: 6,
  /** Derived from an uncertain input. */
  uncertainInput: 7,
  /** Same signal and time as an earlier sample, another value; stored, never judged. */
  conflict: 8,
  /** Worked out with a number nobody has confirmed for this place, or a model nobody fitted to it. */
  unproven: 9,
  /** A sum over a time of which nobody saw a part. */
  unobserved: 10,
  /** A loop current between what is measured and what is a fault (NE 43). */
  loopSaturated: 11,
  /** A thermocouple against a cold junction nobody has heard of for too long. */
  coldJunctionStale: 12,
  /** The payload could not be read: not the promised kind, or nothing at the pointer. */
  undecodable: 100,
  /** A number that is not one: NaN, infinite, or beyond what a double can hold. */
  notFinite: 101,
  /** Outside what the sensor can read. */
  outOfRange: 102,
  /** Its time lies more than the tolerance ahead of the agent's clock. */
  future: 103,
  /** The sensor itself said so. */
  sensorBad: 104,
  /** Derived from a bad input; raises no alarm of its own. */
  badInput: 105,
  /** The inputs lie outside the range of the derived signal's formula. */
  outsideFormula: 106,
  /** The payload's unit is not the one the signal was promised. */
  wrongUnit: 107,
  /** A derived signal that needs to have seen more before it can tell. */
  tooEarly: 108,
  /** A loop current in the band of faults, not yet for long enough to be one (NE 43). */
  loopFaultUnsettled: 109,
  /** A loop current of 3.6 mA or less for 4 s (NE 43). */
  loopFaultLow: 110,
  /** A loop current of 21 mA or more for 4 s (NE 43). */
  loopFaultHigh: 111,
  /** More than its kind of sensor can send at its hottest, or below its coldest for a thermocouple. */
  sensorBreak: 112,
  /** A resistance below its coldest. */
  sensorShort: 113,
  /** A thermocouple whose cold junction has no usable reading. */
  coldJunctionMissing: 114,
  /** The site's own file that works it out is switched off, or gave nothing that can be used. */
  ownKindFailed: 115,
  /** Its time lies too far back: it is kept without being judged. Said of a lost sensor; no sample has it. */
  tooLate: 116,
} as const satisfies Record<string, QualityCode>;

export const firstBadCode = 100;

const causes: Readonly<Record<QualityCode, string>> = {
  [quality.clock]: 'the clock of this box was in doubt',
  [quality.retained]: 'a retained message without a time; it may be old',
  [quality.calibrationOverdue]: 'calibration overdue',
  [quality.jump]: 'changed faster than it plausibly can',
  [quality.sensorUncertain]: 'the sensor marked it uncertain',
  [quality.estimated]: 'estimated',
  [quality.uncertainInput]: 'computed from an uncertain reading',
  [quality.conflict]: 'another value came for the same time',
  [quality.unproven]: 'worked out with numbers nobody has confirmed here',
  [quality.unobserved]: 'part of the time it adds up was not observed',
  [quality.loopSaturated]:
    'its loop current is beyond the measuring range; the true value may be too',
  [quality.coldJunctionStale]: 'its cold junction has not been heard of for too long',
  [quality.undecodable]: 'the message could not be read',
  [quality.notFinite]: 'not a finite number',
  [quality.outOfRange]: 'outside what the sensor can read',
  [quality.future]: 'its time lies in the future',
  [quality.sensorBad]: 'the sensor marked it bad',
  [quality.badInput]: 'computed from a reading that is not usable',
  [quality.outsideFormula]: 'the readings lie outside what the formula covers',
  [quality.tooEarly]: 'too little has been observed yet',
  [quality.loopFaultUnsettled]: 'its loop current left its range less than 4 s ago',
  [quality.loopFaultLow]: 'its loop current is 3.6 mA or less: wire broken or transmitter failed',
  [quality.loopFaultHigh]: 'its loop current is 21 mA or more: short circuit or transmitter failed',
  [quality.sensorBreak]: 'more than such a sensor can send: sensor or wire broken, most often',
  [quality.sensorShort]: 'less than such a sensor can send: short circuit, most often',
  [quality.coldJunctionMissing]: 'its cold junction has no usable reading',
  [quality.ownKindFailed]: 'the file that works it out failed or is switched off',
  [quality.tooLate]: 'its time lies too far back',
  [quality.wrongUnit]: 'it came in another unit than promised',
};

/** Was this code ever given? */
export const isKnown = (code: QualityCode): boolean =>
  code === quality.good || causes[code] !== undefined;

export const isBad = (code: QualityCode): boolean => code >= firstBadCode;

export const gradeOf = (code: QualityCode): Grade =>
  code === quality.good ? 'good' : isBad(code) ? 'bad' : 'uncertain';

/** What was wrong, in words; null for good. Throws on a code that was never given. */
export function causeOf(code: QualityCode): string | null {
  if (code === quality.good) return null;
  const cause = causes[code];
  if (cause === undefined) throw new RangeError(`no quality has the code ${code}`);
  return cause;
}
