/**
 * Numbers of the two ovens. 65 °C of metal for the primer is common practice without a published
 * source; everything else a data sheet does not give is engineering judgement.
 */
import type { Row } from './row.ts';

const zones = [1, 2, 3] as const;

const mostHeat = (rule: string): Row[] => [
  [rule, 'upper', null, 'DS', 'DS'],
  [rule, 'upper_for', null, 'DS', 'DS'],
  [rule, 'peak', null, 'DS', 'DS'],
];
const overDosed: readonly Row[] = [['over-dosed', 'high', null, 'DS', 'DS']];
const exhaust: readonly Row[] = [
  ['exhaust-lost', 'low', '1 1', 'EJ', null],
  ['exhaust-lost', 'on_delay', '30 s', 'EJ', null],
  ['exhaust-weak', 'target', null, 'SITE', 'SITE'],
  ['exhaust-weak', 'below', '50 %', 'EJ', null],
  ['exhaust-weak', 'on_delay', '30 s', 'EJ', null],
  ['exhaust-weak', 'deadband', '5 %', 'EJ', null],
];
const conveyor: readonly Row[] = [
  ['conveyor-stopped', 'low', '1 1', 'EJ', null],
  ['conveyor-stopped', 'on_delay', '60 s', 'EJ', null],
];
const profile: readonly Row[] = [
  ['profile-late', 'limit', '90 d', 'CP', null],
  ['profile-late', 'early', '90 %', 'EJ', null],
];

export const dryingOvenRows: readonly Row[] = [
  ['under-dried', 'above', null, 'DS', 'DS'],
  ['under-dried', 'above_for', null, 'DS', 'DS'],
  ['under-dried', 'dwell', null, 'SITE', 'SITE'],
  ...mostHeat('over-baked'),
  ...overDosed,
  ...conveyor,
  ...exhaust,
  ...zones.flatMap((zone): Row[] => [
    [`zone-${zone}-high`, 'target', null, 'SITE', 'SITE'],
    [`zone-${zone}-high`, 'above', '10 K', 'EJ', null],
    [`zone-${zone}-high`, 'on_delay', '2 min', 'EJ', null],
    [`zone-${zone}-high`, 'deadband', '2 K', 'EJ', null],
  ]),
  ...zones.flatMap((zone): Row[] => [
    [`sensors-disagree-${zone}`, 'allowed', '5 K', 'EJ', null],
    [`sensors-disagree-${zone}`, 'steady', '3 K', 'EJ', null],
    [`sensors-disagree-${zone}`, 'steady_for', '10 min', 'EJ', null],
    [`sensors-disagree-${zone}`, 'deadband', '1 K', 'EJ', null],
  ]),
  ...profile,
];

export const primerPreBakeRows: readonly Row[] = [
  ['under-baked', 'above', '65 Cel', 'CP', 'DS'],
  ['under-baked', 'above_for', null, 'DS', 'DS'],
  ['under-baked', 'dwell', null, 'SITE', 'SITE'],
  ...mostHeat('over-baked'),
  ...overDosed,
  ['cover-too-soon', 'not_before', null, 'DS', 'DS'],
  ['cover-too-late', 'limit', null, 'DS', 'DS'],
  ['cover-too-late', 'early', '80 %', 'EJ', null],
  ...zones.flatMap((zone): Row[] => [
    [`zone-off-${zone}`, 'target', null, 'SITE', 'SITE'],
    [`zone-off-${zone}`, 'below', '8 K', 'EJ', null],
    [`zone-off-${zone}`, 'above', '8 K', 'EJ', null],
    [`zone-off-${zone}`, 'on_delay', '3 min', 'EJ', null],
    [`zone-off-${zone}`, 'deadband', '2 K', 'EJ', null],
  ]),
  ['zones-apart', 'allowed', '10 K', 'EJ', null],
  ['zones-apart', 'steady', '3 K', 'EJ', null],
  ['zones-apart', 'steady_for', '3 min', 'EJ', null],
  ['zones-apart', 'deadband', '2 K', 'EJ', null],
  ...conveyor,
  ...exhaust,
  ...profile,
];
