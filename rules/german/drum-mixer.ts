/** German for the texts of `rules/stations/drum-mixer.ts`. */
import type { Texts } from './texts.ts';

export const drumMixer: Texts = {
  'Solids settle; film is uneven, first too thin, then too thick.':
    'Feststoff setzt sich ab; die Schicht wird ungleichmäßig, erst zu dünn, dann zu dick.',
  'Shear makes foam and lumps that stay.': 'Scherung erzeugt Schaum und Klumpen, die bleiben.',
  'The blade breaks the surface and foams the rest of the drum.':
    'Das Rührblatt durchbricht die Oberfläche und schlägt den Rest im Fass zu Schaum.',
  'Adhesive is drawn before it was mixed long enough.':
    'Haftmittel wird entnommen, bevor es lange genug gemischt wurde.',
};
