/** Marks that start a derived signal anew, and marks that it counts. */
import { type DerivedKind, isKeeping } from '../derive/derived-kind.ts';
import { didYouMean } from '../site/nearest.ts';
import type { Path, Report, StationDraft } from './draft.ts';
import type { Wanted } from './draft-derived.ts';

/** Ids of the marks that start it anew; a mark that is not there starts nothing. */
export function startingMarks(
  station: StationDraft,
  kind: DerivedKind,
  { startsOn, path }: Pick<Wanted, 'startsOn' | 'path'>,
  report: Report,
): readonly string[] {
  if (startsOn.length > 0 && !(isKeeping(kind) && kind.start !== undefined))
    report({
      path: [...path, 'starts_on'],
      problem: `${kind.name} adds up nothing that a mark could start anew`,
      fix: 'Take starts_on out.',
      atKey: true,
    });
  return marksNamed(station, startsOn, [...path, 'starts_on'], report);
}

/** Ids of the marks it counts. */
export function countedMarks(
  station: StationDraft,
  kind: DerivedKind,
  { countsOn, path }: Pick<Wanted, 'countsOn' | 'path'>,
  report: Report,
): readonly string[] {
  const counts = isKeeping(kind) && kind.count !== undefined;
  if (counts !== countsOn.length > 0)
    report({
      path: [...path, 'counts_on'],
      problem: counts ? `${kind.name} counts no mark` : `${kind.name} counts no marks`,
      fix: counts ? 'Name under counts_on the marks it counts.' : 'Take counts_on out.',
      atKey: true,
    });
  return marksNamed(station, countsOn, [...path, 'counts_on'], report);
}

function marksNamed(
  station: StationDraft,
  names: readonly string[],
  path: Path,
  report: Report,
): readonly string[] {
  return names.flatMap((name, i) => {
    const mark = station.marks.get(name);
    if (mark !== undefined) return [mark.id];
    report({
      path: [...path, i],
      problem: `this station has no mark "${name}"`,
      fix: didYouMean(name, [...station.marks.keys()]),
    });
    return [];
  });
}
