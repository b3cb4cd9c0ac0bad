/**
 * docs/science.md: every formula of rules/process/ and how many checked figures stand behind it.
 *
 * The contract with a file of rules/process/:
 *   - it exports `subject` (rules/process/subject.ts) with an entry for each function it exports;
 *   - where a function is used is read from the imports, not written down;
 *   - its checked figures stand in tests/vectors/, by preference under the same file name, as
 *     records with `source` and `flag` (tests/vectors/sourced.ts). A record with a flag counts as
 *     one row, whatever it holds.
 * A file of vectors without any such record is not in the table.
 */
import { join } from 'node:path';
import type { Subject } from '#rules/process/subject.ts';
import { meaningOf } from '../tidy/fences.ts';
import { type Node, projectFiles, sources, top, walk } from '../tidy/source.ts';
import type { Flag } from '../vectors/sourced.ts';
import { cell, code, table } from './markdown.ts';
import { notComputed } from './not-computed.ts';

export interface Described {
  /** From the top of the project. */
  readonly path: string;
  readonly exported: Readonly<Record<string, unknown>>;
}

const load = async (paths: readonly string[]): Promise<Described[]> =>
  Promise.all(paths.map(async (path) => ({ path, exported: await import(join(top, path)) })));

const processPaths = projectFiles.filter(
  (path) => /^rules\/process\/[\w-]+\.ts$/.test(path) && path !== 'rules/process/subject.ts',
);
const vectorPaths = projectFiles.filter((path) => /^tests\/vectors\/[\w-]+\.ts$/.test(path));

export const processFiles = await load(processPaths);
const vectorFiles = await load(vectorPaths);

const subjectOf = ({ exported }: Described): Subject | undefined =>
  exported.subject as Subject | undefined;

/** What keeps a file of rules/process/ out of the page, each with what to do. */
export function subjectProblems(file: Described): string[] {
  const subject = subjectOf(file);
  if (subject === undefined) {
    return [
      `${file.path}: says nothing of itself. Export \`subject: Subject\` from it (rules/process/subject.ts says how), with an entry for each exported function.`,
    ];
  }
  const functions = Object.keys(file.exported).filter(
    (name) => typeof file.exported[name] === 'function',
  );
  const described = Object.keys(subject.functions);
  const empty = Object.entries({ ...subject, symbols: 'said', functions: 'said' }).filter(
    ([, text]) => String(text).trim() === '',
  );
  const vague = described.filter((name) => {
    const { formula, range } = subject.functions[name]!;
    return formula.trim() === '' || range.trim() === '';
  });
  return [
    ...functions
      .filter((name) => !described.includes(name))
      .map(
        (name) =>
          `${file.path}: ${name} has no entry in subject.functions; give its formula and range.`,
      ),
    ...described
      .filter((name) => !functions.includes(name))
      .map(
        (name) =>
          `${file.path}: subject.functions has ${name}, which it does not export; take it out.`,
      ),
    ...empty.map(([field]) => `${file.path}: subject.${field} is empty; say it.`),
    ...vague.map(
      (name) => `${file.path}: ${name} needs a formula and a range in subject.functions.`,
    ),
  ];
}

export type FlagCounts = Record<Flag, number>;

/** Records with a flag anywhere within, each counted once and not looked into. */
export function countFlags(value: unknown): FlagCounts {
  const counts: FlagCounts = { seen: 0, calc: 0, memory: 0 };
  const look = (each: unknown): void => {
    if (typeof each !== 'object' || each === null) return;
    const { flag, source } = each as { flag?: unknown; source?: unknown };
    if (typeof source === 'string' && (flag === 'seen' || flag === 'calc' || flag === 'memory'))
      counts[flag] += 1;
    else for (const part of Object.values(each)) look(part);
  };
  look(value);
  return counts;
}

