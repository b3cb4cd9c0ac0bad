/** Dip tank: parts are drawn out of adhesive that circulates over a weir and through a filter. */
import { dipTankDerived, dipTankSignals } from './dip-tank-signals.ts';
import type { StationKind } from './station.ts';

export const dipTank: StationKind = {
  name: 'dip-tank',
  summary:
    'Dip tank: parts are drawn out of adhesive that circulates over a weir and through a filter.',
  signals: dipTankSignals,
  derived: dipTankDerived,
  hazards: [],
  rules: [],
};
