/**
 * A site file and its material sheets: read whole, or every problem at once with file, line,
 * column, what is wrong and the fix.
 */
import { readFile } from 'node:fs/promises';
import { dirname, join, normalize } from 'node:path';
import { readSheet, type Sheet } from '#rules/material/read-sheet.ts';
import { type SheetWritten, sheetWritten } from '#rules/material/sheet.ts';
import { type CompiledSite, compileSite } from '#rules/plan/compile.ts';
import { problemsOf } from '#rules/site/issue.ts';
import { mendNames } from '#rules/site/mend-names.ts';
import { sayMissingLevels } from '#rules/site/missing-level.ts';
import { type PlacedProblem, pathText, type SiteProblem } from '#rules/site/problem.ts';
import { siteWritten } from '#rules/site/schema.ts';
import { soundPart } from '#rules/site/sound-part.ts';
import { limits } from '../limits.ts';
import { readExtensions } from './read-extensions.ts';
import { compileSource, type SiteSource } from './revision.ts';
import { timezoneProblem } from './timezone.ts';
import { readYaml, type YamlText } from './yaml.ts';

export type SiteReading =
  | { readonly ok: true; readonly source: SiteSource; readonly compiled: CompiledSite }
  | {
      readonly ok: false;
      /** In the order of the files, at most `siteFileProblemsMax`. */
      readonly problems: readonly PlacedProblem[];
      /** How many more there are. */
      readonly more: number;
    };

/** Wildcards are compiled without values: those come from what is heard. */
export async function readSite(file: string): Promise<SiteReading> {
  const text = await fileText(file);
  if (typeof text !== 'string') return refused([{ ...text, file, line: 1, column: 1 }]);
  return readSiteText(text, file, fileText);
}

type ReadText = (file: string) => Promise<string | SiteProblem>;

/** `read` gives the text of a material sheet, or why it cannot be read. */
export async function readSiteText(
  text: string,
  file: string,
  read: ReadText,
): Promise<SiteReading> {
  const yaml = readYaml(text, file);
  const problems: PlacedProblem[] = [...yaml.problems];
  if (yaml.value === null && problems.length === 0) problems.push(yaml.place(emptyFile));
  // What stands in the wrong place because of a slip above it is no fault of its own.
  if (yaml.value === null || yaml.broken) return refused(problems);
  const tell = (found: readonly SiteProblem[]): void => {
    problems.push(...found.map((problem) => yaml.place(problem)));
  };
  const names = problemsOf(siteWritten, yaml.value);
  // What a name that is none hides is looked for below a name that is one.
  const mended = mendNames(yaml.value);
  const asInFile = (problem: SiteProblem): SiteProblem => ({
    ...problem,
    path: mended.written(problem.path),
  });
  const shape = mended.value === yaml.value ? names : problemsOf(siteWritten, mended.value);
  tell(sayMissingLevels([...names, ...mended.problems, ...shape.map(asInFile)]));
  const sound = soundPart(mended.value, shape);
  if (sound === null) return refused(problems);
  const zone = shape.some(({ path }) => path[0] === 'timezone')
    ? null
    : timezoneProblem(sound.site.timezone);
  if (zone !== null) tell([zone]);
  const materials = await readMaterials(sound.site.materials ?? {}, file, yaml, read, problems);
  const plain: SiteSource = { site: sound.site, materials: materials.written };
  const wrongBefore = problems.length;
  const own = await readExtensions(plain, file, yaml, read, problems);
  const kindsKnown = problems.length === wrongBefore;
  const { sheets } = materials;
  const compiled = compileSite(sound.site, sheets, {}, '', sound.broken, own.kinds);
  const faults = compiled.problems.filter((problem) => !saidAlready(problem, shape));
  tell((kindsKnown ? faults : withoutOwnKinds(faults)).map(asInFile));
  if (problems.length > 0) return refused(problems);
  const source: SiteSource =
    Object.keys(own.texts).length === 0 ? plain : { ...plain, extensions: own.texts };
  return { ok: true, source, compiled: compileSource(source, {}) };
}

