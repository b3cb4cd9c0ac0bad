/**
 * What is done regularly while the agent runs: looking at the clock, keeping the disk, sealing.
 *
 * Always true: a chore that fails keeps no other from being done. One that the disk refuses is
 * told once, kept in sight while it lasts, and tried again when its time comes.
 */
import { type AgentError, isDiskRefusal } from '../errors.ts';
import { limits } from '../limits.ts';
import type { Core } from './core.ts';
import { tendTelling } from './telling.ts';

const secondMs = 1_000;
const tenSecondsMs = 10_000;
const minuteMs = 60_000;

export interface UpkeepParts {
  readonly core: Core;
  readonly spaceBytes: number;
  readonly fault: (error: unknown) => void;
  /** The disk refused a chore it had done before. */
  readonly refused: (error: AgentError) => void;
  readonly healthMayHaveChanged: () => void;
  /** Looks whether the files being written are still the folder's. */
  readonly attend: () => void;
  /** Alarms that say when a limit will be reached may say it anew. */
  readonly forecastsMayHaveMoved: () => void;
}

type Chore = readonly [name: string, act: () => void];

export class Upkeep {
  private readonly parts: UpkeepParts;
  private readonly refusals = new Map<string, AgentError>();
  private timers: NodeJS.Timeout[] = [];
  /** Monotonic milliseconds of the last look. */
  lookedAt = performance.now();

  constructor(parts: UpkeepParts) {
    this.parts = parts;
  }

  start(mode: 'wall' | 'samples'): void {
    const { core, fault, spaceBytes, healthMayHaveChanged, attend } = this.parts;
    const { live, store } = core;
    this.every(limits.lookMs, [
      ['turn', () => this.turn()],
      ['dead rows', () => store.deleteDead()],
      ['sealing', () => void core.sealIfDue().catch(fault)],
    ]);
    this.every(secondMs, [
      ['files', attend],
      ['clock', () => mode === 'wall' && core.lookAtClock()],
      ['high water', () => store.note()],
      ['ballast', () => store.tendBallast()],
      ['health', healthMayHaveChanged],
    ]);
    const settings: Chore = ['settings', () => void store.backUpSettings(Date.now())];
    this.attempt(settings);
    this.every(tenSecondsMs, [settings]);
    this.every(minuteMs, [
      ['space', () => store.dropOldestBodies(spaceBytes)],
      ['forecasts', this.parts.forecastsMayHaveMoved],
    ]);
    if (mode === 'samples')
      this.every(limits.lookMs, [['idle', () => live.idleFor(limits.samplesIdleMs)]]);
  }

  stop(): void {
    for (const timer of this.timers) clearInterval(timer);
    this.timers = [];
  }

  /** What the disk refuses of all this now. */
  get refused(): AgentError | null {
    return [...this.refusals.values()][0] ?? null;
  }

  private turn(): void {
    this.lookedAt = performance.now();
    tendTelling(this.parts.core);
    this.parts.core.live.tick();
  }

  private every(ms: number, chores: readonly Chore[]): void {
    this.timers.push(
      setInterval(() => {
        for (const chore of chores) this.attempt(chore);
      }, ms),
    );
  }

  private attempt([name, act]: Chore): void {
    try {
      act();
      this.refusals.delete(name);
    } catch (error) {
      if (!isDiskRefusal(error)) this.parts.fault(error);
      else {
        if (!this.refusals.has(name)) this.parts.refused(error);
        this.refusals.set(name, error);
      }
    }
  }
}
