/** The scenarios of every station kind. */
import type { Scenario } from '../scenario.ts';
import { adhesiveStore } from './adhesive-store.ts';
import { coatedStore } from './coated-store.ts';
import { compressedAir } from './compressed-air.ts';
import { dipTank } from './dip-tank.ts';
import { drumMixer } from './drum-mixer.ts';
import { dryingOven } from './drying-oven.ts';
import { preparation } from './preparation.ts';
import { press } from './press.ts';
import { primerPreBake } from './primer-pre-bake.ts';
import { residue } from './residue.ts';
import { sprayBooth } from './spray-booth.ts';

export const scenarios: readonly Scenario[] = [
  adhesiveStore,
  coatedStore,
  compressedAir,
  dipTank,
  drumMixer,
  dryingOven,
  preparation,
  press,
  primerPreBake,
  residue,
  sprayBooth,
];
