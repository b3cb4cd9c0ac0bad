import { expect, test } from 'vitest';
import { top } from '../tidy/source.ts';
import { type Block, blocksOf } from './blocks.ts';
import { runPage } from './run-page.ts';

const block = (facts: Partial<Block> & { script: string }): Block => ({
  line: 1,
  treatment: 'runs',
  shown: [],
  reason: null,
  ...facts,
});
const run = (...blocks: Block[]): Promise<void> => runPage(top, 'page.md', blocks);

test('the folder looks like the project, without its data', async () => {
  await run(block({ script: 'test -f package.json && test ! -e data && mkdir data' }));
});
test('a command that fails is named with its line', async () => {
  const failing = run(block({ script: 'echo why; false', line: 7 }));
  await expect(failing).rejects.toThrow(/page\.md:7: echo why; false\nit ended with 1:\nwhy/);
});
test('a failure that the page announces is no failure, and success then is', async () => {
  await run(block({ script: 'exit 1', treatment: 'fails' }));
  await expect(run(block({ script: 'true', treatment: 'fails' }))).rejects.toThrow('ended with 0');
});
test('output that the page shows and the command does not is named', async () => {
  const silent = run(block({ script: 'echo one', shown: ['two'] }));
  await expect(silent).rejects.toThrow('the page shows "two"');
});
test('what stays is there for the next block and ended by Ctrl-C', async () => {
  const stays =
    "trap 'rm here; exit 0' INT; touch here; echo 'ready  now'; while :; do sleep 0.1; done";
  await run(block({ script: stays, treatment: 'stays' }), block({ script: 'test -f here' }));
});
test('what ends before it is ready is named', async () => {
  const ends = run(block({ script: 'echo broken', treatment: 'stays' }));
  await expect(ends).rejects.toThrow('never said ready');
});
test('ports of the page are replaced by free ones', async () => {
  await expect(run(block({ script: 'echo 8620; false' }))).rejects.toThrow(
    /ended with 1:\n(?!8620)\d+/,
  );
});
test('a block by hand is not run', async () => {
  await run(...blocksOf('<!-- by hand: it would fail -->\n```sh by-hand\nfalse\n```'));
});
