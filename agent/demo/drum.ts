/** The drum under its agitator: how fast the shaft turns, and what is left in the drum. */
import { mixerPlant as plant } from './invented-plant.ts';
import { lagged } from './lump.ts';
import type { Moment } from './moment.ts';

const changeS = 90;

export class Drum {
  perMin: number = plant.targetPerMin;
  levelMm = 640;
  /** Seconds left of a drum change; no drum is connected meanwhile. */
  private changingS = 0;

  get inUse(): 0 | 1 {
    return this.changingS > 0 ? 0 : 1;
  }

  step(now: Moment): void {
    const { stepS } = now;
    this.perMin = lagged(this.perMin, this.target(now), plant.shaftLagS, stepS);
    const low = now.fault('drum-drawn-low');
    if (this.changingS > 0) this.changingS -= stepS;
    else {
      // A dh/dt = -q: a cylinder falls evenly as it is drawn.
      const drawnMmPerS = low > 0 ? plant.hurriedDrawMmPerS : plant.drawMmPerS;
      const floorMm = low > 0 ? plant.lowestMm : 0;
      this.levelMm = Math.max(Math.min(floorMm, this.levelMm), this.levelMm - drawnMmPerS * stepS);
      if (low === 0 && this.levelMm < plant.changeMm) {
        this.changingS = changeS;
        this.levelMm = plant.fullMm;
      }
    }
  }

  private target(now: Moment): number {
    if (now.fault('agitator-stopped') > 0) return 0;
    const fast = now.fault('agitator-fast') * (plant.fastPerMin - plant.targetPerMin);
    const slow = now.fault('agitator-slow') * (plant.slowPerMin - plant.targetPerMin);
    return plant.targetPerMin + fast + slow;
  }
}
