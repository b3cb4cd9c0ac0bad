/** Compressed air: dryer, header, the coldest drop, and the separator at the guns. */
import { airPlant as plant } from './invented-plant.ts';
import { lagged } from './lump.ts';
import type { Moment } from './moment.ts';

export class AirPlant {
  headerBar: number = plant.headerBar;
  dewPointC: number = plant.dewPointC;
  pipeC = 16;
  separatorBar: number = plant.separatorBar;

  /** Each a first-order lag towards what it would settle at. */
  step(now: Moment): void {
    const { stepS } = now;
    const header = plant.headerBar - now.fault('header-sags') * (plant.headerBar - plant.saggedBar);
    this.headerBar = lagged(this.headerBar, header, plant.headerLagS, stepS);
    const wetK = now.fault('dryer-fails') * (plant.wetDewPointC - plant.dewPointC);
    this.dewPointC = lagged(this.dewPointC, plant.dewPointC + wetK, plant.dryerLagS, stepS);
    this.pipeC = lagged(this.pipeC, now.hallC - plant.pipeBelowHallK, 600, stepS);
    const loaded = now.fault('separator-loaded') * (plant.loadedBar - plant.separatorBar);
    const drop = plant.separatorBar + loaded;
    this.separatorBar = lagged(this.separatorBar, drop, plant.separatorLagS, stepS);
  }
}
