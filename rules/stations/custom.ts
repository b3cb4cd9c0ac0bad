/** A station the site describes itself: its signals and rules, each with its own rationalisation. */
import type { StationKind } from './station.ts';

export const custom: StationKind = {
  name: 'custom',
  summary: 'A place of its own kind; signals, rules and their reasons come from the site file.',
  signals: [],
  derived: [],
  hazards: [],
  rules: [],
};
