import { describe, expect, test } from 'vitest';
import { isName } from '#rules/site/name.ts';
import { didYouMean, editDistance, nearest } from '#rules/site/nearest.ts';

/** Counted by hand: insert, delete, replace, and a swap of neighbours as one edit. */
test.each([
  ['', '', 0],
  ['wall', 'wall', 0],
  ['wal', 'wall', 1],
  ['walll', 'wall', 1],
  ['well', 'wall', 1],
  ['wlal', 'wall', 1],
  ['', 'wall', 4],
  ['kitten', 'sitting', 3],
])('from %j to %j in %i edits', (a, b, edits) => {
  expect(editDistance(a, b)).toBe(edits);
  expect(editDistance(b, a)).toBe(edits);
});

describe('the name that was meant', () => {
  const known = ['wall', 'bottom', 'air', 'humidity'];
  test.each([
    ['wal', 'wall'],
    ['Wall', 'wall'],
    ['botom', 'bottom'],
    ['humdity', 'humidity'],
    ['xyz', null],
    ['', null],
    ['w'.repeat(10_000), null],
  ])('%s', (name, meant) => {
    expect(nearest(name, known)).toBe(meant);
  });
  test('or all there are', () => {
    expect(didYouMean('xyz', ['wall', 'air'])).toBe('Known here: wall, air.');
    expect(didYouMean('xyz', [])).toBe('Nothing may stand here.');
  });
});

test.each([
  ['oven-1', true],
  ['1', true],
  ['a'.repeat(48), true],
  ['a'.repeat(49), false],
  ['', false],
  ['Oven', false],
  ['a--b', false],
  ['-a', false],
  ['a-', false],
  ['a/b', false],
  ['a_b', false],
  ['__proto__', false],
  ['ö', false],
])('%j is a name: %s', (text, is) => {
  expect(isName(text)).toBe(is);
});
