import { describe, expect, test } from 'vitest';
import { projectFiles, readText, top } from '../tidy/source.ts';
import { blocksOf } from './blocks.ts';
import { runPage } from './run-page.ts';

const pages = projectFiles
  .filter((path) => path.endsWith('.md'))
  .map((path) => ({ path, blocks: blocksOf(readText(path)) }))
  .filter((page) => page.blocks.length > 0);

describe('commands in the documentation', () => {
  test('there are some', () => expect(pages.length).toBeGreaterThan(2));

  test.each(pages)('$path: what is not run says why', ({ blocks }) => {
    const silent = blocks.filter((block) => block.treatment === 'by-hand' && block.reason === null);
    expect(silent.map((block) => block.line)).toEqual([]);
  });

  test.each(pages.filter((page) => page.blocks.some((block) => block.treatment !== 'by-hand')))(
    '$path: the commands do what it says',
    async ({ path, blocks }) => runPage(top, path, blocks),
    300_000,
  );
});
