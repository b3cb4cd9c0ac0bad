/**
 * Who may import whom. The linter holds the same fences by the written name (biome.json); here
 * every import is followed to the file it means, so that no way around by `../..` is left.
 */
import { builtinModules } from 'node:module';
import { posix } from 'node:path';
import type { ImportedModule, Problem, SourceFile } from './source.ts';

/** What an import means: a file of the project, a module of Node, or a package. */
type Meaning =
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'node'; readonly name: string }
  | { readonly kind: 'package'; readonly name: string; readonly specifier: string };

export function meaningOf(from: string, specifier: string): Meaning {
  if (specifier.startsWith('#')) return { kind: 'file', path: specifier.slice(1) };
  if (specifier.startsWith('.')) {
    return { kind: 'file', path: posix.join(posix.dirname(from), specifier) };
  }
  if (specifier.startsWith('node:') || builtinModules.includes(specifier.split('/')[0]!)) {
    return { kind: 'node', name: specifier };
  }
  const parts = specifier.split('/');
  const name = specifier.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0]!;
  return { kind: 'package', name, specifier };
}

interface Room {
  readonly holds: (path: string) => boolean;
  /** Files of the project that it may import. */
  readonly files: (from: string, to: string, typeOnly: boolean) => boolean;
  readonly node: boolean;
  readonly packages: (name: string, specifier: string) => boolean;
  /** What to do instead. */
  readonly fix: string;
}

const within = (folder: string) => (path: string) => path.startsWith(`${folder}/`);
/** `agent/store` of `agent/store/seal.ts`. */
const partOf = (path: string): string => path.split('/').slice(0, 2).join('/');
/** Files at the top of agent/ that every part may import. */
const everyPart = ['agent/limits.ts', 'agent/errors.ts', 'agent/worker-file.ts'];
/** The words of agent/errors.ts and the bounds of agent/limits.ts, by subject. */
const isErrorWords = (path: string): boolean => /^agent\/(errors|limits)\//.test(path);
const isWiring = (path: string): boolean =>
  path === 'agent/compose.ts' || path === 'agent/main.ts' || /^agent\/(cli|wiring)\//.test(path);
/** What a part of agent/ promises the others: types and codes. */
const isContract = (path: string): boolean => /^agent\/[^/]+\/contract\.ts$/.test(path);

/** The first room that holds a file decides. */
const rooms: readonly Room[] = [
  {
    holds: within('rules'),
    files: (_, to) => to.startsWith('rules/'),
    node: false,
    packages: (_, specifier) => specifier === 'zod/mini',
    fix: 'rules/ imports only itself and zod/mini. Have the agent hand in what it needs.',
  },
  {
    holds: within('broker'),
    files: (_, to) => to.startsWith('broker/'),
    node: true,
    packages: (name) => ['aedes', 'mqtt-packet', 'ws', '@node-rs/argon2', 'zod'].includes(name),
    fix: 'broker/ knows MQTT and nothing else. Have agent/compose.ts hand in what it needs.',
  },
  {
    holds: isWiring,
    files: (_, to) => /^(rules|broker|agent)\//.test(to) || to === 'package.json',
    node: true,
    packages: () => true,
    fix: 'The wiring imports rules/, broker/ and agent/ only.',
  },
  {
    holds: (path) => everyPart.includes(path) || isErrorWords(path) || path === 'agent/version.ts',
    files: (_, to) => everyPart.includes(to) || isErrorWords(to) || to === 'rules/site/bounds.ts',
    node: true,
    packages: () => false,
    fix: 'Every part leans on this file, so it leans on nothing but Node and the bounds of a site.',
  },
  {
    holds: (path) => /^agent\/[^/]+\//.test(path),
    files: (from, to) =>
      to.startsWith(`${partOf(from)}/`) ||
      to.startsWith('rules/') ||
      everyPart.includes(to) ||
      isContract(to),
    node: true,
    packages: () => true,
    fix: 'A part of agent/ imports no sibling but its contract.ts, and never broker/: take what you need as an argument and let agent/compose.ts hand it in.',
  },
  {
    holds: within('dashboards'),
    files: (_, to, typeOnly) =>
      /^(dashboards|rules)\//.test(to) || (typeOnly && to === 'agent/web/contract.ts'),
    node: false,
    packages: () => true,
    fix: 'dashboards/ imports itself, rules/, and types of agent/web/contract.ts (import type).',
  },
  {
    holds: within('tests'),
    files: () => true,
    node: true,
    packages: () => true,
    fix: '',
  },
  {
    holds: within('docs/examples'),
    files: (from, to, typeOnly) => typeOnly && posix.dirname(from) === posix.dirname(to),
    node: false,
    packages: () => false,
    fix: 'A rule file of a site imports nothing but types of the file beside it.',
  },
  {
    holds: (path) => path === 'start.js',
    files: () => false,
    node: true,
    packages: () => false,
    fix: 'start.js runs before anything is installed: Node alone.',
  },
  {
    holds: (path) => path === 'vitest.config.ts',
    files: () => false,
    node: true,
    packages: (name) => name === 'vitest',
    fix: 'A tool’s settings import only that tool.',
  },
];

function allowed(room: Room, from: string, item: ImportedModule): boolean {
  const meaning = meaningOf(from, item.specifier);
  if (meaning.kind === 'node') return room.node;
  if (meaning.kind === 'package') return room.packages(meaning.name, meaning.specifier);
  return room.files(from, meaning.path, item.typeOnly);
}

export function brokenFences(source: SourceFile): Problem[] {
  const room = rooms.find((each) => each.holds(source.path));
  if (!room) {
    return [
      {
        place: source.path,
        problem: 'stands in no room.',
        fix: 'Move it into rules/, broker/, agent/, dashboards/ or tests/, or give it a room in tests/tidy/fences.ts.',
      },
    ];
  }
  return source.imports
    .filter((item) => !allowed(room, source.path, item))
    .map((item) => ({
      place: `${source.path}:${item.line}`,
      problem: `imports ${item.specifier}.`,
      fix: room.fix,
    }));
}

/** Packages that what ships imports must be among `dependencies`, or the image lacks them. */
export function unshippedPackages(source: SourceFile, shipped: readonly string[]): Problem[] {
  if (!/^(rules|broker|agent)\//.test(source.path)) return [];
  return source.imports.flatMap((item) => {
    const meaning = meaningOf(source.path, item.specifier);
    if (item.typeOnly || meaning.kind !== 'package' || shipped.includes(meaning.name)) return [];
    return [
      {
        place: `${source.path}:${item.line}`,
        problem: `imports ${meaning.name}, which is not among the dependencies of package.json.`,
        fix: 'Move it there from devDependencies, or do without.',
      },
    ];
  });
}

/** Files whose imports lead back to themselves; each circle once. Types alone make no circle. */
export function importCircles(files: readonly SourceFile[]): string[] {
  const next = new Map<string, string[]>();
  for (const file of files) {
    const targets = file.imports
      .filter((item) => !item.typeOnly)
      .map((item) => meaningOf(file.path, item.specifier))
      .flatMap((meaning) => (meaning.kind === 'file' ? [meaning.path] : []));
    next.set(file.path, targets);
  }
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    const seen = trail.indexOf(path);
    if (seen >= 0) circles.push([...trail.slice(seen), path].join(' -> '));
    if (seen >= 0 || done.has(path)) return;
    for (const target of next.get(path) ?? []) visit(target, [...trail, path]);
    done.add(path);
  };
  for (const path of next.keys()) visit(path, []);
  return circles;
}
