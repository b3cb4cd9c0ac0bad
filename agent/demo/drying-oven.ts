/** The drying oven: two zones of air, two tracks of racks, an exhaust that must run. */
import { nature, ovenPlant as plant } from './invented-plant.ts';
import { afterStep, lagged } from './lump.ts';
import type { Moment } from './moment.ts';
import { Rack } from './rack.ts';

export const tracks = ['left', 'right'] as const;
export type Track = (typeof tracks)[number];

export class DryingOven {
  readonly zoneC: [number, number] = [plant.setC, plant.setC];
  /** What the second sensor of zone 1 is off by. */
  checkOffK = 0;
  readonly racks: Readonly<Record<Track, Rack>> = { left: new Rack(), right: new Rack() };
  readonly loaded: Record<Track, 0 | 1> = { left: 0, right: 0 };
  private readonly insideS: Record<Track, number> = { left: 0, right: 0 };
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
    this.checkOffK = lagged(
      this.checkOffK,
      now.fault('zone-sensor-off') * plant.sensorOffK,
      90,
      stepS,
    );
    for (const [index, track] of tracks.entries())
      this.move(now, track, index * (plant.cycleS / 2));
    this.heatW = 0;
    this.heatZone(now, 0, -now.fault('oven-cold') * plant.setBackK);
    const runaway = now.fault('zone-hot') * plant.runawayK;
    this.heatZone(now, 1, runaway - now.fault('oven-cold') * plant.setBackK);
  }

  /** A rack goes in, through zone 1, then zone 2, and out; while the conveyor stands it stays. */
  private move(now: Moment, track: Track, laterS: number): void {
    const rack = this.racks[track];
    const inCycleS = (((now.lineS - laterS) % plant.cycleS) + plant.cycleS) % plant.cycleS;
    const moving = this.moving(now) === 1;
    const wasLoaded = this.loaded[track] === 1;
    const wanted = inCycleS < plant.dwellS;
    // Nothing enters or leaves over a standing conveyor.
    if (moving && wanted !== wasLoaded) {
      this.loaded[track] = wanted ? 1 : 0;
      this.insideS[track] = wanted ? inCycleS : 0;
      if (wanted) rack.load(now.hallC);
    }
    if (this.loaded[track] === 1) {
      if (moving) this.insideS[track] += now.stepS;
      const zone = this.insideS[track] < plant.dwellS / 2 ? 0 : 1;
      rack.step(this.zoneC[zone]!, plant.filmWPerM2K, now.stepS);
    } else rack.step(now.hallC, plant.hallWPerM2K, now.stepS);
  }

  /**
   * C dT/dt = P - UA (T - T_hall) - V rho c (T - T_hall) - h A (T - T_metal): the heat of the burner
   * goes into walls, exhaust and racks.
   */
  private heatZone(now: Moment, zone: 0 | 1, offsetK: number): void {
    const inZone = tracks.filter(
      (track) =>
        this.loaded[track] === 1 && (this.insideS[track] < plant.dwellS / 2 ? 0 : 1) === zone,
    );
    const nowC = this.zoneC[zone];
    const exhaustWPerK = plant.exhaustM3PerS * this.exhaustShare * nature.airJPerM3K;
    const rackWPerK = plant.filmWPerM2K * plant.partsM2;
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
        ...inZone.map((track) => [rackWPerK, this.racks[track].metalC] as const),
      ],
      now.stepS,
    );
  }
}
