/**
 * The 4 to 20 mA current loop: its value, and what NE 43 says of currents beyond both ends.
 *
 * A current that says fault is taken for one only after it has lasted; what the sensor measures in
 * the meantime nobody knows. Never NaN: what is no current is null.
 */
import type { Subject } from './subject.ts';

/** Nominal ends of the signal, mA. */
const zeroMa = 4;
const fullMa = 20;
/** NE 43: what is measured reaches from here to there, mA. */
const measuredMinMa = 3.8;
const measuredMaxMa = 20.5;
/** NE 43: at or beyond these, mA, the transmitter says that it failed. */
const faultLowMa = 3.6;
const faultHighMa = 21;
/** NE 43: a fault counts once it has lasted so long, ms. One source. */
export const loopFaultMs = 4_000;

export type LoopBand = 'fault-low' | 'saturated' | 'measured' | 'fault-high';

/**
 * What a current in mA means (NE 43): fault at 3.6 or less and at 21 or more, measured from 3.8 to
 * 20.5, saturated between. null where it is no number.
 */
export function loopBand(currentMa: number): LoopBand | null {
  if (Number.isNaN(currentMa)) return null;
  if (currentMa <= faultLowMa) return 'fault-low';
  if (currentMa >= faultHighMa) return 'fault-high';
  return currentMa >= measuredMinMa && currentMa <= measuredMaxMa ? 'measured' : 'saturated';
}

/**
 * Value of a current above 3.6 and below 21 mA, on the straight line from `atZero` at 4 mA to
 * `atFull` at 20 mA, in their unit; it goes on beyond both. null for a current that says fault.
 */
export function loopValue(currentMa: number, atZero: number, atFull: number): number | null {
  const band = loopBand(currentMa);
  if (band !== 'measured' && band !== 'saturated') return null;
  return atZero + ((currentMa - zeroMa) / (fullMa - zeroMa)) * (atFull - atZero);
}

export const subject: Subject = {
  title: 'Current loop of 4 to 20 mA',
  about:
    'What a transmitter measures, from its current, and whether the current says that something is broken. The line is straight: a transmitter that takes a root or a curve itself is read the same way.',
  symbols: {
    I: 'current, mA',
    y: 'value, in its own unit',
    y_4: 'value at 4 mA',
    y_20: 'value at 20 mA',
  },
  source:
    'NAMUR NE 43, as quoted by suppliers of transmitters; it was revised in 2021, and the revision was not read.',
  uncertainty: 'None of its own; that of transmitter and resistor comes on top.',
  functions: {
    loopBand: {
      formula: 'fault at I <= 3.6 or I >= 21; measured for 3.8 <= I <= 20.5; saturated between',
      range:
        'Every number; nothing for what is none. A fault counts once it has lasted 4 s (one source).',
    },
    loopValue: {
      formula: 'y = y_4 + (I - 4)/16 (y_20 - y_4)',
      range: 'Above 3.6 and below 21 mA; nothing outside.',
      source: 'follows from the formula',
    },
  },
};
