/** The dip tank: bath temperature, circulation over the weir and through the filter, the hoist. */
import { tankPlant as plant } from './invented-plant.ts';
import { afterStep, lagged } from './lump.ts';
import type { Moment } from './moment.ts';

const levelMm = 600;
/** A rack is drawn out so long in every so many seconds. */
const hoistS = { drawing: 40, cycle: 300 } as const;

export class DipBath {
  bathC: number = plant.setC;
  fallMm: number = plant.weirFallMm;
  flowLPerMin: number = plant.flowLPerMin;
  filterBar: number = plant.cleanFilterBar;
  solidsPercent: number = plant.solidsPercent;
  withdrawalMPerMin: number = plant.withdrawalMPerMin;
  withdrawing: 0 | 1 = 0;

  readonly tankMm = levelMm;

  get weirMm(): number {
    return levelMm - this.fallMm;
  }

  step(now: Moment): void {
    const { stepS } = now;
    const stuck = now.fault('tank-valve-stuck');
    // C dT/dt = Q + UA_exchanger (T_set - T) + UA_hall (T_hall - T); stuck, the exchanger only heats.
    this.bathC = afterStep(
      this.bathC,
      plant.capacityJPerK,
      stuck * plant.stuckW,
      [
        [plant.exchangerWPerK * (stuck > 0 ? 0 : 1), plant.setC],
        [plant.hallWPerK, now.hallC],
      ],
      stepS,
    );
    const fallen = now.fault('weir-low') * (plant.fallenWeirMm - plant.weirFallMm);
    this.fallMm = lagged(this.fallMm, plant.weirFallMm + fallen, plant.lagS, stepS);
    const weak = now.fault('tank-pump-weak') * (plant.flowLPerMin - plant.lostFlowLPerMin);
    const clogged = now.fault('tank-filter-clogged');
    const torn = now.fault('tank-filter-torn');
    const flow = (plant.flowLPerMin - weak) * (1 - 0.15 * clogged);
    this.flowLPerMin = lagged(this.flowLPerMin, flow, plant.lagS, stepS);
    const meshBar =
      plant.cleanFilterBar +
      clogged * (plant.cloggedFilterBar - plant.cleanFilterBar) +
      torn * (plant.tornFilterBar - plant.cleanFilterBar);
    // dp = k q: laminar flow of a viscous dispersion through the mesh.
    const drop = meshBar * (this.flowLPerMin / plant.flowLPerMin);
    this.filterBar = lagged(this.filterBar, drop, 10, stepS);
    const thinned = now.fault('bath-thinned') * (plant.solidsPercent - plant.thinnedPercent);
    this.solidsPercent = lagged(this.solidsPercent, plant.solidsPercent - thinned, 60, stepS);
    const inCycleS = ((now.lineS % hoistS.cycle) + hoistS.cycle) % hoistS.cycle;
    this.withdrawing = inCycleS < hoistS.drawing ? 1 : 0;
    const fast =
      now.fault('withdrawal-fast') * (plant.fastWithdrawalMPerMin - plant.withdrawalMPerMin);
    this.withdrawalMPerMin = this.withdrawing * (plant.withdrawalMPerMin + fast);
  }
}
