/** What the rule of the made-up alarm saw. */
import type { AlarmView } from '../../../agent/web/contract.ts';
import { now } from './moment.ts';

export const evidence: AlarmView['evidence'] = {
  unit: 'Cel',
  value: 6.4,
  at: now - 1_000,
  limit: 7,
  side: 'low',
  since: now - 600_000,
  slope_per_h: -0.8,
  earliest: null,
  latest: null,
  duration_ms: 600_000,
  cause: null,
  which: null,
  reference: null,
  difference: null,
  allowed: null,
  per_ms: null,
  other: null,
  pattern: null,
  reached_ms: null,
  required_ms: null,
  left_ms: null,
};
