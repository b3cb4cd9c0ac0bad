/** The last rinse and the blast before the tank; the room where coated parts wait. */
import { coatedPlant, prepPlant } from './invented-plant.ts';
import { lagged } from './lump.ts';
import type { Moment } from './moment.ts';

export class Preparation {
  rinseUSPerCm: number = prepPlant.rinseUSPerCm;

  step(now: Moment): void {
    const { rinseUSPerCm: clean, dirtyUSPerCm: dirty, rinseLagS } = prepPlant;
    const drag = now.fault('rinse-dirty') * (dirty - clean);
    this.rinseUSPerCm = lagged(this.rinseUSPerCm, clean + drag, rinseLagS, now.stepS);
  }
}

export class RackRoom {
  humidityPercent = 48;

  step(now: Moment): void {
    const wet = now.fault('rack-room-damp');
    const wanted = now.hallRhPercent + wet * (coatedPlant.dampPercent - now.hallRhPercent);
    this.humidityPercent = lagged(this.humidityPercent, wanted, coatedPlant.lagS, now.stepS);
  }
}
