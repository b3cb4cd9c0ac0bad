/** German for the texts of `rules/stations/dip-tank-derived.ts`. */
import type { Texts } from './texts.ts';

export const dipTankDerived: Texts = {
  'how far the liquid falls over the return weir':
    'wie tief die Flüssigkeit am Überlauf des Rücklaufs fällt',
  'solids of the bath by mass, from density at its temperature and the lot’s oven test':
    'Feststoffgehalt des Bads nach Masse, aus der Dichte bei ihrer Temperatur und der Ofenprüfung des Loses',
  'what the solids may still move before they are out, counting what the density can be wrong by':
    'um wie viel sich der Feststoffgehalt noch verändern darf, bevor er außerhalb liegt, die mögliche Abweichung der Dichte eingerechnet',
  'film that the speed of withdrawal leaves, by panels drawn from this tank':
    'Schicht, die die Ziehgeschwindigkeit hinterlässt, nach Prüfblechen aus diesem Becken',
  'mean temperature of the bath over the last hour, to read beside a panel':
    'mittlere Temperatur des Bads in der letzten Stunde, zum Vergleich mit einem Prüfblech',
  'flow of the loop as a share of its normal flow':
    'Durchfluss des Kreislaufs als Anteil seines normalen Durchflusses',
  'pressure drop of the filter as a share of the clean one':
    'Druckabfall des Filters im Verhältnis zu dem des sauberen',
  'how often the loop has moved the whole tank since it was filled':
    'wie oft der Kreislauf den ganzen Inhalt des Beckens umgewälzt hat, seit es gefüllt wurde',
};
