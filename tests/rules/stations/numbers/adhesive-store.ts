/**
 * Numbers of the adhesive store. 5, 7, 30 and 35 °C are common practice; a published guideline of
 * emulsions has 7 to 35 °C. Shelf lives are the data sheet's, and nobody guesses them.
 */
import type { Row } from './row.ts';

export const adhesiveStoreRows: readonly Row[] = [
  ['cold-adhesive', 'low', '7 Cel', 'CP', 'DS'],
  ['cold-adhesive', 'low_low', '5 Cel', 'CP', 'DS'],
  ['cold-adhesive', 'on_delay', '10 min', 'EJ', null],
  ['cold-adhesive', 'deadband', '1 K', 'EJ', null],
  ['cold-adhesive-bottom', 'low', '7 Cel', 'CP', 'DS'],
  ['cold-adhesive-bottom', 'low_low', '5 Cel', 'CP', 'DS'],
  ['cold-adhesive-bottom', 'on_delay', '10 min', 'EJ', null],
  ['cold-adhesive-bottom', 'deadband', '1 K', 'EJ', null],
  ['cold-adhesive-probe', 'low', '7 Cel', 'CP', 'DS'],
  ['cold-adhesive-probe', 'low_low', '5 Cel', 'CP', 'DS'],
  ['freeze-approaching', 'low', '2 Cel', 'EJ', null],
  ['freeze-approaching', 'within', '2 h', 'EJ', null],
  ['freeze-suspected', 'low', '1 Cel', 'EJ', null],
  ['freeze-suspected', 'on_delay', '10 min', 'EJ', null],
  ['freeze-suspected-bottom', 'low', '1 Cel', 'EJ', null],
  ['freeze-suspected-bottom', 'on_delay', '10 min', 'EJ', null],
  ['freeze-suspected-probe', 'low', '1 Cel', 'EJ', null],
  ['freeze-seen', 'high', '1 1', 'EJ', null],
  ['warm-store', 'high', '30 Cel', 'CP', 'DS'],
  ['warm-store', 'high_high', '35 Cel', 'CP', 'DS'],
  ['warm-store', 'on_delay', '1 h', 'EJ', null],
  ['warm-store', 'deadband', '1 K', 'EJ', null],
  ['freight-out-of-range', 'low', '5 Cel', 'CP', 'DS'],
  ['freight-out-of-range-hot', 'high', '40 Cel', 'EJ', null],
  ['freight-unlogged', 'low', '7 Cel', 'EJ', null],
  ['freight-unlogged', 'on_delay', '2 h', 'EJ', null],
  ['freight-unlogged', 'deadband', '1 K', 'EJ', null],
  ['freight-unlogged-season', 'limit', '2 h', 'EJ', null],
  ['freight-unlogged-season', 'early', '100 %', 'EJ', null],
  ['freight-unlogged-season', 'season_from', null, 'SITE', 'SITE'],
  ['freight-unlogged-season', 'season_until', null, 'SITE', 'SITE'],
  ['way-too-cold', 'low', '0 h', 'EJ', null],
  ['shelf-life', 'limit', null, 'DS', 'DS'],
  // 30 days before the limit where it is longer.
  ['shelf-life', 'early', '80 %', 'EJ', null],
  ['opened-life', 'limit', null, 'DS', 'DS'],
  ['opened-life', 'early', '80 %', 'EJ', null],
  ['let-down-life', 'limit', null, 'DS', 'DS'],
  ['let-down-life', 'early', '80 %', 'EJ', null],
];
