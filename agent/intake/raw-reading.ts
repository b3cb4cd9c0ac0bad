/**
 * A raw reading to what it measures: the voltage of a thermocouple with what is known of its cold
 * junction, the resistance of a Pt100, the current of a loop with how long it has said fault.
 */
import { calibratedReading } from '#rules/plan/binding.ts';
import {
  type Known,
  loopFault,
  type Sensor,
  sense,
  type Thermocouple,
} from '#rules/plan/sensor.ts';
import { loopFaultMs } from '#rules/process/current-loop.ts';
import { sameDimension, toCanonical, unitOf } from '#rules/quantity/unit.ts';
import { isBad, type QualityCode, quality } from '#rules/signal/quality.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { Target } from './arrival.ts';
import type { IntakeCause, Tally } from './cause.ts';
import type { SignalMemory } from './signal-memory.ts';

const causes: Readonly<Record<QualityCode, IntakeCause>> = {
  [quality.wrongUnit]: 'wrong-unit',
  [quality.loopSaturated]: 'loop-saturated',
  [quality.loopFaultUnsettled]: 'loop-fault',
  [quality.loopFaultLow]: 'loop-fault',
  [quality.loopFaultHigh]: 'loop-fault',
  [quality.sensorBreak]: 'sensor-break',
  [quality.sensorShort]: 'sensor-short',
  [quality.coldJunctionMissing]: 'cold-junction-missing',
  [quality.coldJunctionStale]: 'cold-junction-stale',
  [quality.uncertainInput]: 'cold-junction-uncertain',
};

export class RawReading {
  /** Of the reading taken last. */
  code: QualityCode = quality.good;
  readonly #tally: Tally;

  constructor(tally: Tally) {
    this.#tally = tally;
  }

  /**
   * Canonical and calibrated; 0 where `code` is bad. `at`: when it held. A recorded value in the unit
   * of what the sensor measures was worked out before, and is taken as it stands.
   */
  canonical(
    read: number,
    unit: string | null,
    at: EpochMs,
    target: Target,
    sensor: Sensor,
    recorded: boolean,
  ): number {
    const { binding } = target;
    const from = unit === null ? binding.unit : unitOf(unit);
    if (recorded && from !== null && sameDimension(from, sensor.unit) && unit !== null) {
      this.code = quality.good;
      return toCanonical(read, from);
    }
    if (from === null || !sameDimension(from, binding.unit))
      return this.#give(quality.wrongUnit, 0);
    const sent = toCanonical(read, from);
    const known = sensor.kind === 'thermocouple' ? knownOf(sensor, target.beside, at) : null;
    const { value, code } = sense(sensor, sent, known);
    if (code !== quality.loopFaultUnsettled)
      return this.#give(code, isBad(code) ? 0 : calibratedReading(binding, sensor, value));
    // NaN is never long enough.
    const settled = at - target.memory.faultSince >= loopFaultMs;
    return this.#give(settled ? loopFault(sent) : code, 0);
  }

  #give(code: QualityCode, value: number): number {
    this.code = code;
    if (code !== quality.good) this.#tally.count(causes[code]!);
    return value;
  }
}

/** The cold junction as it was last heard of; null before it ever was. */
function knownOf(
  { coldJunction }: Thermocouple,
  beside: SignalMemory | null,
  at: EpochMs,
): Known | null {
  if (coldJunction.kind === 'fixed')
    return { value: coldJunction.temperatureC, code: quality.good };
  if (beside === null || Number.isNaN(beside.value)) return null;
  const { value, code } = beside;
  if (code === quality.good && at - beside.at > coldJunction.staleAfterMs)
    return { value, code: quality.coldJunctionStale };
  return { value, code };
}
