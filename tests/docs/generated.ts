/** Pages made from the sources, and how each is made. */
import { ruleKinds } from '#rules/kinds/all.ts';
import { alarmsPage } from './alarms-page.ts';
import { derivedPage } from './derived-page.ts';
import { errorsPage } from './errors-page.ts';
import { materialJsonSchema, siteJsonSchema } from './json-schema.ts';
import { kindPage } from './kind-page.ts';
import { kindsPage } from './kinds-page.ts';
import { limitsPage } from './limits-page.ts';
import { sciencePage } from './science-page.ts';
import { siteFieldsPage } from './site-fields-page.ts';
import { stationPage } from './station-page.ts';
import { describedStations, stationsPage } from './stations-page.ts';
import { wordsPage } from './words-page.ts';

const schemaText = (schema: object): string => `${JSON.stringify(schema, null, 2)}\n`;

export const generatedPages: readonly (readonly [string, () => string])[] = [
  ['docs/alarms.md', alarmsPage],
  ['docs/derived.md', derivedPage],
  ['docs/errors.md', errorsPage],
  ['docs/kinds.md', kindsPage],
  ['docs/limits.md', limitsPage],
  ['docs/science.md', sciencePage],
  ['docs/site-fields.md', siteFieldsPage],
  ['docs/stations.md', stationsPage],
  ...describedStations.map(
    (kind) => [`docs/stations/${kind.name}.md`, () => stationPage(kind)] as const,
  ),
  ...[...ruleKinds.values()].map(
    (kind) => [`docs/kinds/${kind.name}.md`, () => kindPage(kind)] as const,
  ),
  ['docs/words.md', wordsPage],
  ['docs/site.schema.json', () => schemaText(siteJsonSchema())],
  ['docs/material.schema.json', () => schemaText(materialJsonSchema())],
];
