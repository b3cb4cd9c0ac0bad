/** Runs in a row that were dried as they should be stand together, so that the others are seen. */
import type { RunView } from '../../agent/web/contract.ts';
import { isGood } from './corridor.ts';

export type Runs = readonly [RunView, ...RunView[]];

/** Fewer stand each on its own. */
const foldedMin = 3;

/** In the order they come; a group of one station, or one run alone. */
export function foldGood(runs: readonly RunView[]): Runs[] {
  const groups: [RunView, ...RunView[]][] = [];
  for (const run of runs) {
    const last = groups.at(-1);
    const goesOn =
      last !== undefined &&
      isGood(run) &&
      isGood(last[0]) &&
      run.line === last[0].line &&
      run.station === last[0].station;
    if (goesOn) last.push(run);
    else groups.push([run]);
  }
  return groups.flatMap((group): Runs[] =>
    group.length >= foldedMin ? [group] : group.map((run): Runs => [run]),
  );
}
