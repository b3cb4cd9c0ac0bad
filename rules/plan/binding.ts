/**
 * How messages become samples of a signal: what intake needs to know, and nothing it must look up.
 *
 * canonical = unit(slope * read + intercept); with a sensor, `read` is what the sensor measures, in
 * the sensor's unit. A wildcard topic has one binding and as many signals as values its levels took.
 */
import { type PossibleRange, possibleRange } from '../quantity/possible.ts';
import { fromCanonical, toCanonical, type Unit } from '../quantity/unit.ts';
import type { EpochMs } from '../signal/sample.ts';
import { isName } from '../site/name.ts';
import type { PayloadWritten } from '../site/signal-schema.ts';
import type { Sensor } from './sensor.ts';

export interface Binding {
  /** Index of the signal in the plan; null for a wildcard topic. */
  readonly signal: number | null;
  /** `line/station/signal`; of a wildcard the part before `-<instance>`. */
  readonly id: string;
  /** MQTT topic filter; empty for what people enter by hand, which no topic matches. */
  readonly filter: string;
  /** Levels of the topic, counted from 0, that name the instance; empty for an exact topic. */
  readonly levels: readonly number[];
  /** What those levels are called, in the same order. */
  readonly names: readonly string[];
  /** The instances the plan has, to their signals' indices. */
  readonly instances: ReadonlyMap<string, number>;
  readonly payload: PayloadWritten;
  /** What the sensor sends. */
  readonly unit: Unit;
  /** What turns it into what the signal measures; absent where the message holds that already. */
  readonly sensor?: Sensor;
  /** From then on its calibration is overdue; absent where nobody said for how long it holds. */
  readonly calibrationEndMs?: EpochMs;
  /** Calibration in `unit`, or the sensor's: true = slope * read + intercept. */
  readonly slope: number;
  readonly intercept: number;
  /** Canonical; beyond them a reading cannot be true. Infinite where nobody said. */
  readonly low: number;
  readonly high: number;
  /** What no such quantity can be; `low` and `high` reach no further. Absent where nothing bounds it. */
  readonly possible?: PossibleRange;
  /** Canonical, a second; null where nobody said. */
  readonly maxRatePerS: number | null;
  readonly digits: number | null;
  readonly holdMs: number;
  readonly latenessMs: number;
  /** The payload says when its value held. */
  readonly hasOwnTime: boolean;
}

/** The range of the site or the station, within what such a quantity can be at all. */
export function boundsOf(
  { unit, low, high }: Pick<Binding, 'unit' | 'low' | 'high'>,
  name: string,
): Pick<Binding, 'low' | 'high' | 'possible'> {
  const possible = possibleRange(unit, unit.code, name);
  if (possible === null) return { low, high };
  return { low: Math.max(low, possible.low), high: Math.min(high, possible.high), possible };
}

/** Between the values of two wildcard levels; no name holds it. */
const between = '--';

/** A reading as the sensor sent it, calibrated, in the canonical unit; not yet quantised. Not for raw ones. */
export const canonicalReading = (binding: Binding, read: number): number =>
  toCanonical(binding.slope * read + binding.intercept, binding.unit);

/** The same of what a raw sensor measures, both canonical. */
export const calibratedReading = (binding: Binding, sensor: Sensor, measured: number): number =>
  binding.slope === 1 && binding.intercept === 0
    ? measured
    : toCanonical(
        binding.slope * fromCanonical(measured, sensor.unit) + binding.intercept,
        sensor.unit,
      );

/**
 * The instance a topic names, given that it matches the binding's filter; null where a level is
 * no name (capitals, spaces, empty) and so can be no part of a signal's id.
 */
export function instanceOf(binding: Binding, topic: string): string | null {
  const levels = topic.split('/');
  const values = binding.levels.map((level) => levels[level] ?? '');
  return values.every(isName) ? values.join(between) : null;
}

/** True where `instance` could be made by a wildcard of so many levels. */
export function isInstance(instance: string, levels: number): boolean {
  const values = instance.split(between);
  return values.length === levels && values.every(isName);
}
