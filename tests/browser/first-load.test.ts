/** What a phone fetches before it shows anything: measured on the build, as it is served. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import { top } from '../tidy/source.ts';
import { buildPage } from './bench-line.ts';

const built = join(top, 'dist', 'dashboards');
const inBuild = (ending: string): string[] =>
  (readdirSync(built, { recursive: true }) as string[]).filter((path) => path.endsWith(ending));
const text = (path: string): string => readFileSync(join(built, path), 'utf8');

beforeAll(buildPage);

test('script that is fetched before anything shows is at most 80 kB compressed', () => {
  const named = [...text('index.html').matchAll(/(?:src|href)="\/(assets\/[^"]+\.js)"/g)];
  const first = named.map((match) => match[1]!);
  // Another language than English comes before the first word as well; charts and the worker after.
  const language = inBuild('.js').filter((path) => /^assets\/de-/.test(path));
  const bytesOf = (path: string): number => gzipSync(text(path), { level: 6 }).length;
  const bytes = [...first, ...language].map(bytesOf);
  const sum = bytes.reduce((a, b) => a + b, 0);
  const all = inBuild('.js').reduce((total, path) => total + bytesOf(path), 0);
  console.log(
    `script: ${bytes.join(' + ')} = ${sum} bytes compressed, ${all} with all that may follow`,
  );
  expect(first.length).toBeGreaterThan(0);
  expect(sum).toBeLessThanOrEqual(80_000);
});

test('the worker is one small file of its own', () => {
  const worker = text('worker.js');
  console.log(`worker: ${gzipSync(worker, { level: 6 }).length} bytes compressed`);
  expect(gzipSync(worker, { level: 6 }).length).toBeLessThanOrEqual(5_000);
  expect(worker).not.toMatch(/\bimport\b|importScripts/);
  expect(text('index.html')).not.toContain('worker.js');
});

test('no schema library is in it', () => {
  // A name every schema of that library carries, and no text of ours does.
  expect(inBuild('.js').filter((path) => /\b_zod\b|ZodMini/.test(text(path)))).toEqual([]);
});

test('the shell has no script or style of its own, which its content policy would refuse', () => {
  const html = text('index.html');
  expect(html).not.toMatch(/<script(?![^>]*\bsrc=)/);
  expect(html).not.toMatch(/<style|\son\w+=|\sstyle=/);
  expect(html).not.toMatch(/(?:src|href)="(?!\/)/);
});
