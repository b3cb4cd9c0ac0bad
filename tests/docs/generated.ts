/** Pages made from the sources, and how each is made. */
import { errorsPage } from './errors-page.ts';
import { kindsPage } from './kinds-page.ts';
import { limitsPage } from './limits-page.ts';
import { siteFieldsPage } from './site-fields-page.ts';
import { stationsPage } from './stations-page.ts';

export const generatedPages: readonly (readonly [string, () => string])[] = [
  ['docs/errors.md', errorsPage],
  ['docs/kinds.md', kindsPage],
  ['docs/limits.md', limitsPage],
  ['docs/site-fields.md', siteFieldsPage],
  ['docs/stations.md', stationsPage],
];
