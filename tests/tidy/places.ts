/**
 * What stands at the top of the project, and what no file may name: a place on somebody's
 * machine, the host of a package registry.
 */
import type { Problem } from './source.ts';

/** Rooms, and only the dot, lock and bootstrap files that tools need. */
const topLevel = [
  '.ci',
  '.dockerignore',
  '.gitignore',
  '.npmrc',
  'CHANGELOG.md',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'SECURITY.md',
  'agent',
  'biome.json',
  'broker',
  'dashboards',
  'docker-compose.yml',
  'docs',
  'package-lock.json',
  'package.json',
  'rules',
  'start.js',
  'tests',
  'tsconfig.build.json',
  'tsconfig.json',
  'vitest.config.ts',
];

export function strayEntries(paths: readonly string[]): Problem[] {
  const entries = [...new Set(paths.map((path) => path.split('/')[0]!))];
  return entries
    .filter((entry) => !topLevel.includes(entry))
    .map((entry) => ({
      place: entry,
      problem: 'stands at the top of the project and is not on its list.',
      fix: 'Move it into the room it belongs to; a file that a tool needs at the top goes on the list in tests/tidy/places.ts.',
    }));
}

/** Written so that no pattern matches its own text. */
const forbidden: readonly (readonly [RegExp, string])[] = [
  [/\/(?:work|farm)\/(?:main|steering|in)\b/, 'a place on somebody’s machine.'],
  [/(?<![\w.])\/(?:tmp|root|home|Users)\/[a-z]/i, 'a place on somebody’s machine.'],
  [/\.\.\/(?:shared)\b/, 'a folder outside the project.'],
  [/\bregistry\.[a-z]+\.(?:org|com)\b/, 'the host of a package registry.'],
  [/\bdeb\.[a-z]+\.(?:org|com)\b/, 'the host of a package registry.'],
];

export function namedPlaces(path: string, text: string): Problem[] {
  return text.split('\n').flatMap((line, index) =>
    forbidden
      .filter(([pattern]) => pattern.test(line))
      .map(([, problem]) => ({
        place: `${path}:${index + 1}`,
        problem: `names ${problem}`,
        fix: 'Use a path from the project, os.tmpdir(), or the tool’s own settings.',
      })),
  );
}
