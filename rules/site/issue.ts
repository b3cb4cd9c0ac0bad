/**
 * What a schema found wrong, in words: each with its place and the way out.
 *
 * The known names at a place come from the schema's own JSON Schema, so that "Did you mean" and
 * the editor's completion never differ.
 */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';
import { durationMeant, nameMeant, pointerMeant, quantityMeant } from './likely-meant.ts';
import { nameText } from './name.ts';
import { didYouMean } from './nearest.ts';
import type { SiteProblem } from './problem.ts';
import {
  choices,
  kindWords,
  nodeOf,
  type Path,
  type SchemaNode,
  schemasAt,
} from './schema-node.ts';
import { calendarText, dateText } from './sensor-schema.ts';
import { pointer } from './signal-schema.ts';

type Issue = z.core.$ZodIssue;

/** Checks `value`; every problem it finds, with paths that begin with `at`. */
export function problemsOf(schema: z.ZodMiniType, value: unknown, at: Path = []): SiteProblem[] {
  const result = z.safeParse(schema, value);
  if (result.success) return [];
  const root = nodeOf(schema);
  return result.error.issues.flatMap((issue) => words(issue, root, value, [], at));
}

/** Its last key is no name. */
export function badName(path: Path): SiteProblem {
  const name = String(path.at(-1));
  const meant = nameMeant(name);
  const rules = 'lower case letters, digits and single hyphens, at most 48';
  const fix = meant === null ? `Use ${rules}, as oven-1.` : `Write ${meant}: ${rules}.`;
  return { path, problem: `"${name}" is no name`, fix, atKey: true };
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
        fix: unknownKey(key, known, here),
        atKey: true,
      }));
    }
    case 'invalid_key':
      return [badName(path)];
    case 'invalid_union':
      return unionWords(issue, root, value, inside, at, here, found);
    default:
      return [{ path, ...simpleWords(issue, here, found, schemasAt(root, listAround(inside))) }];
  }
}

/** A key that another kind of the same block has, goes by another name, or is mistyped. */
function unknownKey(key: string, known: readonly string[], here: readonly SchemaNode[]): string {
  const kinds = here
    .filter((node) => Object.hasOwn(node.properties ?? {}, key))
    .flatMap((node) => node.properties?.kind?.const ?? []);
  if (kinds.length > 0)
    return `It belongs to another kind: take it out, or write kind: ${kinds.join(' or ')}.`;
  return didYouMean(key, known);
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
  /** What stands around it, where it is an entry of a list. */
  around: readonly SchemaNode[],
): Pick<SiteProblem, 'problem' | 'fix'> {
  const fix = hint(here);
  const last = String(issue.path.at(-1) ?? '');
  switch (issue.code) {
    case 'invalid_type':
      if (found === undefined)
        return { problem: `"${last}" is missing`, fix: `Add it. ${fix ?? ''}`.trim() };
      return typeWords(issue.expected, here, found, fix ?? hint(around));
    case 'invalid_format':
      return {
        problem: `${shown(found)} cannot be read`,
        fix: formatFix(here, found, fix) ?? fix ?? `${issue.message}.`,
      };
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
        fix: `At most ${issue.maximum}. ${fix ?? ''}`.trim(),
      };
    default:
      return { problem: `${shown(found)} does not fit here`, fix: fix ?? 'See docs/site-file.md.' };
  }
}

/** The list that holds an entry; the path itself where it is none. */
const listAround = (path: Path): Path =>
  path.slice(0, path.length - [...path].reverse().findIndex((key) => typeof key !== 'number'));

/** Something of another type than belongs here. */
function typeWords(
  expected: string,
  here: readonly SchemaNode[],
  found: unknown,
  fix: string | null,
): Pick<SiteProblem, 'problem' | 'fix'> {
  if (expected === 'string' && isBracketed(found))
    return { problem: `[${found[0]}] is taken for a list`, fix: `Write "[${found[0]}]".` };
  if (typeof found === 'number' && unitHint(here))
    return { problem: `${found} has no unit`, fix: fix ?? '' };
  if (expected === 'string' && typeof found === 'number') {
    const quotes = hasPattern(here) ? '' : `Put it in quotes: "${found}".`;
    return { problem: `${found} is a number, not text`, fix: `${quotes} ${fix ?? ''}`.trim() };
  }
  const problem = `${shown(found)} is not ${kindWords[expected] ?? expected}`;
  if (expected === 'array' || expected === 'tuple')
    return { problem, fix: `Write a list. ${fix ?? ''}`.trim() };
  if (expected === 'record' && Array.isArray(found))
    return { problem, fix: 'Write each with its name before a colon, without dashes.' };
  if (fix?.includes('{ kind') === true) return { problem, fix };
  const block = asBlock(here, found) ?? settingsFix(expected, here, fix);
  return { problem, fix: block ?? fix ?? `Write ${kindWords[expected] ?? expected}.` };
}

function settingsFix(
  expected: string,
  here: readonly SchemaNode[],
  fix: string | null,
): string | null {
  const names = here.flatMap((node) => Object.keys(node.properties ?? {}));
  return expected === 'object' && fix === null && names.length > 0
    ? `Write its settings below it, indented: ${[...new Set(names)].join(', ')}.`
    : null;
}

/** A value that is nearly one: as it was likely meant. */
function formatFix(here: readonly SchemaNode[], found: unknown, fix: string | null): string | null {
  if (typeof found !== 'string') return null;
  const patterns = here.map((node) => node.pattern);
  if (patterns.includes(patternOf(quantityText))) return written(quantityMeant(found));
  if (patterns.includes(patternOf(durationText))) return written(durationMeant(found));
  const meant = patterns.includes(pointerPattern) ? pointerMeant(found) : null;
  if (meant === null) return null;
  return fix === null ? `Write ${meant}.` : `Write ${meant}: ${lowerFirst(fix)}`;
}

const written = (meant: string | null): string | null =>
  meant === null ? null : `Write "${meant}".`;
const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
const hasPattern = (here: readonly SchemaNode[]): boolean =>
  here.some(({ pattern }) => pattern !== undefined && patternHints.has(pattern));

/** A unit such as [degF] without its quotes. */
const isBracketed = (found: unknown): found is [string] =>
  Array.isArray(found) && found.length === 1 && typeof found[0] === 'string';

/** A kind's bare name where its block belongs. */
function asBlock(here: readonly SchemaNode[], found: unknown): string | null {
  const named = here.find((node) => node.properties?.kind?.const === found);
  if (typeof found !== 'string' || named === undefined) return null;
  const more = (named.required ?? []).filter((key) => key !== 'kind').map((key) => `, ${key}: …`);
  return `Write { kind: ${found}${more.join('')} }.`;
}

const pointerPattern = nodeOf(pointer('')).pattern ?? '';
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
