/**
 * What a schema found wrong, in words: each with its place and the way out.
 *
 * The known names at a place come from the schema's own JSON Schema, so that "Did you mean" and
 * the editor's completion never differ.
 */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';
import { nameText } from './name.ts';
import { didYouMean } from './nearest.ts';
import type { SiteProblem } from './problem.ts';
import { calendarText, dateText } from './sensor-schema.ts';

interface SchemaNode {
  readonly type?: string;
  readonly description?: string;
  readonly pattern?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly additionalProperties?: boolean | SchemaNode;
  readonly items?: SchemaNode;
  readonly prefixItems?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
}
type Path = readonly (string | number)[];
type Issue = z.core.$ZodIssue;

/** Checks `value`; every problem it finds, with paths that begin with `at`. */
export function problemsOf(schema: z.ZodMiniType, value: unknown, at: Path = []): SiteProblem[] {
  const result = z.safeParse(schema, value);
  if (result.success) return [];
  const root = nodeOf(schema);
  return result.error.issues.flatMap((issue) => words(issue, root, value, [], at));
}

/** Its last key is no name. */
export const badName = (path: Path): SiteProblem => ({
  path,
  problem: `"${String(path.at(-1))}" is no name`,
  fix: 'Use lower case letters, digits and single hyphens, at most 48, as oven-1.',
  atKey: true,
});

const nodes = new WeakMap<z.ZodMiniType, SchemaNode>();

/** The schema as plain JSON Schema, made once. */
function nodeOf(schema: z.ZodMiniType): SchemaNode {
  const made = nodes.get(schema);
  if (made !== undefined) return made;
  // The one meeting of two views of JSON Schema; SchemaNode names the few members read here.
  const node = z.toJSONSchema(schema, { unrepresentable: 'any', reused: 'inline' }) as SchemaNode;
  nodes.set(schema, node);
  return node;
}

function words(
  issue: Issue,
  root: SchemaNode,
  value: unknown,
  from: Path,
  at: Path,
): SiteProblem[] {
  const inside = [...from, ...issue.path.map((key) => (typeof key === 'symbol' ? '' : key))];
  const path = [...at, ...inside];
  const here = schemasAt(root, inside);
  const found = valueAt(value, inside);
  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = here.flatMap((node) => Object.keys(node.properties ?? {}));
      return issue.keys.map((key) => ({
        path: [...path, key],
        problem: `"${key}" is not known here`,
        fix: didYouMean(key, known),
        atKey: true,
      }));
    }
    case 'invalid_key':
      return [badName(path)];
    case 'invalid_union':
      return unionWords(issue, root, value, inside, at, here, found);
    default:
      return [{ path, ...simpleWords(issue, here, found) }];
  }
}

/** A union: the branch that fits best speaks; where none comes near, all that may stand here. */
function unionWords(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  root: SchemaNode,
  value: unknown,
  inside: Path,
  at: Path,
  here: readonly SchemaNode[],
  found: unknown,
): SiteProblem[] {
  const path = [...at, ...inside];
  if (issue.errors.length === 0) {
    const key = inside.at(-1);
    const options = schemasAt(root, inside).flatMap((node) =>
      typeof node.const === 'string' ? [node.const] : [],
    );
    return [
      found === undefined
        ? {
            path,
            problem: `"${String(key)}" is missing`,
            fix: `Write one of: ${options.join(', ')}.`,
          }
        : {
            path,
            problem: `${shown(found)} is not known here`,
            fix: didYouMean(String(found), options),
          },
    ];
  }
  const branches = issue.errors.filter((issues) =>
    issues.every((inner) => inner.path.length > 0 || inner.code === 'unrecognized_keys'),
  );
  const best = branches.sort((a, b) => a.length - b.length)[0];
  if (best !== undefined) return best.flatMap((inner) => words(inner, root, value, inside, at));
  return [
    {
      path,
      problem:
        found === undefined
          ? `"${String(inside.at(-1))}" is missing`
          : `${shown(found)} fits nothing here`,
      fix: `Write ${[...new Set(here.flatMap(choices))].join(' or ')}.`,
    },
  ];
}

