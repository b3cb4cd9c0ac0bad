/**
 * The core judges the same on every machine and at every hour: in rules/ there is no clock,
 * no chance, no output, no timer, and nothing that asks the machine for its language.
 */
import { lineAt, type Node, type Problem, type SourceFile, walk } from './source.ts';

const globals = [
  'console',
  'process',
  'performance',
  'globalThis',
  'crypto',
  'fetch',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'Intl',
];
const members = ['Date.now', 'Math.random'];

/** `new Intl.…(…)` or `Intl.…(…)`. */
function isFormat(node: Node): boolean {
  if (node.type !== 'NewExpression' && node.type !== 'CallExpression') return false;
  const object = (node.callee as Node).object as Node | undefined;
  return object?.name === 'Intl';
}

/** Its first argument is a language written out. */
const namesItsLanguage = (node: Node): boolean =>
  typeof (node.arguments as readonly Node[])[0]?.value === 'string';

function impurityOf(node: Node, parent: Node | null): string | null {
  if (node.type === 'NewExpression' || node.type === 'CallExpression') {
    const callee = node.callee as Node;
    const withoutArguments = (node.arguments as readonly Node[]).length === 0;
    if (callee.name === 'Date' && withoutArguments) return 'reads the clock (Date).';
  }
  if (isFormat(node) && !namesItsLanguage(node)) return "asks for the machine's language (Intl).";
  if (node.type === 'MemberExpression') {
    const object = node.object as Node;
    const property = String((node.property as Node).name ?? '');
    const name = `${String(object.name)}.${property}`;
    if (members.includes(name)) return `uses ${name}.`;
    if (/^toLocale|^localeCompare$/.test(property))
      return `asks for the machine's language (${property}).`;
  }
  if (node.name === 'Intl' && parent?.type === 'MemberExpression') return null; // judged where it is made
  if (node.type !== 'Identifier' || !globals.includes(String(node.name))) return null;
  const isName =
    (parent?.type === 'MemberExpression' && parent.property === node && !parent.computed) ||
    (parent?.type === 'Property' && parent.key === node && parent.value !== node) ||
    (parent?.type === 'TSPropertySignature' && parent.key === node);
  return isName ? null : `uses ${String(node.name)}.`;
}

/** Only asked of files in rules/. */
export function impurities(source: SourceFile): Problem[] {
  if (!source.path.startsWith('rules/')) return [];
  const found: Problem[] = [];
  walk(source.program, (node, parent) => {
    const problem = impurityOf(node, parent);
    if (problem === null) return;
    found.push({
      place: `${source.path}:${lineAt(source.text, node.start)}`,
      problem,
      fix: 'The core is pure: take it as an input (a time, a value, an order by code units).',
    });
  });
  return found;
}
