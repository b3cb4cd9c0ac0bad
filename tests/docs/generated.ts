/** Pages made from the sources, and how each is made. */
import { derivedPage } from './derived-page.ts';
import { errorsPage } from './errors-page.ts';
import { materialJsonSchema, siteJsonSchema } from './json-schema.ts';
import { kindsPage } from './kinds-page.ts';
import { limitsPage } from './limits-page.ts';
import { sciencePage } from './science-page.ts';
import { siteFieldsPage } from './site-fields-page.ts';
import { stationsPage } from './stations-page.ts';
import { wordsPage } from './words-page.ts';

const schemaText = (schema: object): string => `${JSON.stringify(schema, null, 2)}\n`;

export const generatedPages: readonly (readonly [string, () => string])[] = [
  ['docs/derived.md', derivedPage],
  ['docs/errors.md', errorsPage],
  ['docs/kinds.md', kindsPage],
  ['docs/limits.md', limitsPage],
  ['docs/science.md', sciencePage],
  ['docs/site-fields.md', siteFieldsPage],
  ['docs/stations.md', stationsPage],
  ['docs/words.md', wordsPage],
  ['docs/site.schema.json', () => schemaText(siteJsonSchema())],
  ['docs/material.schema.json', () => schemaText(materialJsonSchema())],
];
