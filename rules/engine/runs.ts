/**
 * Oven runs: one load from entry to exit, opened and closed by what the signals say.
 *
 * A run opens when the station is loaded and closes when it is empty again; its id is
 * `<line/station>@<judged ms of the opening>`. Meanwhile the metal's heat is summed. What nobody
 * saw, through downtime or a bad sensor, is counted as unobserved and never as heated.
 */
import type { Effect, RunFeatures } from '../input.ts';
import type { Plan, PlanRun } from '../plan/plan.ts';
import { msAtOrAbove } from '../process/heat-dose.ts';
import type { EpochMs } from '../signal/sample.ts';
import { RackHeats } from './rack-heat.ts';
import type { SavedHeats } from './rack-heat-state.ts';

const loadedFrom = 0.5;
const minuteMs = 60_000;

export interface OpenRun {
  readonly id: string;
  opened: EpochMs;
  readings: number;
  peak: number | null;
  lowest: number | null;
  leastMs: number;
  mostMs: number;
  observedMs: number;
  /** Steepest rise of one minute's mean over the minute's before. */
  steepest: number | null;
  /** The open minute, and the mean of the one before it. */
  minute: number;
  sum: number;
  count: number;
  before: number | null;
  value: number | null;
  /** When the last usable reading of the metal was judged; null before it and after a gap. */
  seenAt: EpochMs | null;
}

/** What the runs ask of the engine. */
export interface RunHost {
  readonly now: EpochMs;
  emit(effect: Effect): void;
}

export class Runs {
  /** By station; null while it is empty. */
  readonly open: Map<string, OpenRun>;
  /** Runs that listen to a signal, by its index. */
  readonly of: readonly (readonly PlanRun[])[];
  /** What racks carry from oven to oven. */
  readonly heats: RackHeats;
  /** 1 for a signal that a run or the heat of racks listens to. */
  readonly listens: Uint8Array;
  private readonly host: RunHost;

  constructor(
    plan: Plan,
    saved: Readonly<Record<string, OpenRun>>,
    heats: SavedHeats | undefined,
    host: RunHost,
  ) {
    this.host = host;
    this.heats = new RackHeats(plan, heats);
    this.of = plan.signals.map((_, i) =>
      plan.runs.filter(({ loaded, metal }) => loaded === i || metal === i),
    );
    this.listens = Uint8Array.from(this.of, (runs, i) =>
      Number(runs.length + this.heats.of[i]!.length > 0),
    );
    const known = plan.runs.filter(({ station }) => saved[station] !== undefined);
    this.open = new Map(known.map(({ station }) => [station, { ...saved[station]! }]));
  }

  save(): Record<string, OpenRun> {
    return Object.fromEntries([...this.open].map(([station, run]) => [station, { ...run }]));
  }

  sample(signal: number, judged: EpochMs, value: number): void {
    this.heats.sample(signal, judged, value);
    for (const plan of this.of[signal]!) {
      if (plan.loaded === signal) this.load(plan, judged, value >= loadedFrom);
      const run = plan.metal === signal ? this.open.get(plan.station) : undefined;
      if (run !== undefined) heat(plan, run, judged, value);
    }
  }

  /** The signal cannot be used: nothing is known of the metal until it can. */
  blind(signal: number): void {
    this.heats.blind(signal, this.host.now);
    for (const plan of this.of[signal]!) {
      const run = plan.metal === signal ? this.open.get(plan.station) : undefined;
      if (run !== undefined) lookAway(run);
    }
  }

  /** Nothing was observed from then on until now. */
  gap(fromMs: EpochMs): void {
    this.heats.gap(fromMs);
    for (const run of this.open.values()) lookAway(run);
  }

  /** The station is no longer part of the site. */
  removed(plan: PlanRun): void {
    if (this.open.has(plan.station)) this.close(plan, this.host.now, 'removed');
  }

