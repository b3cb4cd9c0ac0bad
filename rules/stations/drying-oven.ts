/** Adhesive drying oven: water out of the coat, on metal temperature, within two sides. */
import { dryingOvenSignals } from './drying-oven-signals.ts';
import type { StationKind } from './station.ts';

export const dryingOven: StationKind = {
  name: 'drying-oven',
  summary: 'Adhesive drying oven: water out of the coat, on metal temperature, within two sides.',
  signals: dryingOvenSignals,
  derived: [],
  hazards: [],
  rules: [],
};
