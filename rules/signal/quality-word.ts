/**
 * What a sensor or a file says about a value's quality, in the words of this project alone.
 *
 * Numbers are not read: 0 is good in one common convention and bad in another.
 */
import { type QualityCode, quality } from './quality.ts';

/** `good`, `uncertain`, `bad` in any case, or true and false; null for anything else. */
export function qualityOfWord(word: unknown): QualityCode | null {
  if (word === true) return quality.good;
  if (word === false) return quality.sensorBad;
  if (typeof word !== 'string') return null;
  switch (word.trim().toLowerCase()) {
    case 'good':
      return quality.good;
    case 'uncertain':
      return quality.sensorUncertain;
    case 'bad':
      return quality.sensorBad;
    default:
      return null;
  }
}
