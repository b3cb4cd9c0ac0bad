/** German for the texts of `rules/stations/dip-tank-words.ts`. */
import type { Texts } from './texts.ts';

export const dipTankWords: Texts = {
  'Wet floor and moving racks. Keep clear of the hoist; samples and panels from outside the guard.':
    'Nasser Boden und bewegte Gestelle. Vom Hubwerk Abstand halten; Proben und Prüfbleche von außerhalb der Schutzeinrichtung nehmen.',
  'Wear what the material’s data sheet asks for. Wet floor and moving racks. Keep clear of the hoist; samples and panels from outside the guard.':
    'Schutzausrüstung tragen, wie das Datenblatt des Materials sie verlangt. Nasser Boden und bewegte Gestelle. Vom Hubwerk Abstand halten; Proben und Prüfbleche von außerhalb der Schutzeinrichtung nehmen.',
  'Let the rack in the tank come out at the end of its cycle and send no other; a loaded conveyor is not stopped inside an oven for this.':
    'Gestell im Becken am Ende seines Zyklus herauskommen lassen und kein weiteres schicken; ein beladener Förderer wird dafür nicht in einem Ofen angehalten.',
};