  private load(plan: PlanRun, judged: EpochMs, loaded: boolean): void {
    if (loaded === this.open.has(plan.station)) return;
    if (!loaded) {
      this.close(plan, judged, 'unloaded');
      return;
    }
    const id = `${plan.station}@${judged}`;
    this.open.set(plan.station, begun(id, judged));
    const { station } = plan;
    const why = 'loaded' as const;
    const [action, features] = ['opened' as const, null];
    const times = { opened: judged, closed: null };
    this.host.emit({ kind: 'run', judged, run: id, station, action, ...times, why, features });
  }

  private close(plan: PlanRun, closed: EpochMs, why: 'unloaded' | 'removed'): void {
    const { station } = plan;
    const run = this.open.get(station)!;
    this.open.delete(station);
    const { id, opened } = run;
    const features = featuresOf(plan, run, closed);
    const action = 'closed' as const;
    const times = { opened, closed };
    this.host.emit({
      kind: 'run',
      judged: closed,
      run: id,
      station,
      action,
      ...times,
      why,
      features,
    });
  }
}

const begun = (id: string, opened: EpochMs): OpenRun => ({
  id,
  opened,
  readings: 0,
  peak: null,
  lowest: null,
  leastMs: 0,
  mostMs: 0,
  observedMs: 0,
  steepest: null,
  minute: 0,
  sum: 0,
  count: 0,
  before: null,
  value: null,
  seenAt: null,
});

function lookAway(run: OpenRun): void {
  run.seenAt = null;
  run.count = 0;
  run.sum = 0;
  run.before = null;
}

function heat(plan: PlanRun, run: OpenRun, judged: EpochMs, value: number): void {
  if (run.seenAt !== null && run.value !== null) {
    const { seenAt, value: from } = run;
    run.observedMs += judged - seenAt;
    if (plan.least !== null)
      run.leastMs += msAtOrAbove(seenAt, from, judged, value, plan.least.fromC);
    if (plan.most !== null) run.mostMs += msAtOrAbove(seenAt, from, judged, value, plan.most.fromC);
  }
  run.readings += 1;
  run.peak = run.peak === null ? value : Math.max(run.peak, value);
  run.lowest = run.lowest === null ? value : Math.min(run.lowest, value);
  rise(run, Math.floor((judged - run.opened) / minuteMs), value);
  run.value = value;
  run.seenAt = judged;
}

function rise(run: OpenRun, minute: number, value: number): void {
  if (minute !== run.minute) {
    const mean = run.count === 0 ? null : run.sum / run.count;
    if (mean !== null && run.before !== null)
      run.steepest = Math.max(run.steepest ?? Number.NEGATIVE_INFINITY, mean - run.before);
    // A minute without a reading leaves nothing to rise from.
    run.before = minute === run.minute + 1 ? mean : null;
    Object.assign(run, { minute, sum: 0, count: 0 });
  }
  run.sum += value;
  run.count += 1;
}

/** To a thousandth, so that no dust of arithmetic reaches the record. */
const rounded = (value: number | null): number | null =>
  value === null ? null : Math.round(value * 1_000) / 1_000 + 0;

function featuresOf(plan: PlanRun, run: OpenRun, closed: EpochMs): RunFeatures {
  const { least, most, peak } = plan;
  const seen = run.readings > 0;
  const tooHot = peak !== null && run.peak !== null && run.peak > peak;
  const tooLong = most !== null && run.mostMs > most.ms;
  return {
    readings: run.readings,
    peak: run.peak,
    lowest: run.lowest,
    steepestPerMin: rounded(run.steepest),
    aboveMs: least === null || !seen ? null : Math.round(run.leastMs),
    upperMs: most === null || !seen ? null : Math.round(run.mostMs),
    unobservedMs: closed - run.opened - run.observedMs,
    under: least === null || !seen ? null : run.leastMs < least.ms,
    over: (peak === null && most === null) || !seen ? null : tooHot || tooLong,
  };
}
