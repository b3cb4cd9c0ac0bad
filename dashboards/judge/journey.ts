/**
 * The part's journey: store, mixer, preparation, tank or booth, ovens, rack, press, in that order, whatever
 * order the site file has. What the journey does not know stands at its end.
 */
import type { CoverageView } from '../../agent/web/contract.ts';

export type StationPlace = CoverageView['stations'][number];

/** Station kinds by where the part, or what goes on it, comes along. */
const order: readonly string[] = [
  'adhesive-store',
  'drum-mixer',
  'preparation',
  'compressed-air',
  'pre-bake-oven',
  'dip-tank',
  'spray-booth',
  'drying-oven',
  'residue',
  'coated-part-store',
  'press',
];

const place = (kind: string): number => {
  const at = order.findIndex((known) => kind === known || kind.startsWith(known));
  return at < 0 ? order.length : at;
};

export const journey = (stations: readonly StationPlace[]): StationPlace[] =>
  [...stations].sort((a, b) => place(a.kind) - place(b.kind) || (a.station < b.station ? -1 : 1));

export const stationId = (at: { line: string; station: string }): string =>
  `${at.line}/${at.station}`;
