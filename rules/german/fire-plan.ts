/** German for the texts of `rules/stations/fire-plan.ts`. */
import type { Texts } from './texts.ts';

export const firePlan: Texts = {
  'The site’s fire plan and the fire service overrule this page.':
    'Der Brandschutzplan des Werks und die Feuerwehr gehen dieser Seite vor.',
};
