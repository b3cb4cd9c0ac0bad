/** RFC 6901: every example of section 5, the syntax of section 3, and what a payload must not reach. */
import { expect, test } from 'vitest';
import { parsePointer, valueAt } from '#agent/intake/pointer.ts';

const at = (text: string, root: unknown): unknown => {
  const pointer = parsePointer(text);
  if (pointer === null) throw new Error(`refused: ${text}`);
  return valueAt(pointer, root);
};

// Source: RFC 6901, section 5.
const document = JSON.parse(String.raw`{
  "foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4,
  "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8
}`);
const vectors: readonly (readonly [string, unknown])[] = [
  ['', document],
  ['/foo', ['bar', 'baz']],
  ['/foo/0', 'bar'],
  ['/', 0],
  ['/a~1b', 1],
  ['/c%d', 2],
  ['/e^f', 3],
  ['/g|h', 4],
  ['/i\\j', 5],
  ['/k"l', 6],
  ['/ ', 7],
  ['/m~0n', 8],
];
for (const [pointer, value] of vectors) {
  test(`RFC 6901 section 5: ${JSON.stringify(pointer)}`, () => {
    expect(at(pointer, document)).toEqual(value);
  });
}

// Source: RFC 6901, section 4: `~1` first, then `~0`; an index has no leading zero; `-` names nothing.
test.each([
  ['/~01', { '~1': 'kept' }, 'kept'],
  ['/0', ['a'], 'a'],
  ['/00', ['a'], undefined],
  ['/-', ['a'], undefined],
  ['/1', ['a'], undefined],
  ['/-1', ['a'], undefined],
  ['/1e0', ['a', 'b'], undefined],
  ['/length', ['a'], undefined],
  ['/0', { '0': 'by name' }, 'by name'],
  ['/a/b', { a: 'text' }, undefined],
  ['/a/b', { a: null }, undefined],
  ['/a', 5, undefined],
])('%s in %j finds %j', (pointer, root, value) => {
  expect(at(pointer, root)).toEqual(value);
});

test.each(['foo', ' /foo', '/~', '/~2', '/a~', '#/foo'])('%j is no pointer', (text) => {
  expect(parsePointer(text)).toBeNull();
});

test('only own properties are seen', () => {
  for (const token of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
    expect(at(`/${token}`, {})).toBeUndefined();
    expect(at(`/${token}`, [])).toBeUndefined();
  }
  expect(at('/__proto__/v', JSON.parse('{"__proto__": {"v": 7}}'))).toBe(7);
});
