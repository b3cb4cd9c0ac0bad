/** How somebody of the demo line says that something happened, or what an instrument shows. */
import type { Draft } from './message.ts';
import type { Moment } from './moment.ts';
import type { Plant } from './plant.ts';

/** What is said at this moment; null where nobody says anything. */
export type Says = (plant: Plant, now: Moment) => string | null;

const said = (topic: string, says: Says): Draft => ({
  topic,
  everyS: 1,
  qos: 1,
  payload: (plant, now) => (now.lineS % 10 === 0 ? says(plant, now) : null),
});

export const mark = (station: string, name: string, says: Says): Draft =>
  said(`${station}/said/${name}`, says);

export const reading = (station: string, name: string, says: Says): Draft =>
  said(`${station}/read/${name}`, says);

/** Seconds into a cycle, 0 to the period, before second 0 of the line too. */
export const phase = (lineS: number, periodS: number): number =>
  ((lineS % periodS) + periodS) % periodS;

/** An item and when it happened, for what is written down later. */
export const itemAt = (item: string, atMs: number): string =>
  JSON.stringify({ item, t: Math.round(atMs) });

/** The first of them that speaks. */
export const oneOf =
  (...all: readonly Says[]): Says =>
  (plant, now) => {
    for (const says of all) {
      const text = says(plant, now);
      if (text !== null) return text;
    }
    return null;
  };
