/** Every station kind, by the name a site file calls it. */
import { adhesiveStore } from './adhesive-store.ts';
import { coatedStore } from './coated-store.ts';
import { compressedAir } from './compressed-air.ts';
import { custom } from './custom.ts';
import { dipTank } from './dip-tank.ts';
import { drumMixer } from './drum-mixer.ts';
import { dryingOven } from './drying-oven.ts';
import { preparation } from './preparation.ts';
import { press } from './press.ts';
import { primerPreBake } from './primer-pre-bake.ts';
import { residue } from './residue.ts';
import { sprayBooth } from './spray-booth.ts';
import type { StationKind } from './station.ts';

export const stationKinds: ReadonlyMap<string, StationKind> = new Map(
  [
    adhesiveStore,
    coatedStore,
    compressedAir,
    custom,
    dipTank,
    drumMixer,
    dryingOven,
    preparation,
    press,
    primerPreBake,
    residue,
    sprayBooth,
  ].map((kind) => [kind.name, kind]),
);
