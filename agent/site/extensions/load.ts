/**
 * The text of a file of the site's own rules to what it exports, or why not, with its place.
 *
 * It is loaded from its text and not from the disk, so that a replay runs the code that judged
 * then. It imports nothing: what it needs is handed to it. Each text is loaded once a process.
 */
import { createHash } from 'node:crypto';
import { createRequire, registerHooks } from 'node:module';

export interface ExtensionFault {
  readonly line: number;
  readonly column: number;
  readonly problem: string;
  readonly fix: string;
}

export type LoadedExtension =
  | { readonly ok: true; readonly make: (offered: unknown) => unknown }
  | { readonly ok: false; readonly fault: ExtensionFault };

const scheme = 'forebond-extension:';
const require = createRequire(import.meta.url);
const known = new Map<string, LoadedExtension>();

/** `rules/creep.ts@0123456789abcdef`: the file, and which text of it. */
export const extensionId = (name: string, text: string): string =>
  `${name}@${createHash('sha256').update(text, 'utf8').digest('hex').slice(0, 16)}`;

export function loadExtension(name: string, text: string): LoadedExtension {
  const id = extensionId(name, text);
  const loaded = known.get(id) ?? load(name, id, text);
  known.set(id, loaded);
  return loaded;
}

function load(name: string, id: string, text: string): LoadedExtension {
  const place = importPlace(text);
  if (place !== null) return { ok: false, fault: { ...place, ...importWords } };
  const url = `${scheme}${id.slice(id.lastIndexOf('@') + 1)}/${name}`;
  const hooks = registerHooks({
    resolve: (specifier, context, next) =>
      specifier === url
        ? { url, format: 'module-typescript', shortCircuit: true }
        : next(specifier, context),
    load: (each, context, next) =>
      each === url
        ? { format: 'module-typescript', source: text, shortCircuit: true }
        : next(each, context),
  });
  try {
    const exported: unknown = require(url);
    const make = exported !== null && typeof exported === 'object' ? defaultOf(exported) : null;
    return typeof make === 'function'
      ? { ok: true, make: (offered) => make(offered) }
      : { ok: false, fault: { line: 1, column: 1, ...defaultWords } };
  } catch (error) {
    return { ok: false, fault: faultOf(error) };
  } finally {
    hooks.deregister();
  }
}

const defaultOf = (exported: object): unknown =>
  'default' in exported ? exported.default : undefined;

const importWords = {
  problem: 'it imports something',
  fix: 'Take the import out, or make it import type: what a rule needs is handed to it, as forebond.',
};
const defaultWords = {
  problem: 'it exports no function by default',
  fix: 'Write export default (forebond) => ({ kinds: [ … ], derived: [ … ] }).',
};

/** An import that would run; `import type` does not. */
function importPlace(text: string): { readonly line: number; readonly column: number } | null {
  const found = /^[ \t]*(?:import(?!\s+type\b)\b(?![.\w])|export\s+[^'"\n=]*\bfrom\b)/m.exec(text);
  if (found === null) return null;
  const lines = text.slice(0, found.index).split('\n');
  return { line: lines.length, column: found[0].search(/\S/) + 1 };
}

/** What it threw, where, and how to go on. Never throws itself. */
export function faultOf(error: unknown): ExtensionFault {
  const { code, message, stack } = partsOf(error);
  const place = placeIn(stack);
  if (code === 'ERR_UNSUPPORTED_TYPESCRIPT_SYNTAX')
    return {
      ...place,
      problem: firstLine(message),
      fix: 'Only types are taken out of the file: write a plain object or a union of words instead.',
    };
  if (code === 'ERR_REQUIRE_ASYNC_MODULE')
    return { ...place, problem: 'it waits (await) while it is loaded', fix: 'Take the await out.' };
  const syntax = code === 'ERR_INVALID_TYPESCRIPT_SYNTAX' || stack.startsWith('SyntaxError');
  return {
    ...place,
    problem: syntax ? `it cannot be read: ${firstLine(message)}` : firstLine(message),
    fix: syntax ? 'Mend the line.' : 'Mend what it does there.',
  };
}

/** Whatever was thrown; a getter of it may throw again. */
function partsOf(error: unknown): {
  readonly code: string;
  readonly message: string;
  readonly stack: string;
} {
  try {
    if (!(error instanceof Error))
      return { code: '', message: `threw ${String(error)}`, stack: '' };
    const code = 'code' in error ? String(error.code) : '';
    return { code, message: String(error.message), stack: String(error.stack) };
  } catch {
    return { code: '', message: 'threw something that cannot be read', stack: '' };
  }
}

const firstLine = (text: string): string =>
  (text.split('\n')[0] ?? '').replace(/\p{C}/gu, '·').slice(0, 200);

/** The first place inside the file. */
function placeIn(stack: string): { readonly line: number; readonly column: number } {
  const found = /forebond-extension:[0-9a-f]+\/[\w./-]+\.ts:(\d+)(?::(\d+))?/.exec(stack);
  const marked = /\n( *)\^+/.exec(stack);
  const line = Number(found?.[1] ?? 1);
  return { line, column: Number(found?.[2] ?? (marked?.[1]?.length ?? 0) + 1) };
}

/** A fault in one clause: `line 12: what`. */
export const clauseOf = ({ line, problem }: ExtensionFault): string => `line ${line}: ${problem}`;
