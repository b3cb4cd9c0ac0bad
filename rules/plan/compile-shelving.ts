/** How long an alarm may be shelved at most, by its priority: the site's word, else the usual. */
import { priorities } from '../alarm/priority.ts';
import { shelfMost } from '../alarm/shelf.ts';
import { parseDuration } from '../quantity/duration.ts';
import type { ShelvingWritten } from '../site/suppress-schema.ts';
import type { Report } from './draft.ts';
import type { ShelfMost } from './plan.ts';
import { sentence } from './sentence.ts';

/** A shelf is for a time: a week of a low alarm is a rule that is wrong. */
const longestMs = 7 * 86_400_000;
const shortestMs = 60_000;

export function compileShelving(written: ShelvingWritten | undefined, report: Report): ShelfMost {
  const most = { ...shelfMost };
  for (const priority of priorities) {
    const text = written?.[priority];
    if (text === undefined) continue;
    const read = parseDuration(text);
    const path = ['shelving', priority];
    if (!read.ok) report({ path, problem: read.problem, fix: sentence(read.fix) });
    else if (read.value < shortestMs || read.value > longestMs)
      report({
        path,
        problem: `${text} is no length of a shelf`,
        fix: 'Write 1 min to 7 d. To silence a rule for good, switch it off with off and reason.',
      });
    else most[priority] = read.value;
  }
  return most;
}
