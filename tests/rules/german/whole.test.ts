/** German has every text of the trade: none missing, none left over, nothing lost on the way. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { germanOf } from '#rules/german/all.ts';
import type { Texts } from '#rules/german/texts.ts';
import {
  type English,
  kindSentences,
  kindTexts,
  needTexts,
  sensorTexts,
  stationTexts,
} from './english.ts';

const folder = join(import.meta.dirname, '..', '..', '..', 'rules', 'german');
const files = readdirSync(folder).filter(
  (name) => !['texts.ts', 'all.ts', 'deferral.ts'].includes(name),
);
const books = new Map<string, Texts>();
for (const name of files) {
  const found = Object.values((await import(join(folder, name))) as Record<string, Texts>);
  expect(found, `${name} exports one book`).toHaveLength(1);
  books.set(name, found[0]!);
}
const german = new Map([...books.values()].flatMap((book) => Object.entries(book)));

const missing = (texts: readonly English[]): string[] => [
  ...new Set(
    texts.filter(({ text }) => !german.has(text)).map(({ text, where }) => `${where}: ${text}`),
  ),
];

describe.each([
  ...stationTexts,
  ['every station', sensorTexts] as const,
  ['what is waited for', needTexts] as const,
  ['rule kinds', [...kindTexts, ...kindSentences]] as const,
])('%s', (_, texts) => {
  test('every text has its German', () => {
    expect(missing(texts)).toEqual([]);
  });

  test('what nobody may do is forbidden in German too', () => {
    const allowed = texts
      .filter(({ doNot, text }) => doNot && german.has(text))
      .map(({ text }) => german.get(text)!)
      .filter((text) => !/\b(nicht|nie|niemals|kein\w*|nichts)\b/i.test(text));
    expect(allowed).toEqual([]);
  });
});

const placeholders = (text: string): string[] => [...(text.match(/\{\$\w+\}/g) ?? [])].sort();
/** As numbers, however the language writes them. */
const numbers = (text: string): string[] =>
  [...(text.replace(/\{\$\w+\}/g, '').match(/\d+(?:[.,]\d+)?/g) ?? [])]
    .map((each) => each.replace(',', '.'))
    .sort();

describe.each([...books])('%s', (name, book) => {
  test.each(Object.entries(book))('%s', (english, text) => {
    expect(placeholders(text)).toEqual(placeholders(english));
    expect(numbers(text)).toEqual(numbers(english));
    expect(text.endsWith('.') || text.endsWith('?')).toBe(isWhole(english));
    expect(text).not.toMatch(/["']|\b(the|and|not|of|is)\b|ue?bertr|ß\w*ß|\s{2}|^\s|\s$/);
  });

  test('is among all of them', () => {
    for (const [english, text] of Object.entries(book)) expect(germanOf(english)).toBe(text);
  });

  test('holds nothing that stands in another file, too', () => {
    const elsewhere = [...books].filter(([other]) => other !== name).map(([, each]) => each);
    const twice = Object.keys(book).filter((text) =>
      elsewhere.some((each) => Object.hasOwn(each, text)),
    );
    expect(twice).toEqual([]);
  });
});

/** What nobody may do is a clause in English and a sentence in German. */
const doNots = new Set(
  [...stationTexts.values(), sensorTexts]
    .flat()
    .filter(({ doNot }) => doNot)
    .map(({ text }) => text),
);
const isWhole = (english: string): boolean => /[.?]$/.test(english) || doNots.has(english);
