/** German for the texts of `rules/stations/coated-store-signals.ts`. */
import type { Texts } from './texts.ts';

export const coatedStoreSignals: Texts = {
  'at the height of the racks, out of draught and sun, shielded':
    'auf Höhe der Gestelle, vor Zugluft und Sonne geschützt, abgeschirmt',
  'beside the air temperature; check it at 33 and 75 % over salts each half year':
    'neben der Lufttemperatur; jedes halbe Jahr bei 33 und 75 % über Salzlösungen prüfen',
  'temperature of the coldest metal in the store': 'Temperatur des kältesten Metalls im Lager',
  'thermocouple fixed on a heavy part on the lowest rack by the coldest outer wall':
    'Thermoelement, befestigt an einem schweren Teil auf dem untersten Gestell an der kältesten Außenwand',
  'air temperature of the room where racks are unwrapped':
    'Lufttemperatur des Raums, in dem Gestelle ausgepackt werden',
  'in the moulding shop, where racks are unwrapped, out of the press’s heat':
    'in der Presserei, wo Gestelle ausgepackt werden, außerhalb der Wärme der Presse',
  'relative humidity of the room where racks are unwrapped':
    'relative Feuchte des Raums, in dem Gestelle ausgepackt werden',
  'beside the room’s air temperature': 'neben der Lufttemperatur des Raums',
  'temperature of the heaviest part of a rack that was brought in from the cold':
    'Temperatur des schwersten Teils eines Gestells, das aus der Kälte hereingebracht wurde',
  'contact probe on bare metal of the heaviest part, under the wrapping; write down brought-in with the rack’s name first':
    'Kontaktfühler auf blankem Metall des schwersten Teils, unter der Verpackung; zuerst „brought-in“ mit dem Namen des Gestells eintragen',
  'The parts of this rack came out of their last drying; layover begins.':
    'Die Teile dieses Gestells kamen aus ihrer letzten Trocknung; die Liegezeit beginnt.',
  'whoever unloads the drying oven, or the scanner there':
    'wer den Trockenofen entlädt, oder der Scanner dort',
  'This rack came into the store.': 'Dieses Gestell kam in das Lager.',
  'whoever moves it, or the scanner at the door': 'wer es bewegt, oder der Scanner an der Tür',
  'This rack left the store.': 'Dieses Gestell hat das Lager verlassen.',
  'This rack came from the cold into the room where it is unwrapped, still wrapped.':
    'Dieses Gestell kam aus der Kälte in den Raum, in dem es ausgepackt wird, noch verpackt.',
  'The wrapping was taken off this rack.': 'Die Verpackung wurde von diesem Gestell abgenommen.',
  'whoever unwraps it': 'wer es auspackt',
  'The parts of this rack went into the press.': 'Die Teile dieses Gestells kamen in die Presse.',
  'whoever loads the press, or the scanner there':
    'wer die Presse beschickt, oder der Scanner dort',
  'The parts of this rack were scrapped, or stripped to be coated anew.':
    'Die Teile dieses Gestells wurden verschrottet oder entschichtet, um neu beschichtet zu werden.',
  quality: 'die Qualitätssicherung',
  'dew point of the store’s air: water settles on anything colder':
    'Taupunkt der Luft im Lager: Auf allem, was kälter ist, schlägt sich Wasser nieder',
  'coldest metal above the dew point of the store’s air':
    'um wie viel das kälteste Metall wärmer ist als der Taupunkt der Luft im Lager',
  'dew point of the room where racks are unwrapped':
    'Taupunkt des Raums, in dem Gestelle ausgepackt werden',
  'part that was brought in, above the dew point of the room where it is unwrapped':
    'um wie viel das hereingebrachte Teil wärmer ist als der Taupunkt des Raums, in dem es ausgepackt wird',
  'kelvin above the hot limit times hours in a month, to compare stores and seasons; it says nothing of layover':
    'Kelvin über dem Grenzwert für Hitze mal Stunden in einem Monat, um Lager und Jahreszeiten zu vergleichen; über die Liegezeit sagt das nichts',
  'one temperature that would have aged the parts as their own did in a month, to compare stores and seasons; it says nothing of layover':
    'die eine Temperatur, bei der die Teile in einem Monat ebenso gealtert wären wie bei ihren eigenen, um Lager und Jahreszeiten zu vergleichen; über die Liegezeit sagt das nichts',
};
