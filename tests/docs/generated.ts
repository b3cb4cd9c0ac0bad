/** Pages made from the sources, and how each is made. */
import { errorsPage } from './errors-page.ts';
import { limitsPage } from './limits-page.ts';

export const generatedPages: readonly (readonly [string, () => string])[] = [
  ['docs/errors.md', errorsPage],
  ['docs/limits.md', limitsPage],
];
