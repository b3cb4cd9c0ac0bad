/** The adhesive store: a small heated room with a gate to the yard, and the pail at its wall. */
import { hallPlant, nature, storePlant as plant } from './invented-plant.ts';
import { afterStep } from './lump.ts';
import type { Moment } from './moment.ts';

/**
 * Temperature of water of so much enthalpy, 0 J/kg being liquid at 0 Cel: below 0 Cel only once
 * all of its melting heat is gone.
 */
export function waterC(enthalpyJPerKg: number): number {
  if (enthalpyJPerKg >= 0) return enthalpyJPerKg / nature.waterJPerKgK;
  const beyondJPerKg = enthalpyJPerKg + nature.meltingJPerKg;
  return beyondJPerKg >= 0 ? 0 : beyondJPerKg / nature.iceJPerKgK;
}

export class StoreRoom {
  airC: number = plant.setC;
  private pailJPerKg = 17 * nature.waterJPerKgK;
  humidityPercent = 50;

  get wallC(): number {
    return waterC(this.pailJPerKg);
  }

  step(now: Moment): void {
    const { stepS, outsideC } = now;
    const gate = now.fault('gate-open');
    const full = now.fault('store-heater-full');
    // A controller in proportion, P = k (T_set - T) within 0 and P_max; by hand there is only the cut-out.
    const called = plant.heaterWPerK * (plant.setC - this.airC);
    const controlledW = Math.min(plant.heaterWMax, Math.max(0, called));
    const byHandW = this.airC < plant.cutOutC ? plant.byHandW : 0;
    const heatW = full > 0 ? byHandW * full : controlledW;
    const leaks = plant.wallsWPerK + gate * plant.gateWPerK;
    this.airC = afterStep(this.airC, plant.airJPerK, heatW, [[leaks, outsideC]], stepS);

    // m dh/dt = UA (T_around - T); in enthalpy, so that freezing holds it at 0 Cel.
    const { still, draught, fan } = plant.pailWPerK;
    const wPerK = still + gate * (draught - still) + full * (1 - gate) * (fan - still);
    const share = gate * plant.draughtShare;
    const aroundC = share * outsideC + (1 - share) * this.airC;
    this.pailJPerKg += (wPerK * (aroundC - this.wallC) * stepS) / plant.pailKg;

    // The same water in warmer air: rh falls by about 6 % of itself a kelvin.
    const warmerK = this.airC - plant.setC;
    const wanted = hallPlant.meanRhPercent * Math.exp(-0.06 * warmerK) * (1 - 0.3 * gate);
    this.humidityPercent += ((Math.min(96, wanted) - this.humidityPercent) * stepS) / 300;
  }
}
