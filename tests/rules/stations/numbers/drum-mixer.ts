/**
 * Numbers of the drum mixer. 20 to 30 turns a minute of the built-in agitator and the mixing times
 * (8 h of a drum, less of what is smaller) are common practice without a published source.
 */
import type { Row } from './row.ts';

export const drumMixerRows: readonly Row[] = [
  ['agitator-stopped', 'low', '5 /min', 'EJ', null],
  ['agitator-stopped', 'on_delay', '10 min', 'EJ', null],
  ['agitator-rest', 'low', '5 /min', 'EJ', null],
  // Half of a longest rest of 2 h.
  ['agitator-rest', 'on_delay', '1 h', 'EJ', 'DS'],
  ['agitator-fast', 'high', '30 /min', 'CP', null],
  ['agitator-fast', 'on_delay', '60 s', 'EJ', null],
  ['agitator-fast', 'deadband', '2 /min', 'EJ', null],
  ['agitator-slow', 'low', '20 /min', 'CP', null],
  ['agitator-slow', 'on_delay', '5 min', 'EJ', null],
  ['agitator-slow', 'deadband', '2 /min', 'EJ', null],
  ['blade-uncovered', 'low', null, 'SITE', 'SITE'],
  ['blade-uncovered', 'on_delay', '5 min', 'EJ', null],
  ['drawn-unmixed', 'then_low', '1 1', 'EJ', null],
  ['drawn-unmixed', 'not_before', '8 h', 'CP', 'DS'],
  ['drawn-unmixed', 'counting_low', '20 /min', 'CP', null],
];
