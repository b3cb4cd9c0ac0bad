/**
 * What stands behind a raw signal, and what it makes of a reading: a temperature of a voltage or a
 * resistance, a quantity of a loop current.
 *
 * Plain data and a function; every reading gives a value or the quality that says why there is none.
 */
import { loopBand, loopValue } from '../process/current-loop.ts';
import { type Pt100Class, pt100C, pt100MinOhm, pt100ToleranceK } from '../process/pt100.ts';
import {
  coldJunctionMaxC,
  coldJunctionMinC,
  type ThermocoupleClass,
  thermocoupleFromTerminalsC,
  thermocoupleToleranceK,
} from '../process/thermocouple.ts';
import type { ThermocoupleType } from '../process/thermocouple-coefficients.ts';
import type { Unit } from '../quantity/unit.ts';
import { isBad, type QualityCode, quality } from '../signal/quality.ts';

export type ColdJunction =
  | { readonly kind: 'fixed'; readonly temperatureC: number }
  | {
      readonly kind: 'signal';
      /** `line/station/signal`; of a wildcard the part before `-<instance>`. */
      readonly id: string;
      /** It is a wildcard too, and gives the temperature of the same instance. */
      readonly ofInstance: boolean;
      readonly staleAfterMs: number;
    };

interface Measures {
  /** Of what it measures: calibration, range and rate are in this. */
  readonly unit: Unit;
}

export interface Thermocouple extends Measures {
  readonly kind: 'thermocouple';
  readonly type: ThermocoupleType;
  readonly coldJunction: ColdJunction;
  readonly grade: ThermocoupleClass | null;
}
export interface Pt100 extends Measures {
  readonly kind: 'pt100';
  /** Of both leads together; taken off. */
  readonly leadOhm: number;
  readonly grade: Pt100Class | null;
}
export interface CurrentLoop extends Measures {
  readonly kind: 'current-loop';
  /** Canonical, at 4 and at 20 mA. */
  readonly atZero: number;
  readonly atFull: number;
}
export type Sensor = Thermocouple | Pt100 | CurrentLoop;

export interface Sensed {
  /** Canonical; 0 where the code is bad. */
  readonly value: number;
  readonly code: QualityCode;
}

/** The temperature of a cold junction as it is known now. */
export interface Known {
  readonly value: number;
  readonly code: QualityCode;
}

const refused = (code: QualityCode): Sensed => ({ value: 0, code });

/**
 * `sent`: mV, Ohm or mA. `coldJunction` is looked at by thermocouples alone. A loop current that
 * says fault is given as not yet settled: only whoever knows the ones before can tell more.
 */
export function sense(sensor: Sensor, sent: number, coldJunction: Known | null): Sensed {
  switch (sensor.kind) {
    case 'thermocouple':
      return senseThermocouple(sensor, sent, coldJunction);
    case 'pt100': {
      const ohm = sent - sensor.leadOhm;
      const value = pt100C(ohm);
      if (value !== null) return { value, code: quality.good };
      return refused(ohm < pt100MinOhm ? quality.sensorShort : quality.sensorBreak);
    }
    case 'current-loop': {
      const value = loopValue(sent, sensor.atZero, sensor.atFull);
      if (value === null) return refused(quality.loopFaultUnsettled);
      return { value, code: loopBand(sent) === 'measured' ? quality.good : quality.loopSaturated };
    }
  }
}

function senseThermocouple(sensor: Thermocouple, mv: number, known: Known | null): Sensed {
  if (known === null || isBad(known.code)) return refused(quality.coldJunctionMissing);
  if (!(known.value >= coldJunctionMinC && known.value <= coldJunctionMaxC))
    return refused(quality.coldJunctionMissing);
  const value = thermocoupleFromTerminalsC(sensor.type, mv, known.value);
  if (value === null) return refused(quality.sensorBreak);
  if (known.code === quality.good || known.code === quality.coldJunctionStale)
    return { value, code: known.code };
  return { value, code: quality.uncertainInput };
}

/** A settled fault: by the current that says so. */
export const loopFault = (currentMa: number): QualityCode =>
  loopBand(currentMa) === 'fault-high' ? quality.loopFaultHigh : quality.loopFaultLow;

/** ± what the sensor's class allows at a value in canonical units; null where it has none. */
export function toleranceOf(sensor: Sensor, value: number): number | null {
  if (sensor.kind === 'current-loop' || sensor.grade === null) return null;
  return sensor.kind === 'pt100'
    ? pt100ToleranceK(sensor.grade, value)
    : thermocoupleToleranceK(sensor.type, sensor.grade, value);
}
