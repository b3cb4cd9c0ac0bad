/**
 * What nobody uses any more: a bound, an error, a package, a file. Each is a promise that the
 * pages still make.
 */
import { meaningOf } from './fences.ts';
import type { Problem, SourceFile } from './source.ts';

/** Names of `catalogue` that no other file says. Words are compared, so a longer name is another. */
export function unsaidNames(
  names: readonly string[],
  catalogue: string,
  files: readonly SourceFile[],
): Problem[] {
  const words = new Set(
    files
      .filter((file) => file.path !== catalogue && !file.path.startsWith('tests/'))
      .flatMap((file) => file.text.match(/\w+/g) ?? []),
  );
  return names
    .filter((name) => !words.has(name))
    .map((name) => ({
      place: catalogue,
      problem: `"${name}" is used nowhere.`,
      fix: 'Take it out, or hold to it where it applies.',
    }));
}

/** Dependencies that no file of what ships imports. */
export function unusedPackages(names: readonly string[], files: readonly SourceFile[]): Problem[] {
  const used = new Set(
    files
      .filter((file) => /^(rules|broker|agent|dashboards)\//.test(file.path))
      .flatMap((file) => {
        // A package may also be named where it is loaded by hand.
        const byHand = [...file.text.matchAll(/['"]((?:@[\w-]+\/)?[\w-]+)['"]/g)].map((m) => m[1]!);
        const imported = file.imports
          .map((item) => meaningOf(file.path, item.specifier))
          .flatMap((meaning) => (meaning.kind === 'package' ? [meaning.name] : []));
        return [...imported, ...byHand];
      }),
  );
  return names
    .filter((name) => !used.has(name))
    .map((name) => ({
      place: 'package.json',
      problem: `nothing that ships imports the dependency ${name}.`,
      fix: 'Take it out, or move it to devDependencies if only tests use it.',
    }));
}

/** Files that start something by themselves, and so need no importer. */
const startsByItself = /(^agent\/cli\/main|^agent\/main|-worker)\.ts$/;

/**
 * The physics is a library: a formula stands there with its source once it is held to published
 * values, whether or not a station computes with it yet. So its test may be all that imports it.
 */
const isLibrary = (path: string): boolean => path.startsWith('rules/process/');

/** Files of what ships that only tests import, or nobody. */
export function unreachedFiles(files: readonly SourceFile[]): Problem[] {
  const shipped = files.filter((file) => /^(rules|broker|agent)\//.test(file.path));
  const reached = reachedFrom(shipped);
  const tested = reachedFrom(files);
  return shipped
    .filter((file) => !(isLibrary(file.path) ? tested : reached).has(file.path))
    .filter((file) => !startsByItself.test(file.path))
    .map((file) => ({
      place: file.path,
      problem: 'is imported by nothing that ships.',
      fix: 'Wire it in, or take it out with its test; what only tests need stands in tests/.',
    }));
}

const reachedFrom = (files: readonly SourceFile[]): ReadonlySet<string> =>
  new Set(
    files.flatMap((file) =>
      file.imports
        .map((item) => meaningOf(file.path, item.specifier))
        .flatMap((meaning) => (meaning.kind === 'file' ? [meaning.path] : [])),
    ),
  );
