/**
 * Numbers of preparation. Four hours from blast to coat, half of it above 60 % relative humidity, 72 h
 * from phosphating and the 3 K over the dew point are common practice without a published source;
 * deionised water at 5 µS/cm when new is ISO 3696 grade 3 and ASTM D1193 type IV, to act from 10 to 20 is
 * common practice.
 */
import type { Row } from './row.ts';

export const preparationRows: readonly Row[] = [
  ['blast-to-coat', 'limit', '4 h', 'CP', null],
  ['blast-to-coat', 'damp_limit', '2 h', 'CP', null],
  ['blast-to-coat', 'damp_above', '60 %', 'CP', null],
  ['blast-to-coat', 'early', '75 %', 'EJ', null],
  ['conversion-to-coat', 'limit', '72 h', 'CP', 'DS'],
  ['conversion-to-coat', 'early', '80 %', 'EJ', null],
  ['rust-bloom', 'high', '0 1', 'CP', null],
  ['water-break', 'high', '0 1', 'PUB', null],
  ['media-oily', 'high', '0 1', 'CP', null],
  ['blast-profile', 'low', null, 'DS', 'DS'],
  ['blast-profile', 'high', null, 'DS', 'DS'],
  ['blast-pressure', 'target', null, 'SITE', 'SITE'],
  ['blast-pressure', 'below', '10 %', 'EJ', null],
  ['blast-pressure', 'above', '10 %', 'EJ', null],
  ['blast-pressure', 'on_delay', '1 min', 'EJ', null],
  ['blast-pressure', 'deadband', '2 %', 'EJ', null],
  ['phosphate-weight', 'low', null, 'DS', 'DS'],
  ['phosphate-weight', 'high', null, 'DS', 'DS'],
  ['bath-points', 'low', null, 'SITE', 'SITE'],
  ['bath-points', 'high', null, 'SITE', 'SITE'],
  ['rinse-conductivity', 'high', null, 'DS', 'DS'],
  ['rinse-conductivity', 'on_delay', '2 min', 'EJ', null],
  ['rinse-conductivity', 'deadband', '2 uS/cm', 'EJ', null],
  ['make-up-water', 'high', '10 uS/cm', 'CP', null],
  ['make-up-water', 'high_high', '20 uS/cm', 'CP', null],
  ['dew-margin', 'low', '3 K', 'CP', null],
  ['dew-margin', 'on_delay', '15 min', 'EJ', null],
  ['dew-margin', 'deadband', '0.5 K', 'EJ', null],
  ['shift-check-late', 'limit', '8 h', 'CP', null],
  ['shift-check-late', 'early', '90 %', 'EJ', null],
];
