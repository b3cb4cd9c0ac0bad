/** German for the texts of `rules/stations/adhesive-store-derived.ts`. */
import type { Texts } from './texts.ts';

export const adhesiveStoreDerived: Texts = {
  'dew point of the air: water settles on anything colder':
    'Taupunkt der Luft: Auf allem, was kälter ist, schlägt sich Wasser nieder',
  'temperature at the wall of an unstirred drum that stands in this air, an estimate':
    'Temperatur an der Wand eines ungerührten Fasses, das in dieser Luft steht, eine Schätzung',
  'time until the wall of such a drum is too cold, if the air stays as it is':
    'Zeit, bis die Wand eines solchen Fasses zu kalt ist, wenn die Luft so bleibt',
  'mean temperature outdoors of the last seven days':
    'mittlere Temperatur im Freien über die letzten sieben Tage',
  'time that the wall of an unheated drum has left at its arrival, were it as cold as forecast all the way':
    'Zeit, die der Wand eines unbeheizten Fasses bei der Ankunft noch bleibt, wäre es auf dem ganzen Weg so kalt wie vorhergesagt',
  'kelvin below the cold limit times hours in a month, to compare stores and seasons; it says nothing of shelf life':
    'Kelvin unter dem Grenzwert für Kälte mal Stunden in einem Monat, um Lager und Jahreszeiten zu vergleichen; über die Haltbarkeit sagt das nichts',
  'kelvin above the warm limit times hours in a month, to compare stores and seasons; it says nothing of shelf life':
    'Kelvin über dem Grenzwert für Wärme mal Stunden in einem Monat, um Lager und Jahreszeiten zu vergleichen; über die Haltbarkeit sagt das nichts',
  'one temperature that would have aged the store as its own did in a month, to compare stores and seasons; it says nothing of shelf life':
    'die eine Temperatur, bei der das Lager in einem Monat ebenso gealtert wäre wie bei seinen eigenen, um Lager und Jahreszeiten zu vergleichen; über die Haltbarkeit sagt das nichts',
};
