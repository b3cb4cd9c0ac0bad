/** German for the texts of `rules/stations/residue-texts.ts`. */
import type { Texts } from './texts.ts';

export const residueTexts: Texts = {
  'Call EHS; hand over in person; nobody re-enters until they say so.':
    'Arbeitssicherheit rufen; Lage persönlich übergeben; niemand geht wieder hinein, bevor die Arbeitssicherheit es freigibt.',
};
