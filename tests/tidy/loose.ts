/**
 * What may not be left loose: `any`, silenced checks, marks of unfinished work, tests that are
 * skipped without a word or that keep the others from running.
 */
import { lineAt, type Node, type Problem, type SourceFile, walk } from './source.ts';

const at = (source: SourceFile, offset: number): string =>
  `${source.path}:${lineAt(source.text, offset)}`;

export function anyTypes(source: SourceFile): Problem[] {
  const found: Problem[] = [];
  walk(source.program, (node) => {
    if (node.type !== 'TSAnyKeyword') return;
    found.push({
      place: at(source, node.start),
      problem: 'uses the type any.',
      fix: 'Say what it is, or unknown and check it.',
    });
  });
  return found;
}

/** Spelled in two parts, so that this file does not trip over itself in a plain search. */
const unfinished = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X'].join('|')})\\b`);

export function unfinishedWork(source: SourceFile): Problem[] {
  return source.comments
    .filter((comment) => unfinished.test(comment.value))
    .map((comment) => ({
      place: at(source, comment.start),
      problem: 'marks work as unfinished.',
      fix: 'Finish it, or file it as an issue and say here what holds today.',
    }));
}

/** `@ts-ignore` and `@ts-nocheck` never; the others with a reason of three words or more. */
export function silencedChecks(source: SourceFile): Problem[] {
  return source.comments.flatMap((comment) => {
    const never = /^\s*@ts-(ignore|nocheck)\b/.test(comment.value);
    const mark = /^\s*(?:@ts-expect-error|biome-ignore(?:-all)?\s+\S+?:)(.*)/.exec(comment.value);
    const hasReason = mark !== null && mark[1]!.trim().split(/\s+/).length >= 3;
    if (!never && (mark === null || hasReason)) return [];
    return [
      {
        place: at(source, comment.start),
        problem: 'silences a check.',
        fix: never
          ? 'Mend the type, or use @ts-expect-error with a reason in words.'
          : 'Add the reason in words, three at least.',
      },
    ];
  });
}

/** The text of `test.skip` and the like; null for any other node. */
function testModifier(node: Node): string | null {
  if (node.type !== 'MemberExpression') return null;
  const object = node.object as Node;
  const property = node.property as Node;
  const root = object.type === 'CallExpression' ? (object.callee as Node) : object;
  const rootName = root.name ?? (root.object as Node | undefined)?.name;
  if (!['test', 'it', 'describe', 'suite', 'bench'].includes(String(rootName))) return null;
  return typeof property.name === 'string' ? property.name : null;
}

/** `.only` never; `.skip`, `.skipIf`, `.runIf`, `.todo`, `.fails` with a comment on or above the line. */
export function loosenedTests(source: SourceFile): Problem[] {
  const found: Problem[] = [];
  walk(source.program, (node) => {
    const modifier = testModifier(node);
    if (modifier === 'only') {
      found.push({
        place: at(source, node.start),
        problem: '.only keeps every other test from running.',
        fix: 'Take it away.',
      });
      return;
    }
    if (modifier === null || !['skip', 'skipIf', 'runIf', 'todo', 'fails'].includes(modifier))
      return;
    const line = lineAt(source.text, node.start);
    const explained = source.comments.some((comment) => {
      const distance = line - lineAt(source.text, comment.end);
      return distance === 0 || distance === 1;
    });
    if (explained) return;
    found.push({
      place: at(source, node.start),
      problem: `.${modifier} without a reason.`,
      fix: 'Say why in a comment on the line above, and when it runs again.',
    });
  });
  return found;
}
