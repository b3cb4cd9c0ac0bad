/** What `replay` says last of rows that gave no usable reading. */
import { counted } from '#rules/quantity/counted.ts';
import type { BadRowsSeen } from '../replay/bad-rows.ts';

/** Lines for people; none where every row was usable. */
export function badRowLines(bad: BadRowsSeen | undefined): string[] {
  if (bad === undefined || bad.count === 0) return [];
  const more = bad.count - bad.first.length;
  return [
    `${counted(bad.count, 'row')} gave no usable reading:`,
    ...bad.first.map(({ line, problem }) => `  line ${line}: ${problem}`.replace(/\p{C}/gu, '·')),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ];
}
