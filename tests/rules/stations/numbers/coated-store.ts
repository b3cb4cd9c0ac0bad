/** Numbers of the coated-part store: common practice, without a published source. */
import type { Row } from './row.ts';

export const coatedStoreRows: readonly Row[] = [
  ['layover', 'limit', '30 d', 'CP', 'DS'],
  ['layover', 'early', '80 %', 'EJ', null],
  ['humid', 'high', '65 %', 'CP', null],
  ['humid', 'on_delay', '4 h', 'EJ', null],
  ['humid', 'deadband', '3 %', 'EJ', null],
  ['dew-margin', 'low', '3 K', 'CP', null],
  ['dew-margin', 'on_delay', '15 min', 'EJ', null],
  ['dew-margin', 'deadband', '0.5 K', 'EJ', null],
  ['cold-into-warm', 'low', '3 K', 'CP', null],
  ['cold-into-warm', 'deadband', '0.5 K', 'EJ', null],
  ['hot-store', 'high', '35 Cel', 'CP', 'DS'],
  ['hot-store', 'on_delay', '4 h', 'EJ', null],
  ['hot-store', 'deadband', '1 K', 'EJ', null],
];
