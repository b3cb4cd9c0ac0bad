/**
 * docs/limits.md: every bound of agent/limits.ts, its figure, and what happens there.
 *
 * What happens stands beside each bound in the source, as its comment; the relations are
 * the assertions below them.
 */
import { limits } from '#agent/limits.ts';
import { isNode, type Node, readSource, readText, walk } from '../tidy/source.ts';

export interface Bound {
  readonly name: string;
  /** What happens there; null where the source does not say. */
  readonly happens: string | null;
}

/** The sources of the bounds, one after the other. */
export const limitsText = (): string =>
  ['agent/limits.ts', 'agent/limits/people.ts', 'agent/limits/channels.ts']
    .map(readText)
    .join('\n');

/** The bounds of a source text, in its order, each with the doc comment right above it. */
export function boundsOf(text: string): Bound[] {
  const source = readSource('agent/limits.ts', text);
  const bounds: Bound[] = [];
  let lastEnd = 0;
  walk(source.program, (node, parent) => {
    if (node.type !== 'Property' || parent?.type !== 'ObjectExpression') return;
    const comment = source.comments.findLast(
      (each) => each.end <= node.start && each.start >= lastEnd && each.value.startsWith('*'),
    );
    const words = comment?.value
      .split('\n')
      .map((line) => line.replace(/^\s*\*+\s?/, '').trim())
      .join(' ')
      .trim();
    bounds.push({ name: String((node.key as Node).name), happens: words || null });
    lastEnd = node.end;
  });
  return bounds;
}

/** The sentences of the assertions. */
export function relationsOf(text: string): string[] {
  const relations: string[] = [];
  walk(readSource('agent/limits.ts', text).program, (node) => {
    if (node.type !== 'CallExpression' || (node.callee as Node).name !== 'assert') return;
    const words = (node.arguments as readonly unknown[])[1];
    if (isNode(words)) relations.push(String(words.value));
  });
  return relations;
}

const grouped = (value: number): string => value.toLocaleString('en-US');

/** The figure with the unit its name ends in. */
export function figure(name: string, value: number): string {
  if (/Bytes(Max|Min)?$/.test(name)) {
    if (value % 1_048_576 === 0) return `${value / 1_048_576} MiB`;
    return value % 1_024 === 0 ? `${value / 1_024} KiB` : `${grouped(value)} bytes`;
  }
  if (/Minutes/.test(name)) return `${value} min`;
  if (/Share/.test(name)) return `${value * 100} %`;
  if (/S$/.test(name)) return `${grouped(value)} s`;
  if (!/Ms(Max|Min|Default)?$/.test(name)) return grouped(value);
  if (value % 3_600_000 === 0) return `${value / 3_600_000} h`;
  if (value % 60_000 === 0) return `${value / 60_000} min`;
  return value % 1_000 === 0 ? `${value / 1_000} s` : `${value} ms`;
}

export function limitsPage(): string {
  const text = limitsText();
  const rows = boundsOf(text).map(({ name, happens }) => {
    const value = limits[name as keyof typeof limits];
    const cell = (happens ?? '').replaceAll('|', '\\|').replaceAll('<', '&lt;');
    return `| \`${name}\` | ${figure(name, value)} | ${cell} |`;
  });
  const relations = relationsOf(text).map((words) => `- ${words}`);
  return `# Limits

Every bound in the agent, and what happens there. Made from \`agent/limits.ts\` by
\`npm run docs\`; edit it there.

| bound | figure | what it is and what happens there |
|---|---|---|
${rows.join('\n')}

What holds between them, checked at every start:

${relations.join('\n')}
`;
}
