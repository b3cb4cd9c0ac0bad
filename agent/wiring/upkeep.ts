/**
 * What is done regularly while the agent runs: looking at the clock, keeping the disk, sealing.
 */
import { limits } from '../limits.ts';
import type { Core } from './core.ts';

const secondMs = 1_000;
const minuteMs = 60_000;

export class Upkeep {
  private readonly core: Core;
  private readonly spaceBytes: number;
  private readonly fault: (error: unknown) => void;
  private readonly healthMayHaveChanged: () => void;
  private timers: NodeJS.Timeout[] = [];
  /** Monotonic milliseconds of the last look. */
  lookedAt = performance.now();

  constructor(
    core: Core,
    spaceBytes: number,
    fault: (error: unknown) => void,
    healthMayHaveChanged: () => void,
  ) {
    this.core = core;
    this.spaceBytes = spaceBytes;
    this.fault = fault;
    this.healthMayHaveChanged = healthMayHaveChanged;
  }

  start(mode: 'wall' | 'samples'): void {
    this.every(limits.lookMs, () => this.look(mode));
    this.every(secondMs, () => this.second(mode));
    this.every(minuteMs, () => this.core.store.dropOldestBodies(this.spaceBytes));
  }

  stop(): void {
    for (const timer of this.timers) clearInterval(timer);
    this.timers = [];
  }

  private look(mode: 'wall' | 'samples'): void {
    this.lookedAt = performance.now();
    const { live, store } = this.core;
    live.tick();
    if (mode === 'samples') live.idleFor(limits.samplesIdleMs);
    store.deleteDead();
    this.core.sealIfDue().catch(this.fault);
  }

  private second(mode: 'wall' | 'samples'): void {
    if (mode === 'wall') this.core.lookAtClock();
    this.core.store.note();
    this.core.store.tendBallast();
    this.healthMayHaveChanged();
  }

  private every(ms: number, act: () => void): void {
    this.timers.push(
      setInterval(() => {
        try {
          act();
        } catch (error) {
          this.fault(error);
        }
      }, ms),
    );
  }
}
