/**
 * The adhesive store and its dock: a water-carried dispersion that freezing breaks and heat ages.
 *
 * The coldest place is judged, not the air: a pail of plain water by the coldest outer wall
 * follows a container, where air only swings with the doors. An alarm may clear; a container that
 * may have frozen may not, so it goes on a hold that only quality lifts. The way it came counts as
 * the store does: the logger is read at the dock, container by container. Shelf life runs from the
 * day it was made, and no new label makes it younger.
 */
import { adhesiveStoreCold } from './adhesive-store-cold.ts';
import { adhesiveStoreDerived } from './adhesive-store-derived.ts';
import { adhesiveStoreGoods } from './adhesive-store-goods.ts';
import { adhesiveStoreMarks, adhesiveStoreSignals } from './adhesive-store-signals.ts';
import type { StationKind } from './station.ts';

export const adhesiveStore: StationKind = {
  name: 'adhesive-store',
  summary: 'Where containers of adhesive and primer wait, from the dock to the mixer.',
  signals: adhesiveStoreSignals,
  derived: adhesiveStoreDerived,
  marks: adhesiveStoreMarks,
  hazards: [
    {
      id: 'freezing',
      words: 'Adhesive freezes, first at the container’s wall, and is broken for good.',
      people: false,
      byHand: null,
    },
    {
      id: 'heat',
      words: 'Adhesive ages in the heat and gels.',
      people: false,
      byHand: null,
    },
    {
      id: 'freight',
      words: 'A delivery froze or overheated on the way.',
      people: false,
      byHand: null,
    },
    {
      id: 'shelf-life',
      words: 'Adhesive is used past its date.',
      people: false,
      byHand: null,
    },
  ],
  rules: [...adhesiveStoreCold, ...adhesiveStoreGoods],
};
