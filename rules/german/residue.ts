/** German for the texts of `rules/stations/residue.ts`. */
import type { Texts } from './texts.ts';

export const residue: Texts = {
  'Dried residue on a hot surface lights itself.':
    'Getrockneter Rückstand auf einer heißen Oberfläche entzündet sich selbst.',
  'Residue reacts and heats itself, at any temperature of the oven.':
    'Rückstand reagiert und erwärmt sich selbst, bei jeder Temperatur des Ofens.',
  'Residue grows thick, and lights at a lower temperature.':
    'Rückstand wird dick und entzündet sich bei niedrigerer Temperatur.',
  'Waste bin or stacked racks burn hours later.':
    'Abfallbehälter oder gestapelte Gestelle brennen Stunden später.',
  'Scrapings, filters and wipes stay in the building.':
    'Abgeschabter Rückstand, Filter und Wischtücher bleiben im Gebäude.',
  'Friction, impact or a spark lights residue, even cold.':
    'Reibung, Schlag oder ein Funke entzündet Rückstand, auch kalten.',
  'clean only cold, isolated and under permit, with non-sparking tools, never with grinder or steel scraper':
    'nur kalt, von allen Energiequellen getrennt und mit Erlaubnisschein reinigen, mit funkenfreien Werkzeugen, nie mit Schleifgerät oder Stahlschaber',
};