/** Files that import a name from a file of rules/process/, as "path#name" to them. */
function usesByName(): Map<string, string[]> {
  const uses = new Map<string, string[]>();
  for (const file of sources) {
    if (!/^(rules|agent|dashboards)\//.test(file.path)) continue;
    walk(file.program, (node) => {
      if (node.type !== 'ImportDeclaration') return;
      const meaning = meaningOf(file.path, String((node.source as Node).value));
      if (meaning.kind !== 'file' || !meaning.path.startsWith('rules/process/')) return;
      for (const each of node.specifiers as readonly Node[]) {
        const name = (each.imported as Node | undefined)?.name;
        const key = `${meaning.path}#${String(name)}`;
        uses.set(key, [...(uses.get(key) ?? []), file.path]);
      }
    });
  }
  return uses;
}

const titleOfVectors = (path: string): string => {
  const name = path.replace(/^tests\/vectors\//, '').replace(/\.ts$/, '');
  const same = processFiles.find((file) => file.path === `rules/process/${name}.ts`);
  const subject = same && subjectOf(same);
  const words = name.replaceAll('-', ' ');
  return subject?.title ?? words[0]!.toUpperCase() + words.slice(1);
};

function vectorTable(): string {
  const rows = vectorFiles
    .map(({ path, exported }) => ({ title: titleOfVectors(path), path, ...countFlags(exported) }))
    .filter(({ seen, calc, memory }) => seen + calc + memory > 0)
    .sort((a, b) => a.title.localeCompare(b.title, 'en'));
  const sum = (flag: Flag): number => rows.reduce((total, row) => total + row[flag], 0);
  return table(
    ['topic', 'rows in', 'seen', 'calc', 'memory'],
    [
      ...rows.map(({ title, path, seen, calc, memory }) => [
        cell(title),
        `[${path.replace('tests/vectors/', '')}](../${path})`,
        String(seen),
        String(calc),
        String(memory),
      ]),
      ['**all**', '', String(sum('seen')), String(sum('calc')), String(sum('memory'))],
    ],
  );
}

function functionText(
  name: string,
  file: Described,
  subject: Subject,
  uses: ReadonlyMap<string, readonly string[]>,
): string {
  const { formula, range, source, uncertainty } = subject.functions[name]!;
  const users = uses.get(`${file.path}#${name}`) ?? [];
  const used =
    users.length === 0
      ? 'no station computes with it yet'
      : users.map((path) => `[${path.replace(/^rules\//, '')}](../${path})`).join(', ');
  return [
    `- ${code(name)}: ${cell(formula)}`,
    `  Range: ${cell(range)}`,
    ...(source === undefined ? [] : [`  Source: ${cell(source)}`]),
    ...(uncertainty === undefined ? [] : [`  Uncertainty: ${cell(uncertainty)}`]),
    `  Used in: ${used}.`,
  ].join('\\\n');
}

function subjectText(file: Described, uses: ReadonlyMap<string, readonly string[]>): string {
  const subject = subjectOf(file)!;
  const symbols = Object.entries(subject.symbols).map(
    ([symbol, meaning]) => `${code(symbol)} ${cell(meaning)}`,
  );
  return [
    `## ${subject.title}`,
    `[${file.path.replace('rules/process/', '')}](../${file.path}). ${cell(subject.about)}`,
    ...(symbols.length === 0 ? [] : [`Symbols: ${symbols.join('; ')}.`]),
    `Source: ${cell(subject.source)}`,
    `Uncertainty: ${cell(subject.uncertainty)}`,
    Object.keys(subject.functions)
      .map((name) => functionText(name, file, subject, uses))
      .join('\n'),
  ].join('\n\n');
}

export function sciencePage(): string {
  const uses = usesByName();
  const described = processFiles
    .filter((file) => subjectOf(file) !== undefined)
    .sort((a, b) => subjectOf(a)!.title.localeCompare(subjectOf(b)!.title, 'en'));
  return `${[
    '# The science',
    `Every formula that a number of this project comes from, with its units, its range and who
says so. Made from the files of \`rules/process/\` by \`npm run docs\`; edit it there. A function
that is given something outside its range refuses: it answers nothing, or says why, and never
answers a number that it does not believe in.`,
    '## How far the checks can be trusted',
    `The functions are held to these figures by tests. *Seen*: read in the named source, or computed
with a named library at a named version. *Calc*: computed from a formula whose constants were read;
good against change, not proof against a publication. *Memory*: from memory, not confirmed.`,
    vectorTable(),
    ...described.map((file) => subjectText(file, uses)),
    '## Not computed',
    'What belongs to the subject and is left out on purpose.',
    table(
      ['what', 'why not'],
      notComputed.map(({ what, why }) => [cell(what), cell(why)]),
    ),
  ].join('\n\n')}\n`;
}
