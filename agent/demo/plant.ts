/**
 * The whole line, moved on second by second. What it does follows from its seed, the moment it
 * began and the moment it has reached, and from nothing else.
 */
import { AirPlant } from './air-plant.ts';
import { Booth } from './booth.ts';
import { driftAt } from './chance.ts';
import { DipBath } from './dip-bath.ts';
import { Drum } from './drum.ts';
import { DryingOven } from './drying-oven.ts';
import { hallPlant } from './invented-plant.ts';
import type { Moment } from './moment.ts';
import { PreBake } from './pre-bake.ts';
import { Press } from './press.ts';
import { ResiduePlaces } from './residue-places.ts';
import { Preparation, RackRoom } from './rooms.ts';
import { SteadyValues } from './steady-values.ts';
import { StoreRoom } from './store-room.ts';
import { type FaultName, ordinary, preRollMin, show, shown } from './timetable.ts';

const stepS = 1;
const hourS = 3_600;
/** Faults begin and end on the tens of a second. */
const faultsEveryS = 10;

/** The share of each fault at a second of the line. */
export type Script = (fault: (typeof show)[number], index: number, lineS: number) => number;

/** The show alone, from half an hour before its beginning. */
export const theShow =
  (seed: number): Script =>
  (fault, index, lineS) =>
    shown(seed, fault, index, lineS);

/** Ordinary days, then the way into the show, which begins at second 0 of the line. */
export const weekBeforeShow =
  (seed: number): Script =>
  (fault, index, lineS) =>
    lineS < -preRollMin * 60
      ? ordinary(seed, fault, index, lineS)
      : shown(seed, fault, index, lineS);

export class Plant {
  readonly seed: number;
  readonly store = new StoreRoom();
  readonly drum = new Drum();
  readonly preparation = new Preparation();
  readonly bath = new DipBath();
  readonly booth = new Booth();
  readonly air = new AirPlant();
  readonly oven = new DryingOven();
  readonly residue = new ResiduePlaces();
  readonly rackRoom = new RackRoom();
  readonly press = new Press();
  readonly preBake = new PreBake();
  readonly steady = new SteadyValues();
  private readonly beginsAtMs: number;
  private readonly script: Script;
  private lineS: number;
  private readonly faults = new Map<FaultName, number>();
  private readonly beganS = new Map<FaultName, number>();
  private readonly overS = new Map<FaultName, number>();

  /** `showAtMs`: when second 0 of the line is; the plant begins at `fromS`, which may lie before it. */
  constructor(seed: number, showAtMs: number, fromS: number, script: Script) {
    this.seed = seed;
    this.beginsAtMs = showAtMs;
    this.script = script;
    this.lineS = fromS;
    this.moveOn(1);
  }

  get atMs(): number {
    return this.beginsAtMs + this.lineS * 1_000;
  }

  /** To the whole second at or before `atMs`; never back. */
  moveTo(atMs: number): Moment {
    const wantedS = Math.floor((atMs - this.beginsAtMs) / 1_000);
    this.moveOn(wantedS - this.lineS);
    return this.moment();
  }

  private moveOn(seconds: number): void {
    for (let i = 0; i < seconds; i += 1) this.step();
  }

  private step(): void {
    this.lineS += stepS;
    if (this.lineS % faultsEveryS === 0 || this.faults.size === 0)
      for (const [index, fault] of show.entries()) this.setFault(fault, index);
    const now = this.moment();
    this.store.step(now);
    this.drum.step(now);
    this.preparation.step(now);
    this.bath.step(now);
    this.air.step(now);
    this.booth.step(now, this.air.headerBar);
    this.oven.step(now);
    // The filter hangs in the exhaust, which has cooled a little on its way.
    this.residue.step(now, this.oven.zoneC, this.oven.zoneC[1] - 9);
    this.rackRoom.step(now);
    this.press.step(now);
    this.preBake.step(now);
    this.steady.step(now);
  }

  private setFault(fault: (typeof show)[number], index: number): void {
    const { name } = fault;
    const before = this.faults.get(name) ?? 0;
    const share = this.script(fault, index, this.lineS);
    this.faults.set(name, share);
    if (share > 0 && before === 0) this.beganS.set(name, onTens(this.lineS));
    if (share === 0 && before > 0) this.overS.set(name, onTens(this.lineS));
  }

  moment(): Moment {
    const { seed, lineS, atMs } = this;
    const wallS = atMs / 1_000;
    // Warmest at 15 h: a cosine of the hour of the day.
    const hour = ((wallS / hourS) % 24) - 15;
    const swing = Math.cos((hour / 24) * 2 * Math.PI);
    return {
      atMs,
      lineS,
      stepS,
      seed,
      outsideC:
        hallPlant.outsideMeanC +
        hallPlant.outsideSwingK * swing +
        driftAt(seed, 900, wallS, 6 * hourS),
      hallC:
        hallPlant.meanC + hallPlant.dailySwingK * swing + 0.4 * driftAt(seed, 901, wallS, hourS),
      hallRhPercent: hallPlant.meanRhPercent + 5 * driftAt(seed, 902, wallS, 3 * hourS),
      fault: (name) => this.faults.get(name) ?? 0,
      since: (name) => passed(lineS, this.beganS.get(name)),
      over: (name) => passed(lineS, this.overS.get(name)),
    };
  }
}

/** People look at their watch every ten seconds, as the history is made. */
const onTens = (seconds: number): number => Math.ceil(seconds / 10) * 10;

const passed = (nowS: number, thenS: number | undefined): number | null =>
  thenS === undefined ? null : nowS - thenS;
