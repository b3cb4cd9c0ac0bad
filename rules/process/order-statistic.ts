/**
 * The k-th smallest of some numbers without sorting them all: Hoare's quickselect, median of three.
 *
 * Source: C. A. R. Hoare, Algorithm 65: find, Comm. ACM 4 (1961) 321-322.
 */
import type { Subject } from './subject.ts';

/**
 * Rearranges `numbers` from `first` to `last` (inclusive) so that the one at `k` is where a sort
 * would put it, none before it larger, none after it smaller; returns it. No NaN among them.
 */
export function orderStatistic(
  numbers: Float64Array,
  first: number,
  last: number,
  k: number,
): number {
  let low = first;
  let high = last;
  while (low < high) {
    const pivot = middleOf(numbers[low]!, numbers[(low + high) >> 1]!, numbers[high]!);
    let i = low;
    let j = high;
    while (i <= j) {
      while (numbers[i]! < pivot) i += 1;
      while (numbers[j]! > pivot) j -= 1;
      if (i > j) break;
      const swapped = numbers[i]!;
      numbers[i] = numbers[j]!;
      numbers[j] = swapped;
      i += 1;
      j -= 1;
    }
    // Between j and i everything equals the pivot.
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return numbers[k]!;
}

const middleOf = (a: number, b: number, c: number): number =>
  Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));

export const subject: Subject = {
  title: 'The k-th smallest',
  about: 'Medians and ranks without sorting everything.',
  symbols: { k: 'place in the sorted order, from 0' },
  source: 'C. A. R. Hoare, Algorithm 65: find, Comm. ACM 4 (1961) 321-322.',
  uncertainty: 'Exact.',
  functions: {
    orderStatistic: {
      formula: 'quickselect, median of three',
      range: 'Numbers without NaN, k within them.',
    },
  },
};
