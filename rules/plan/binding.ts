/**
 * How messages become samples of a signal: what intake needs to know, and nothing it must look up.
 *
 * canonical = unit(slope * read + intercept). A wildcard topic has one binding and as many
 * signals as values its levels took.
 */
import { toCanonical, type Unit } from '../quantity/unit.ts';
import { isName } from '../site/name.ts';
import type { PayloadWritten } from '../site/signal-schema.ts';

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
  /** Calibration in `unit`: true = slope * read + intercept. */
  readonly slope: number;
  readonly intercept: number;
  /** Canonical; beyond them a reading cannot be true. Infinite where nobody said. */
  readonly low: number;
  readonly high: number;
  /** Canonical, a second; null where nobody said. */
  readonly maxRatePerS: number | null;
  readonly digits: number | null;
  readonly holdMs: number;
  readonly latenessMs: number;
  /** The payload says when its value held. */
  readonly hasOwnTime: boolean;
}

/** Between the values of two wildcard levels; no name holds it. */
const between = '--';

/** A reading as the sensor sent it, calibrated, in the canonical unit; not yet quantised. */
export const canonicalReading = (binding: Binding, read: number): number =>
  toCanonical(binding.slope * read + binding.intercept, binding.unit);

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
