/**
 * Shell blocks of a documentation page, and what is to be done with each.
 *
 * - ```sh            runs; a ```text block right after it shows lines its output holds, in order,
 *                    where `…` stands for anything.
 * - ```sh stays      starts something that stays until the end of the page, once it says `ready`.
 * - ```sh fails      runs and is expected to end with an exit code other than 0.
 * - ```sh by-hand    is not run; the line above says why: `<!-- by hand: reason -->`.
 */
export type Treatment = 'runs' | 'stays' | 'fails' | 'by-hand';

export interface Block {
  /** Where its first command stands. */
  readonly line: number;
  readonly treatment: Treatment;
  readonly script: string;
  /** Lines of the ```text block that follows at once; empty where there is none. */
  readonly shown: readonly string[];
  /** Why it is not run; null unless the line above says so. */
  readonly reason: string | null;
}

const treatments: Readonly<Record<string, Treatment>> = {
  sh: 'runs',
  'sh stays': 'stays',
  'sh fails': 'fails',
  'sh by-hand': 'by-hand',
};

interface Fence {
  readonly info: string;
  readonly first: number;
  readonly last: number;
  readonly lines: readonly string[];
}

function fencesOf(lines: readonly string[]): Fence[] {
  const fences: Fence[] = [];
  let open: { info: string; first: number } | null = null;
  lines.forEach((line, index) => {
    const mark = /^\s*```(.*)$/.exec(line);
    if (!mark) return;
    if (open === null) {
      open = { info: mark[1]!.trim(), first: index };
      return;
    }
    fences.push({ ...open, last: index, lines: lines.slice(open.first + 1, index) });
    open = null;
  });
  return fences;
}

/** Throws on a shell block whose words after `sh` nobody knows. */
export function blocksOf(markdown: string): Block[] {
  const lines = markdown.split('\n');
  const fences = fencesOf(lines);
  return fences.flatMap((fence, index) => {
    if (!/^(sh|bash|shell|console)\b/.test(fence.info)) return [];
    const treatment = treatments[fence.info];
    if (treatment === undefined) {
      throw new Error(
        `line ${fence.first + 1}: write one of ${Object.keys(treatments).join(', ')}`,
      );
    }
    const next = fences[index + 1];
    const between = next
      ? lines
          .slice(fence.last + 1, next.first)
          .join('')
          .trim()
      : 'no more';
    const above = /^<!-- by hand: (.+) -->$/.exec(lines[fence.first - 1]?.trim() ?? '');
    return [
      {
        line: fence.first + 2,
        treatment,
        script: fence.lines.join('\n'),
        shown: next?.info === 'text' && between === '' ? next.lines : [],
        reason: above?.[1] ?? null,
      },
    ];
  });
}

/** The first shown line that the output does not hold in its place; null where all are there. */
export function missingLine(shown: readonly string[], output: string): string | null {
  const lines = output.split('\n').map((line) => line.trimEnd());
  let from = 0;
  for (const line of shown) {
    const parts = line.trimEnd().split('…');
    const escaped = parts.map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
    const pattern = new RegExp(`^${escaped.join('.*')}$`);
    const found = lines.findIndex((each, index) => index >= from && pattern.test(each));
    if (found < 0) return line;
    from = found + 1;
  }
  return null;
}
