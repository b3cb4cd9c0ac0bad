/**
 * How a sensor of the demo line sees a value: with noise, to its resolution, in its own unit.
 * Its error follows from seed, channel and second, so the same second always reads the same.
 */
import { noiseAt } from './chance.ts';
import type { Moment } from './moment.ts';

/** One standard deviation of the noise and the digits after the point, both in the unit it sends. */
export interface Sensor {
  readonly noise: number;
  readonly digits: number;
  /** It sends nothing below this. */
  readonly least?: number;
}

/** The value as sent; a channel is any number of its own. */
export function reading(now: Moment, channel: number, value: number, sensor: Sensor): string {
  const second = Math.round(now.atMs / 1_000);
  const noisy = value + sensor.noise * noiseAt(now.seed, channel, second);
  const seen = Math.max(sensor.least ?? Number.NEGATIVE_INFINITY, noisy);
  const text = seen.toFixed(sensor.digits);
  return Number(text) === 0 ? (0).toFixed(sensor.digits) : text;
}

/** t/degF = 1.8 t/degC + 32. Source: NIST SP 811, Appendix B. */
export const fahrenheit = (celsius: number): number => 1.8 * celsius + 32;

/** 1 psi = 6.894757 kPa. Source: NIST SP 811, Appendix B. */
export const psi = (bar: number): number => (bar * 100) / 6.894757;
