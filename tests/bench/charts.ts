/** The charts' budgets, from tests/bench/series.ts. */
import type { Figure } from './report.ts';
import { measureSeries } from './series.ts';

const budgetMs = new Map([
  [1, 10],
  [41, 30],
  [90, 30],
]);

export async function charts(): Promise<Figure[]> {
  const measured = await measureSeries();
  return measured.flatMap(({ days, floorMs, figureMs, askedMs, points }) => {
    const budget = budgetMs.get(days);
    if (budget === undefined) return [];
    return {
      name: `chart of ${days} day${days === 1 ? '' : 's'} of one 1 Hz signal, ${points} points`,
      budget: `under ${budget} ms`,
      floor: `${floorMs.toFixed(1)} ms, its rows and bytes fetched and not looked at`,
      figure: `${figureMs.toFixed(1)} ms`,
      ratio: floorMs / figureMs,
      met: figureMs < budget,
      note: `${askedMs.toFixed(1)} ms asked of the thread and back`,
    };
  });
}
