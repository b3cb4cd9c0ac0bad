/** The span a kind looks back over, as the site writes it. */
import type { DerivedSettingsReader } from './settings-reader.ts';
import type { Span } from './span-mean.ts';

const leastMs = 1_000;

export function compileSpan(read: DerivedSettingsReader, slices: number): Span {
  const spanMs = read.duration('span', leastMs);
  if (spanMs < leastMs)
    read.report({
      path: ['span'],
      problem: 'a derived signal is worked out once a second at most',
      fix: 'make it 1 s or longer',
    });
  return { spanMs: Math.max(spanMs, leastMs), slices };
}
