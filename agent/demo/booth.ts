/** The spray booth: exhaust fan and filter, pressure pot and atomising air, a gun that comes and goes. */
import { airPlant, boothPlant as plant } from './invented-plant.ts';
import { lagged } from './lump.ts';
import type { Moment } from './moment.ts';

export class Booth {
  faceMPerS: number = plant.faceMPerS;
  potBar: number = plant.potBar;
  atomisingBar: number = plant.atomisingBar;
  private loaded = 1;
  /** Somebody sprays here, pauses included; and the trigger, which pauses. */
  spraying: 0 | 1 = 1;
  trigger: 0 | 1 = 1;

  /** dp = dp_clean x loading x (v / v_wanted)^2: turbulent flow through what the filter holds. */
  get filterPa(): number {
    return plant.cleanFilterPa * this.loaded * (this.faceMPerS / plant.faceMPerS) ** 2;
  }

  step(now: Moment, headerBar: number): void {
    const { stepS } = now;
    const inCycleS = ((now.lineS % plant.cycleS) + plant.cycleS) % plant.cycleS;
    this.spraying = now.fault('guns-left') > 0 ? 0 : 1;
    this.trigger = inCycleS < plant.spraySPerCycle ? this.spraying : 0;
    const slip = now.fault('fan-belt-slips') * (plant.faceMPerS - plant.slippedMPerS);
    const running = now.fault('booth-fan-trips') > 0 ? 0 : 1;
    const flowMPerS = running * (plant.faceMPerS - slip);
    this.faceMPerS = lagged(this.faceMPerS, flowMPerS, plant.fanLagS, stepS);
    const full = now.fault('booth-filter-loaded') * (plant.loadedShare - 1);
    const loaded = 1 + full + now.fault('booth-filter-missing') * (plant.missingShare - 1);
    this.loaded = lagged(this.loaded, loaded, 60, stepS);
    const crept = now.fault('pot-high') * (plant.potHighBar - plant.potBar);
    const over = now.fault('pot-over-rating') * (plant.potRatingBar - plant.potBar);
    const pot = plant.potBar + Math.max(crept, over);
    this.potBar = lagged(this.potBar, pot, plant.potLagS, stepS);
    // A regulator holds its pressure as long as the header is well above it.
    const share = Math.min(1, headerBar / (airPlant.headerBar - 1));
    this.atomisingBar = lagged(this.atomisingBar, plant.atomisingBar * share, 3, stepS);
  }
}
