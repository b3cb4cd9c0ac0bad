/** How a gateway of the demo line says a value: one message, its topic, its rhythm, its payload. */
import type { Moment } from './moment.ts';
import type { Plant } from './plant.ts';
import { reading, type Sensor } from './sensor.ts';

export interface Draft {
  /** Below the line. */
  readonly topic: string;
  readonly everyS: number;
  readonly qos: 0 | 1;
  /** The payload; null while there is nothing to say. */
  readonly payload: (plant: Plant, now: Moment, channel: number) => string | null;
}

export const thermocouple: Sensor = { noise: 0.12, digits: 1 };
export const resistance: Sensor = { noise: 0.04, digits: 2 };

export type Value = (plant: Plant, now: Moment) => number;

export const plain =
  (value: Value, sensor: Sensor): Draft['payload'] =>
  (plant, now, channel) =>
    reading(now, channel, value(plant, now), sensor);

/** `{"v": value, "t": milliseconds}`: the sensor's own clock. */
export const timed =
  (value: Value, sensor: Sensor): Draft['payload'] =>
  (plant, now, channel) =>
    `{"v":${reading(now, channel, value(plant, now), sensor)},"t":${now.atMs}}`;

/** Several values in one object, each with its sensor. */
export const together =
  (values: Readonly<Record<string, readonly [Value, Sensor]>>): Draft['payload'] =>
  (plant, now, channel) => {
    const said = Object.entries(values).map(
      ([name, [value, sensor]], i) =>
        `"${name}":${reading(now, channel * 16 + i, value(plant, now), sensor)}`,
    );
    return `{${said.join(',')}}`;
  };

export const contact: Sensor = { noise: 0, digits: 0 };
