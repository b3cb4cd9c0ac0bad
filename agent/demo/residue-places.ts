/** Where dried residue gathers: the floor below the racks, the burner's shroud, the exhaust's filter, the bin. */
import { residuePlant as plant } from './invented-plant.ts';
import { afterStep, lagged } from './lump.ts';
import type { Moment } from './moment.ts';

export class ResiduePlaces {
  floorC = 80;
  /** The gas along the floor, 50 mm above it, warmer than its zone by so much. */
  private hotGasK = 0;
  floorAirC = 78;
  shroudC = 82;
  filterC = 70;
  binC = 22;
  readonly stackC: [number, number] = [24, 24];
  /** What the filter's bed and the bin give off as they react; it builds up slowly. */
  private filterW = 0;
  private binW = 0;
  thicknessMm: number = plant.thicknessMm;

  /** C dT/dt = Q + UA (T_air - T), Q from radiation, or from the residue itself. */
  step(now: Moment, zoneC: readonly [number, number], exhaustC: number): void {
    const { stepS } = now;
    const gasK = now.fault('hot-spot') * plant.hotGasK;
    this.hotGasK = lagged(this.hotGasK, gasK, plant.hotGasLagS, stepS);
    this.floorAirC = zoneC[0] + this.hotGasK;
    this.floorC = afterStep(
      this.floorC,
      plant.floorJPerK,
      plant.floorRadiantW,
      [[plant.floorToAirWPerK, this.floorAirC]],
      stepS,
    );
    this.shroudC = afterStep(
      this.shroudC,
      plant.shroudJPerK,
      plant.shroudRadiantW,
      [[plant.shroudToAirWPerK, zoneC[0]]],
      stepS,
    );
    const reacting = now.fault('filter-reacts') * plant.reactingW;
    this.filterW = lagged(this.filterW, reacting, reacting > 0 ? plant.reactingLagS : 60, stepS);
    this.filterC = afterStep(
      this.filterC,
      plant.filterJPerK,
      this.filterW,
      [[plant.filterToAirWPerK, exhaustC]],
      stepS,
    );
    this.binW = lagged(this.binW, now.fault('bin-reacts') * plant.binReactingW, 120, stepS);
    this.binC = afterStep(
      this.binC,
      plant.binJPerK,
      this.binW,
      [[plant.binToHallWPerK, now.hallC]],
      stepS,
    );
    for (const rack of [0, 1] as const) {
      // One of the two is stacked hot; afterwards both cool as they may.
      const fresh = rack === 0 && now.fault('stack-hot') > 0;
      this.stackC[rack] = fresh
        ? plant.hotStackC
        : afterStep(
            this.stackC[rack],
            plant.stackJPerK,
            0,
            [[plant.stackToHallWPerK, now.hallC]],
            stepS,
          );
    }
    this.thicknessMm += (plant.growthMmPerH * stepS) / 3_600;
  }

  /** As somebody gauged it; 1 mm more where the gauge found a ridge. */
  gaugedMm(now: Moment): number {
    return this.thicknessMm + now.fault('residue-thick');
  }
}
