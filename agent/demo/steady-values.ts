/** Values that stand where they belong until a fault moves them, each a first-order lag. */
import { steadyPlant } from './invented-plant.ts';
import { lagged } from './lump.ts';
import type { Moment } from './moment.ts';
import type { FaultName } from './timetable.ts';

export type SteadyName = keyof typeof steadyPlant;

interface Steady {
  readonly usual: number;
  readonly gone: number;
  readonly fault: FaultName;
  readonly lagS: number;
}

const all: readonly (readonly [string, Steady])[] = Object.entries(steadyPlant);

export class SteadyValues {
  private readonly now = new Map<string, number>(all.map(([name, { usual }]) => [name, usual]));

  of(name: SteadyName): number {
    return this.now.get(name) ?? steadyPlant[name].usual;
  }

  step(now: Moment): void {
    for (const [name, { usual, gone, fault, lagS }] of all) {
      const target = usual + now.fault(fault) * (gone - usual);
      this.now.set(name, lagged(this.now.get(name) ?? usual, target, lagS, now.stepS));
    }
  }
}
