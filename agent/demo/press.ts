/** The press: a heated mould that every shot of cold inserts and rubber cools a little. */
import { pressPlant as plant } from './invented-plant.ts';
import { afterStep } from './lump.ts';
import type { Moment } from './moment.ts';

const closedS = 300;
/** The first insert of the next shot is laid in so late in a cycle. */
const loadedS = 380;

export class Press {
  mouldC: number = plant.setC;
  closed: 0 | 1 = 1;
  insertIn: 0 | 1 = 1;

  /** C dT/dt = P - UA (T - T_hall) - Q_shot / t_closed, P in proportion within its bounds. */
  step(now: Moment): void {
    const inCycleS = ((now.lineS % plant.shotEveryS) + plant.shotEveryS) % plant.shotEveryS;
    this.closed = inCycleS < closedS && now.fault('insert-stuck') === 0 ? 1 : 0;
    this.insertIn = inCycleS < closedS || inCycleS >= loadedS ? 1 : 0;
    const setC = plant.setC + now.fault('mould-hot') * plant.overSetK;
    const steadyW = plant.hallWPerK * (setC - now.hallC);
    const wantedW = steadyW + plant.heaterWPerK * (setC - this.mouldC);
    const failed = now.fault('mould-cold') > 0 ? 0 : 1;
    const heatW = failed * Math.min(plant.heaterWMax, Math.max(0, wantedW));
    const shotW = (this.closed * plant.shotJ) / closedS;
    this.mouldC = afterStep(
      this.mouldC,
      plant.capacityJPerK,
      heatW - shotW,
      [[plant.hallWPerK, now.hallC]],
      now.stepS,
    );
  }
}
