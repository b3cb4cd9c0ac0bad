/** Dried residue and hot surfaces, waste bin and stacked racks. */
import { residueDerived, residueSignals } from './residue-signals.ts';
import type { StationKind } from './station.ts';

export const residue: StationKind = {
  name: 'residue',
  summary: 'Dried residue and hot surfaces, waste bin and stacked racks.',
  signals: residueSignals,
  derived: residueDerived,
  hazards: [],
  rules: [],
};
