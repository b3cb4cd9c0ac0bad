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
  'primer-pre-bake',
  'dip-tank',
  'spray-booth',
  'drying-oven',
  'residue',
  'coated-store',
  'press',
];

/** A station of the site's own kind is placed by what people call it. */
const called: readonly (readonly [start: string, kind: string])[] = [
  ['store', 'adhesive-store'],
  ['mix', 'drum-mixer'],
  ['prep', 'preparation'],
  ['air', 'compressed-air'],
  ['pre-bake', 'primer-pre-bake'],
  ['tank', 'dip-tank'],
  ['booth', 'spray-booth'],
  ['spray', 'spray-booth'],
  ['oven', 'drying-oven'],
  ['residue', 'residue'],
  ['rack', 'coated-store'],
  ['press', 'press'],
];

function place({ kind, station }: StationPlace): number {
  const known = kind === 'custom' ? called.find(([start]) => station.startsWith(start))?.[1] : kind;
  const at = order.findIndex((each) => known?.startsWith(each) === true);
  return at < 0 ? order.length : at;
}

export const journey = (stations: readonly StationPlace[]): StationPlace[] =>
  [...stations].sort((a, b) => place(a) - place(b) || (a.station < b.station ? -1 : 1));

export const stationId = (at: { line: string; station: string }): string =>
  `${at.line}/${at.station}`;