function simpleWords(
  issue: Issue,
  here: readonly SchemaNode[],
  found: unknown,
): Pick<SiteProblem, 'problem' | 'fix'> {
  const fix = hint(here);
  const last = String(issue.path.at(-1) ?? '');
  switch (issue.code) {
    case 'invalid_type':
      if (found === undefined)
        return { problem: `"${last}" is missing`, fix: `Add it. ${fix ?? ''}`.trim() };
      if (issue.expected === 'string' && typeof found === 'number' && fix === null)
        return { problem: `${found} is a number, not text`, fix: `Put it in quotes: "${found}".` };
      if (issue.expected === 'string' && isBracketed(found))
        return { problem: `[${found[0]}] is taken for a list`, fix: `Write "[${found[0]}]".` };
      if (typeof found === 'number' && unitHint(here))
        return { problem: `${found} has no unit`, fix: fix ?? '' };
      return {
        problem: `${shown(found)} is not ${kindWords[issue.expected] ?? issue.expected}`,
        fix: asBlock(here, found) ?? fix ?? `Write ${kindWords[issue.expected] ?? issue.expected}.`,
      };
    case 'invalid_format':
      return { problem: `${shown(found)} cannot be read`, fix: fix ?? `${issue.message}.` };
    case 'invalid_value': {
      const options = issue.values.map(String);
      return found === undefined
        ? { problem: `"${last}" is missing`, fix: `Write one of: ${options.join(', ')}.` }
        : { problem: `${shown(found)} is not known here`, fix: didYouMean(String(found), options) };
    }
    case 'too_small':
      return {
        problem:
          issue.origin === 'array' ? 'too few entries' : `${shown(found)} is too short or small`,
        fix: fix ?? `At least ${issue.minimum}.`,
      };
    case 'too_big':
      return {
        problem:
          issue.origin === 'array' ? 'too many entries' : `${shown(found)} is too long or large`,
        fix: `At most ${issue.maximum}.`,
      };
    default:
      return { problem: `${shown(found)} does not fit here`, fix: fix ?? 'See docs/site-file.md.' };
  }
}

/** A unit such as [degF] without its quotes. */
const isBracketed = (found: unknown): found is [string] =>
  Array.isArray(found) && found.length === 1 && typeof found[0] === 'string';

/** A kind's bare name where its block belongs. */
function asBlock(here: readonly SchemaNode[], found: unknown): string | null {
  const kinds = here.flatMap((node) => node.properties?.kind?.const ?? []);
  return typeof found === 'string' && kinds.includes(found) ? `Write { kind: ${found} }.` : null;
}

const patternOf = (schema: z.ZodMiniType): string => nodeOf(schema).pattern ?? '';
const patternHints: ReadonlyMap<string, string> = new Map([
  [patternOf(quantityText), 'Write a number, a space and a UCUM unit, as "7 Cel" or "30 /min".'],
  [
    patternOf(durationText),
    'Write a number, a space and ms, s, min, h or d, as "90 s" or "10 min".',
  ],
  [patternOf(dateText), 'Write year, month and day, as 2026-03-31.'],
  [patternOf(calendarText), 'Write days or months, as "365 d" or "12 mo".'],
  [patternOf(nameText), 'Use lower case letters, digits and single hyphens, as oven-1.'],
]);

const unitPatterns = [patternOf(quantityText), patternOf(durationText)];
const unitHint = (here: readonly SchemaNode[]): boolean =>
  here.some((node) => node.pattern !== undefined && unitPatterns.includes(node.pattern));

/** What belongs here: how it is written, else what it means; null where the schema does not say. */
function hint(here: readonly SchemaNode[]): string | null {
  for (const node of here) {
    const known = node.pattern === undefined ? undefined : patternHints.get(node.pattern);
    if (known !== undefined) return known;
  }
  return here.find((node) => node.description !== undefined)?.description ?? null;
}

const kindWords: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  object: 'a block of settings',
  record: 'a block of names',
  array: 'a list',
  tuple: 'a list',
  int: 'a whole number',
};

/** What may be written where a node stands. */
function choices(node: SchemaNode): string[] {
  if (node.const !== undefined) return [String(node.const)];
  if (node.enum !== undefined) return node.enum.map(String);
  return node.type === undefined ? [] : [kindWords[node.type] ?? node.type];
}

/** The schemas that may stand at a path: several where it passes a union. */
function schemasAt(root: SchemaNode, path: Path): readonly SchemaNode[] {
  let here = branches(root);
  for (const key of path) here = here.flatMap((node) => child(node, key)).flatMap(branches);
  return here;
}

const branches = (node: SchemaNode): SchemaNode[] => {
  const parts = [...(node.anyOf ?? []), ...(node.oneOf ?? [])];
  return parts.length === 0 ? [node] : [node, ...parts.flatMap(branches)];
};

function child(node: SchemaNode, key: string | number): SchemaNode[] {
  if (typeof key === 'number') {
    const item = node.prefixItems?.[key] ?? node.items;
    return item === undefined ? [] : [item];
  }
  const properties = node.properties ?? {};
  if (Object.hasOwn(properties, key)) return [properties[key]!];
  return typeof node.additionalProperties === 'object' ? [node.additionalProperties] : [];
}

function valueAt(value: unknown, path: Path): unknown {
  let here = value;
  for (const key of path) {
    if (here === null || typeof here !== 'object' || !Object.hasOwn(here, key)) return undefined;
    here = (here as Readonly<Record<string | number, unknown>>)[key];
  }
  return here;
}

const shownMax = 60;

/** A value as it may be printed in a problem: short, on one line. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (value !== null && typeof value === 'object') return 'a block of settings';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > shownMax ? `${text.slice(0, shownMax)}…` : text;
}
