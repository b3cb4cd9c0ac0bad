/** German for the texts of `rules/stations/parts-since.ts`. */
import type { Texts } from './texts.ts';

export const partsSince: Texts = {
  'parts dipped since the last make-up, by the racks that people scan: the first ones tell':
    'seit der letzten Ergänzung getauchte Teile, nach den Gestellen, die jemand scannt: Die ersten zeigen es',
  'parts sprayed since the last flush, by the racks that people scan: the first ones tell':
    'seit dem letzten Spülen gespritzte Teile, nach den Gestellen, die jemand scannt: Die ersten zeigen es',
};