const emptyFile: SiteProblem = {
  path: [],
  problem: 'the file says nothing',
  fix: 'Begin with site: and timezone:; see docs/site-file.md.',
};

/** Own rules could not be read: of a rule or derived signal whose kind may be one of theirs nothing can be told. */
function withoutOwnKinds(faults: readonly SiteProblem[]): SiteProblem[] {
  const ofKind = ({ path }: SiteProblem): boolean =>
    path.length === kindDepth && path.at(-1) === 'kind';
  const unknown = faults.filter(ofKind).map(({ path }) => pathText(path.slice(0, -1)));
  return faults.filter(({ path }) => !unknown.includes(pathText(path.slice(0, kindDepth - 1))));
}

/** lines, line, station, rules or derived, name, kind. */
const kindDepth = 6;

/** The same place, or one inside it: what the schema said stands for both. */
const saidAlready = (problem: SiteProblem, shape: readonly SiteProblem[]): boolean =>
  shape.some(({ path }) => path.every((key, i) => key === problem.path[i]));

function refused(problems: readonly PlacedProblem[]): SiteReading {
  const once = [
    ...new Map(
      problems.map((p) => [`${p.file}:${p.line}:${p.column} ${pathText(p.path)} ${p.problem}`, p]),
    ).values(),
  ];
  const files = [...new Set(once.map((problem) => problem.file))];
  once.sort(
    (a, b) =>
      files.indexOf(a.file) - files.indexOf(b.file) || a.line - b.line || a.column - b.column,
  );
  const kept = once.slice(0, limits.siteFileProblemsMax);
  return { ok: false, problems: kept, more: once.length - kept.length };
}

async function readMaterials(
  files: Readonly<Record<string, string>>,
  siteFile: string,
  siteYaml: YamlText,
  read: ReadText,
  problems: PlacedProblem[],
): Promise<{ sheets: Record<string, Sheet>; written: Record<string, SheetWritten> }> {
  const sheets: Record<string, Sheet> = {};
  const written: Record<string, SheetWritten> = {};
  for (const [name, relative] of Object.entries(files)) {
    const path = ['materials', name];
    if (!isBelow(relative)) {
      problems.push(
        siteYaml.place({
          path,
          problem: `"${relative}" lies outside the folder of the site file`,
          fix: 'Keep material sheets beside the site file or below it, and name them from there.',
        }),
      );
      continue;
    }
    const file = join(dirname(siteFile), relative);
    const text = await read(file);
    if (typeof text !== 'string') {
      problems.push(siteYaml.place({ ...text, path }));
      continue;
    }
    const yaml = readYaml(text, file);
    problems.push(...yaml.problems);
    if (yaml.broken) continue;
    const shape = problemsOf(sheetWritten, yaml.value);
    const parsed = sheetWritten.safeParse(yaml.value);
    const checked = parsed.success ? readSheet(parsed.data) : null;
    for (const problem of [...shape, ...(checked?.problems ?? [])])
      problems.push(yaml.place(problem));
    if (checked !== null) sheets[name] = checked.sheet;
    if (parsed.success) written[name] = parsed.data;
  }
  return { sheets, written };
}

const isBelow = (relative: string): boolean => {
  const plain = normalize(relative);
  return !plain.startsWith('/') && !plain.startsWith('..') && !/^[A-Za-z]:/.test(plain);
};

/** The text of a UTF-8 file, or why it cannot be read. */
export async function fileText(file: string): Promise<string | SiteProblem> {
  try {
    const bytes = await readFile(file);
    if (bytes.length > limits.siteFileBytesMax)
      return {
        path: [],
        problem: `${file} is over ${limits.siteFileBytesMax} bytes`,
        fix: 'Split the site in two.',
      };
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError)
      return { path: [], problem: `${file} is not UTF-8 text`, fix: 'Save it as UTF-8.' };
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    return {
      path: [],
      problem: `${file} cannot be read: ${fileWords[code] ?? code}`,
      fix: 'Check the name and who may read it.',
    };
  }
}

const fileWords: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'reading it is not allowed',
  EISDIR: 'it is a folder',
};
