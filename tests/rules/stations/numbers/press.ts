/**
 * Numbers of the press. 155 °C of cavity is common practice without a published source; time and
 * pressure of cure are the compound's, and nobody guesses them.
 */
import type { Row } from './row.ts';

const cavities = [1, 2, 3, 4] as const;

export const pressRows: readonly Row[] = [
  ...cavities.flatMap((cavity): Row[] => [
    [`mould-cold-${cavity}`, 'low', '155 Cel', 'CP', 'DS'],
    [`mould-cold-${cavity}`, 'on_delay', '10 s', 'EJ', null],
    [`mould-cold-${cavity}`, 'deadband', '2 K', 'EJ', null],
  ]),
  ...cavities.flatMap((cavity): Row[] => [
    [`mould-hot-${cavity}`, 'target', null, 'SITE', 'SITE'],
    [`mould-hot-${cavity}`, 'above', '8 K', 'EJ', 'DS'],
    [`mould-hot-${cavity}`, 'on_delay', '1 min', 'EJ', null],
    [`mould-hot-${cavity}`, 'deadband', '2 K', 'EJ', null],
  ]),
  ['cavity-spread', 'allowed', '6 K', 'EJ', null],
  ['cavity-spread', 'steady', '3 K', 'EJ', null],
  ['cavity-spread', 'steady_for', '5 min', 'EJ', null],
  ['cavity-spread', 'deadband', '1 K', 'EJ', null],
  ['insert-waits', 'first_low', '1 1', 'EJ', null],
  ['insert-waits', 'then_low', '1 1', 'EJ', null],
  ['insert-waits', 'within', '60 s', 'EJ', 'DS'],
  ['cure-short', 'first_low', '1 1', 'EJ', null],
  ['cure-short', 'then_high', '0 1', 'EJ', null],
  ['cure-short', 'not_before', null, 'DS', 'DS'],
  ['pressure-low', 'low', null, 'DS', 'DS'],
  ['pressure-low', 'on_delay', '15 s', 'EJ', null],
  ['pressure-low', 'deadband', '0.2 MPa', 'EJ', null],
];
