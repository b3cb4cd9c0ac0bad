/** The primer's pre-bake oven: two zones that follow their set-point, a primed rack on its way through. */
import { ovenPlant, preBakePlant as plant } from './invented-plant.ts';
import { lagged } from './lump.ts';
import type { Moment } from './moment.ts';
import { Rack } from './rack.ts';

export class PreBake {
  readonly zoneC: [number, number] = [plant.setC, plant.setC];
  readonly rack = new Rack();
  loaded: 0 | 1 = 0;

  step(now: Moment): void {
    const { stepS } = now;
    const coldK = now.fault('prebake-cold') * plant.coldK;
    const apartK = now.fault('prebake-zones-apart') * plant.apartK;
    this.zoneC[0] = lagged(this.zoneC[0], plant.setC - coldK, plant.zoneLagS, stepS);
    this.zoneC[1] = lagged(this.zoneC[1], plant.setC - coldK - apartK, plant.zoneLagS, stepS);
    const inCycleS = ((now.lineS % ovenPlant.cycleS) + ovenPlant.cycleS) % ovenPlant.cycleS;
    const wanted = inCycleS < plant.dwellS ? 1 : 0;
    if (wanted === 1 && this.loaded === 0) this.rack.load(now.hallC);
    this.loaded = wanted;
    const zoneC = this.zoneC[inCycleS < plant.dwellS / 2 ? 0 : 1];
    if (wanted === 1) this.rack.step(zoneC, ovenPlant.filmWPerM2K, stepS);
    else this.rack.step(now.hallC, ovenPlant.hallWPerM2K, stepS);
  }
}
