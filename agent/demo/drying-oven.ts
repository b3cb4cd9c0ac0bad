/** The drying oven: two zones of air, a rack on its way through, an exhaust that must run. */
import { nature, ovenPlant as plant } from './invented-plant.ts';
import { afterStep, lagged } from './lump.ts';
import type { Moment } from './moment.ts';
import { Rack } from './rack.ts';

export class DryingOven {
  readonly zoneC: [number, number] = [plant.setC, plant.setC];
  /** What the second sensor of zone 1 is off by. */
  checkOffK = 0;
  readonly rack = new Rack();
  loaded: 0 | 1 = 0;
  private insideS = 0;
  exhaustPa: number = plant.exhaustPa;
  /** Sum of what the burners give. */
  heatW = 0;

  /** Air moves through it at the square root of the drop it makes. */
  private get exhaustShare(): number {
    return Math.sqrt(Math.max(0, this.exhaustPa) / plant.exhaustPa);
  }

  moving(now: Moment): 0 | 1 {
    return now.fault('conveyor-stops') > 0 ? 0 : 1;
  }

  step(now: Moment): void {
    const { stepS } = now;
    const lost = now.fault('oven-exhaust-lost');
    this.exhaustPa = lagged(this.exhaustPa, plant.exhaustPa * (1 - lost), plant.exhaustLagS, stepS);
    const off = now.fault('zone-sensor-off') * plant.sensorOffK;
    this.checkOffK = lagged(this.checkOffK, off, 90, stepS);
    this.move(now);
    this.heatW = 0;
    const runaway = now.fault('zone-hot');
    const offsetK = runaway * plant.runawayK - now.fault('oven-cold') * plant.setBackK;
    this.heatZone(now, 0, offsetK);
    this.heatZone(now, 1, offsetK + runaway * plant.runawayZone2K);
  }

  /** A rack goes in, through zone 1, then zone 2, and out; while the conveyor stands it stays. */
  private move(now: Moment): void {
    const { rack } = this;
    const inCycleS = ((now.lineS % plant.cycleS) + plant.cycleS) % plant.cycleS;
    const moving = this.moving(now) === 1;
    const wanted = inCycleS < plant.dwellS ? 1 : 0;
    // Nothing enters or leaves over a standing conveyor.
    if (moving && wanted !== this.loaded) {
      this.loaded = wanted;
      this.insideS = 0;
      if (wanted === 1) rack.load(now.hallC);
    }
    if (this.loaded === 1) {
      if (moving) this.insideS += now.stepS;
      rack.step(this.zoneC[this.zoneOfRack], plant.filmWPerM2K, now.stepS);
    } else rack.step(now.hallC, plant.hallWPerM2K, now.stepS);
  }

  private get zoneOfRack(): 0 | 1 {
    return this.insideS < plant.dwellS / 2 ? 0 : 1;
  }

  /**
   * C dT/dt = P - UA (T - T_hall) - V rho c (T - T_hall) - h A (T - T_metal): the heat of the burner
   * goes into walls, exhaust and racks.
   */
  private heatZone(now: Moment, zone: 0 | 1, offsetK: number): void {
    const nowC = this.zoneC[zone];
    const exhaustWPerK = plant.exhaustM3PerS * this.exhaustShare * nature.airJPerM3K;
    const here = this.loaded === 1 && this.zoneOfRack === zone;
    const rackWPerK = here ? plant.filmWPerM2K * plant.partsM2 : 0;
    const setC = plant.setC + offsetK;
    // Feed-forward of the steady losses, and in proportion to what is missing.
    const steadyW = (plant.wallsWPerK + exhaustWPerK) * (setC - now.hallC);
    const wantedW = steadyW + plant.heaterWPerK * (setC - nowC);
    const heatW = Math.min(plant.heaterWMax, Math.max(0, wantedW));
    this.heatW += heatW;
    this.zoneC[zone] = afterStep(
      nowC,
      plant.zoneJPerK,
      heatW,
      [
        [plant.wallsWPerK + exhaustWPerK, now.hallC],
        [rackWPerK, this.rack.metalC],
      ],
      now.stepS,
    );
  }
}
