/**
 * The project's own files as the tidy rules see them: text, and for TypeScript the syntax tree.
 *
 * Files are what git tracks or would track; ignored ones do not exist here.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Comment, parseSync } from 'oxc-parser';

export const top = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** A node of the tree: `type`, its place in the text, and whatever its kind holds. */
export interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

export interface SourceFile {
  /** From the top of the project, with forward slashes. */
  readonly path: string;
  readonly text: string;
  readonly program: Node;
  readonly comments: readonly Comment[];
  readonly imports: readonly ImportedModule[];
}

export interface ImportedModule {
  readonly specifier: string;
  readonly line: number;
  /** Nothing of it is left at run time. */
  readonly typeOnly: boolean;
}

/** A broken rule: where, what, and what to do instead. */
export interface Problem {
  readonly place: string;
  readonly problem: string;
  readonly fix: string;
}

export const say = (found: Problem): string => `${found.place}: ${found.problem} ${found.fix}`;

export const lineAt = (text: string, offset: number): number =>
  text.slice(0, offset).split('\n').length;

export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** Calls `visit` on every node, parents first. */
export function walk(node: Node, visit: (node: Node, parent: Node | null) => void): void {
  const below = (value: unknown, parent: Node): void => {
    if (Array.isArray(value)) for (const item of value) below(item, parent);
    else if (isNode(value)) {
      visit(value, parent);
      for (const field of Object.values(value)) below(field, value);
    }
  };
  visit(node, null);
  for (const field of Object.values(node)) below(field, node);
}

/** Reads one file's text into what the rules look at. Throws where it does not parse. */
export function readSource(path: string, text: string): SourceFile {
  const parsed = parseSync(path, text);
  if (parsed.errors.length > 0) {
    throw new Error(`${path} does not parse: ${parsed.errors[0]!.message}`);
  }
  const program = parsed.program as unknown as Node; // the parser's own node types are a closed union
  return { path, text, program, comments: parsed.comments, imports: importsOf(text, parsed) };
}

function importsOf(text: string, parsed: ReturnType<typeof parseSync>): ImportedModule[] {
  const { staticImports, staticExports, dynamicImports } = parsed.module;
  const found: ImportedModule[] = [];
  for (const item of staticImports) {
    found.push({
      specifier: item.moduleRequest.value,
      line: lineAt(text, item.start),
      typeOnly: item.entries.length > 0 && item.entries.every((entry) => entry.isType),
    });
  }
  for (const item of staticExports) {
    const from = item.entries.find((entry) => entry.moduleRequest !== null);
    if (!from) continue;
    const typeOnly = item.entries.every((entry) => entry.isType);
    found.push({ specifier: from.moduleRequest!.value, line: lineAt(text, item.start), typeOnly });
  }
  for (const item of dynamicImports) {
    // Anything but a plain string is kept as written, and no fence lets it through.
    const written = text.slice(item.moduleRequest.start, item.moduleRequest.end);
    const specifier = /^(['"`])[^$]*\1$/.test(written) ? written.slice(1, -1) : written;
    found.push({ specifier, line: lineAt(text, item.start), typeOnly: false });
  }
  return found;
}

/** Every file of the project, from the top. */
export const projectFiles: readonly string[] = execFileSync(
  'git',
  ['ls-files', '--cached', '--others', '--exclude-standard', '-z'],
  { cwd: top, encoding: 'utf8', maxBuffer: 64 * 1_024 * 1_024 },
)
  .split('\0')
  .filter((path) => path !== '' && statSync(join(top, path), { throwIfNoEntry: false })?.isFile());

export const readText = (path: string): string => readFileSync(join(top, path), 'utf8');

/** Every TypeScript and JavaScript file of the project. */
export const sources: readonly SourceFile[] = projectFiles
  .filter((path) => /\.(ts|tsx|js|mjs)$/.test(path) && !path.startsWith('tests/vectors/'))
  .map((path) => readSource(path, readText(path)));
