import { describe, expect, test } from 'vitest';
import { blocksOf, missingLine } from './blocks.ts';

const page = (...lines: string[]): string => lines.join('\n');
const fence = '```';

describe('shell blocks of a page', () => {
  test('each treatment, and what is no shell', () => {
    const text = page(
      `${fence}sh`,
      'one',
      'two',
      fence,
      `${fence}yaml`,
      'site: a',
      fence,
      `${fence}sh stays`,
      'three',
      fence,
      '<!-- by hand: needs a Docker engine -->',
      `${fence}sh by-hand`,
      'four',
      fence,
    );
    expect(blocksOf(text)).toEqual([
      { line: 2, treatment: 'runs', script: 'one\ntwo', shown: [], reason: null },
      { line: 9, treatment: 'stays', script: 'three', shown: [], reason: null },
      {
        line: 13,
        treatment: 'by-hand',
        script: 'four',
        shown: [],
        reason: 'needs a Docker engine',
      },
    ]);
  });
  test('what is shown belongs to the block right before it', () => {
    const text = page(`${fence}sh`, 'one', fence, '', `${fence}text`, 'done', fence);
    expect(blocksOf(text)[0]!.shown).toEqual(['done']);
    const apart = page(`${fence}sh`, 'one', fence, 'Words.', `${fence}text`, 'done', fence);
    expect(blocksOf(apart)[0]!.shown).toEqual([]);
  });
  test('an unknown word after sh is refused', () => {
    expect(() => blocksOf(page(`${fence}sh maybe`, 'one', fence))).toThrow('line 1: write one of');
    expect(() => blocksOf(page(`${fence}bash`, 'one', fence))).toThrow('line 1: write one of');
  });
});

describe('shown output', () => {
  test('lines in order, with anything at …', () => {
    expect(missingLine(['a …', 'b'], 'x\na 17\ny\nb\n')).toBeNull();
  });
  test('a line that is not there, or not in its place, is named', () => {
    expect(missingLine(['a', 'c'], 'a\nb\n')).toBe('c');
    expect(missingLine(['b', 'a'], 'a\nb\n')).toBe('a');
    expect(missingLine(['a.'], 'ab\n')).toBe('a.');
  });
});
