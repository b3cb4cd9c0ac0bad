/** The drum under its agitator: how fast the shaft turns, and what is left in the drum. */
import { mixerPlant as plant } from './invented-plant.ts';
import { lagged } from './lump.ts';
import type { Moment } from './moment.ts';

const changeS = 90;
/** People let a new drum mix so long before they draw from it. */
const mixedS = 900;

export class Drum {
  perMin: number = plant.targetPerMin;
  levelMm = 640;
  /** Seconds left of a drum change; no drum is connected meanwhile. */
  private changingS = 0;

  /** Which drum is connected, counted from the first, and when it was, on the tens of a second. */
  count = 0;
  connectedAtS: number | null = null;
  feeding: 0 | 1 = 1;

  get inUse(): 0 | 1 {
    return this.changingS > 0 ? 0 : 1;
  }

  step(now: Moment): void {
    const { stepS } = now;
    this.perMin = lagged(this.perMin, this.target(now), plant.shaftLagS, stepS);
    const low = now.fault('drum-drawn-low');
    const sinceS = this.connectedAtS === null ? null : now.lineS - this.connectedAtS;
    const mixed = sinceS === null || sinceS >= mixedS || now.fault('drawn-in-haste') > 0;
    this.feeding = this.changingS <= 0 && mixed ? 1 : 0;
    if (this.changingS > 0) {
      this.changingS -= stepS;
      if (this.changingS <= 0) {
        this.count += 1;
        this.connectedAtS = Math.ceil(now.lineS / 10) * 10;
      }
    } else if (mixed) {
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
