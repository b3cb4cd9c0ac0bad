import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sources, top } from '../tidy/source.ts';

// The build as it is installed: package.json, node_modules, dist/, and no sources beside them.
const folder = mkdtempSync(join(tmpdir(), 'forebond-build-'));
const dist = join(folder, 'dist');

const run = (line: readonly string[]) =>
  spawnSync(process.execPath, line, {
    cwd: folder,
    encoding: 'utf8',
    env: { PATH: process.env.PATH }, // nothing that makes Node look for sources
  });

beforeAll(() => {
  for (const name of ['package.json', 'node_modules'])
    symlinkSync(join(top, name), join(folder, name));
  const tsc = join(top, 'node_modules', 'typescript', 'bin', 'tsc');
  const project = join(top, 'tsconfig.build.json');
  const built = spawnSync(process.execPath, [tsc, '-p', project, '--outDir', dist], {
    encoding: 'utf8',
  });
  if (built.status !== 0) throw new Error(`npm run build fails:\n${built.stdout}`);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the build', () => {
  test('holds no package.json of its own, which would take the imports over', () => {
    expect(readdirSync(dist).sort()).toEqual(['agent', 'broker', 'rules']);
  });

  test('has every worker that the sources name', () => {
    const named = sources.flatMap(({ path, text }) =>
      [...text.matchAll(/workerFile\('\.\/([\w-]+)\.ts', import\.meta\.url\)/g)].map((match) =>
        join(dist, path, '..', `${match[1]}.js`),
      ),
    );
    // worker-file.ts shows how it is called with a name that is only an example
    const real = named.filter((path) => !path.startsWith(join(dist, 'agent', 'seal-worker')));
    expect(real.length).toBeGreaterThan(0);
    expect(real.filter((path) => !existsSync(path))).toEqual([]);
  });

  test('every module but programs and workers loads with plain Node', () => {
    const modules = (readdirSync(dist, { recursive: true }) as string[])
      .filter((path) => path.endsWith('.js') && !/(-worker|main)\.js$/.test(path))
      .map((path) => join(dist, path));
    expect(modules.length).toBeGreaterThan(50);
    const script = `for (const path of ${JSON.stringify(modules)})
      await import(path).catch((error) => { console.log(path, String(error)); process.exitCode = 1; });`;
    const done = run(['--input-type=module', '-e', script]);
    expect(done.stdout + done.stderr).toBe('');
    expect(done.status).toBe(0);
  });

  test('the command checks the sample works', () => {
    const site = join(top, 'docs', 'examples', 'sample-works', 'site.yaml');
    const done = run([join(dist, 'agent', 'cli', 'main.js'), 'check', site]);
    expect(done.stderr).toBe('');
    expect(done.stdout).toContain('sample-works');
    expect(done.status).toBe(0);
  });
});
