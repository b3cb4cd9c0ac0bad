/** German for the texts of `rules/stations/residue-signals.ts`. */
import type { Texts } from './texts.ts';

export const residueSignals: Texts = {
  'temperature of a surface that gathers residue; one for each place, as floor, shroud, duct and filter, where the topic has a +':
    'Temperatur einer Oberfläche, an der sich Rückstand sammelt; eine für jede Stelle, etwa Boden, Verkleidung, Kanal und Filter, wo das Topic ein + hat',
  'mineral-insulated thermocouple pressed onto the worst place: oven floor below the racks, side of the shroud, duct, filter bank':
    'Mantelthermoelement, angedrückt an die ungünstigste Stelle: Ofenboden unter den Gestellen, Seite der Verkleidung, Kanal, Filterwand',
  'temperature of the air beside that surface; one for all places, or one for each':
    'Temperatur der Luft neben dieser Oberfläche; eine für alle Stellen oder eine für jede',
  'some 50 mm from the surface, shielded from its radiation':
    'etwa 50 mm von der Oberfläche entfernt, gegen ihre Strahlung abgeschirmt',
  'thickness of the residue on that surface': 'Dicke des Rückstands auf dieser Oberfläche',
  'gauged by hand when the place is cold, isolated and released for work':
    'von Hand gemessen, wenn die Stelle kalt, von allen Energiequellen getrennt und zur Arbeit freigegeben ist',
  'temperature inside the bin for scrapings, used filters and wipes':
    'Temperatur im Behälter für abgeschabten Rückstand, gebrauchte Filter und Wischtücher',
  'thermocouple fixed in the middle of the bin, put there while it was empty and cold':
    'Thermoelement, in der Mitte des Behälters befestigt, angebracht, als er leer und kalt war',
  'temperature of the air around the bin': 'Temperatur der Luft um den Behälter',
  'in the shade, some metres from the bin': 'im Schatten, einige Meter vom Behälter entfernt',
  'temperature in the middle of the stacked racks':
    'Temperatur in der Mitte der gestapelten Gestelle',
  'thermocouple that hangs between the racks, or a pyrometer from a safe distance':
    'Thermoelement, das zwischen den Gestellen hängt, oder ein Pyrometer aus sicherem Abstand',
  'how much hotter the surface is than the air beside it':
    'um wie viel die Oberfläche heißer ist als die Luft daneben',
  'how far the surface is from where residue as thick as gauged may light itself':
    'wie weit die Oberfläche von der Temperatur entfernt ist, bei der sich Rückstand von der gemessenen Dicke selbst entzünden kann',
  'how much hotter the bin is than the air around it':
    'um wie viel der Behälter heißer ist als die Luft um ihn herum',
  'This place was cleaned of residue, cold, and the waste taken out of the building.':
    'Diese Stelle wurde in kaltem Zustand von Rückstand gereinigt und der Abfall aus dem Gebäude gebracht.',
  'whoever cleaned it, for EHS': 'wer sie gereinigt hat, für die Arbeitssicherheit',
  'The waste bin was emptied and used filters were taken out as residue waste.':
    'Der Abfallbehälter wurde geleert und gebrauchte Filter wurden als Rückstandsabfall hinausgebracht.',
  'whoever empties it, each shift': 'wer ihn leert, in jeder Arbeitsschicht',
};
