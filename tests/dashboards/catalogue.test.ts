import { expect, test } from 'vitest';
import { en } from '../../dashboards/text/en.ts';
import { sources } from '../tidy/source.ts';

const page = sources.filter(
  ({ path }) => path.startsWith('dashboards/') && !/^dashboards\/text\/(en|de)\b/.test(path),
);
const words = new Set(page.flatMap(({ text }) => text.match(/\w+/g) ?? []));

test('every sentence of the catalogue is said somewhere', () => {
  expect(Object.keys(en).filter((id) => !words.has(id))).toEqual([]);
});

test('no view says a sentence that is not in the catalogue', () => {
  // Text between tags that begins with a letter: an expression or a mark is none.
  const found = page
    .filter(({ path }) => path.endsWith('.tsx'))
    .flatMap(({ path, text }) =>
      [...text.matchAll(/>\s*([A-Za-z][a-z]+(?: [a-z]+)+)\s*</g)].map(
        (match) => `${path}: ${match[1]}`,
      ),
    );
  expect(found).toEqual([]);
});
