/** German for the texts of `rules/stations/spray-booth-words.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothWords: Texts = {
  'Stored pressure. Vent and lock out by local rules.':
    'Gespeicherter Druck. Nach den örtlichen Vorschriften drucklos machen und gegen Wiedereinschalten sichern.',
  'Parts are warm and racks move; keep clear of them.':
    'Teile sind warm, und Gestelle bewegen sich; Abstand halten.',
};
