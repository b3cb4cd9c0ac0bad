/** A line whose settings stand where its stations belong: one level too few, told once. */
import type { SiteProblem } from './problem.ts';

/** Settings of a station; a station may be called so, but not with a plain word below it. */
const stationSettings = ['kind', 'signals', 'derived', 'marks', 'rules', 'material'];

/** The problems with those of such a line made one. */
export function sayMissingLevels(problems: readonly SiteProblem[]): SiteProblem[] {
  const lines = problems.flatMap(({ path }) =>
    path.length === 3 && path[0] === 'lines' && path[2] === 'kind' ? [String(path[1])] : [],
  );
  const isOfSuch = ({ path }: SiteProblem): boolean =>
    path[0] === 'lines' &&
    lines.includes(String(path[1])) &&
    stationSettings.includes(String(path[2]));
  return [
    ...problems.filter((problem) => !isOfSuch(problem)),
    ...[...new Set(lines)].map((line) => ({
      path: ['lines', line, 'kind'],
      problem: '"kind" stands where the name of a station belongs',
      fix: 'Write the name of the station between the line and its settings, as oven-1:, and indent the rest below it.',
      atKey: true,
    })),
  ];
}
