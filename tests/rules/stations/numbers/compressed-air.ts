/**
 * Numbers of compressed air. The 10 K over the coldest pipe are said of instrument air; a minute onto
 * a white collector, where any trace rejects, is ASTM D4285; rounds of a shift are common practice.
 */
import type { Row } from './row.ts';

export const compressedAirRows: readonly Row[] = [
  ['air-dew-point', 'high', '5 Cel', 'EJ', null],
  ['air-dew-point', 'on_delay', '10 min', 'EJ', null],
  ['air-dew-point', 'deadband', '1 K', 'EJ', null],
  ['pipe-margin', 'low', '10 K', 'PUB', null],
  ['pipe-margin', 'on_delay', '10 min', 'EJ', null],
  ['pipe-margin', 'deadband', '1 K', 'EJ', null],
  ['blotter-failed', 'high', '0 1', 'PUB', null],
  ['blotter-late', 'limit', '8 h', 'CP', null],
  ['blotter-late', 'early', '90 %', 'EJ', null],
  ['header-low', 'low', '5.5 bar', 'EJ', 'SITE'],
  ['header-low', 'on_delay', '30 s', 'EJ', null],
  ['header-low', 'deadband', '0.2 bar', 'EJ', null],
  ['separator-dp', 'high', '0.35 bar', 'EJ', 'DS'],
  ['separator-dp', 'on_delay', '5 min', 'EJ', null],
  ['separator-dp', 'deadband', '0.02 bar', 'EJ', null],
  ['separator-round-late', 'limit', '8 h', 'CP', null],
  ['separator-round-late', 'early', '90 %', 'EJ', null],
];
