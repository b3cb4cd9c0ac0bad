/**
 * Where a worker's file is, from source and from the build alike.
 *
 * The compiler rewrites `./x.ts` to `./x.js` in imports but not inside a URL, so a worker named
 * by URL would be missing from `dist/`. This keeps the caller's own ending.
 */

/**
 * `new Worker(workerFile('./seal-worker.ts', import.meta.url))`. The name is relative to
 * `from`, the caller's `import.meta.url`.
 */
export function workerFile(name: `./${string}.ts`, from: string): URL {
  return new URL(from.endsWith('.ts') ? name : `${name.slice(0, -'.ts'.length)}.js`, from);
}
