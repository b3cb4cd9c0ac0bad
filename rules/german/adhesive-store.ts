/** German for the texts of `rules/stations/adhesive-store.ts`. */
import type { Texts } from './texts.ts';

export const adhesiveStore: Texts = {
  'Adhesive freezes, first at the container’s wall, and is broken for good.':
    'Haftmittel gefriert, zuerst an der Gebindewand, und ist dann unwiederbringlich zerstört.',
  'Adhesive ages in the heat and gels.': 'Haftmittel altert in der Wärme und geliert.',
  'A delivery froze or overheated on the way.':
    'Eine Lieferung ist unterwegs gefroren oder überhitzt worden.',
  'Adhesive is used past its date.': 'Haftmittel wird nach Ablauf seines Datums verwendet.',
};
