/**
 * How long things may be. A file says one thing: at most 300 lines, 400 where a test lists its
 * cases. A function fits a screen: at most 60 lines of its own, those of functions written inside
 * it not counted, since a factory or a `describe` is as long as what it holds. A line: the
 * formatter holds code at 100 characters; comments, which it leaves alone, may reach 120. Long
 * texts and patterns are exempt.
 */
import { lineAt, type Node, type Problem, type SourceFile, walk } from './source.ts';

export const fileLinesMax = 300;
export const testLinesMax = 400;
export const functionLinesMax = 60;
export const lineCharactersMax = 120;

export function longFiles(source: SourceFile): Problem[] {
  const lineCount = source.text.trimEnd().split('\n').length;
  const max = source.path.endsWith('.test.ts') ? testLinesMax : fileLinesMax;
  if (lineCount <= max) return [];
  return [
    {
      place: source.path,
      problem: `has ${lineCount} lines, over ${max}.`,
      fix: 'It says two things: give each its own file.',
    },
  ];
}

const functionTypes = ['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression'];
const isFunction = (node: Node): boolean => functionTypes.includes(node.type);

/** Functions written directly inside `node`, not those inside them. */
function functionsInside(node: Node): Node[] {
  const all: Node[] = [];
  walk(node, (each) => {
    if (each !== node && isFunction(each)) all.push(each);
  });
  return all.filter(
    (each) =>
      !all.some((outer) => outer !== each && outer.start <= each.start && outer.end >= each.end),
  );
}

export function longFunctions(source: SourceFile): Problem[] {
  const lines = (node: Node): number =>
    lineAt(source.text, node.end) - lineAt(source.text, node.start) + 1;
  const found: Problem[] = [];
  walk(source.program, (node) => {
    if (!isFunction(node) || lines(node) <= functionLinesMax) return;
    // A function inside that begins and ends on one line takes that line from nobody.
    const insideCount = functionsInside(node).reduce((sum, each) => sum + lines(each) - 1, 0);
    const ownCount = lines(node) - insideCount;
    if (ownCount <= functionLinesMax) return;
    found.push({
      place: `${source.path}:${lineAt(source.text, node.start)}`,
      problem: `a function has ${ownCount} lines of its own, over ${functionLinesMax}.`,
      fix: 'Give its steps names of their own.',
    });
  });
  return found;
}

/** Holds a text or pattern too long to fit with what stands around it. */
const unbreakable = /(['"`])(?:(?!\1).){60,}\1|\/.{60,}\/|^import /;

export function longLines(source: SourceFile): Problem[] {
  return source.text.split('\n').flatMap((line, index) => {
    if (line.length <= lineCharactersMax || unbreakable.test(line)) return [];
    return [
      {
        place: `${source.path}:${index + 1}`,
        problem: `a line of ${line.length} characters, over ${lineCharactersMax}.`,
        fix: 'Break it.',
      },
    ];
  });
}
