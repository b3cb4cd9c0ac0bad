/** German for the texts of `rules/stations/drying-oven-load.ts`. */
import type { Texts } from './texts.ts';

export const dryingOvenLoad: Texts = {
  // under-dried
  '{$station}, load of {$clock}: metal {$reached} at or above {$limit}, {$required} needed, and only {$left} left before exit; the drying can no longer be met.':
    '{$station}, Charge von {$clock}: Metall {$reached} bei {$limit} oder darüber, nötig sind {$required}, bis zur Ausfahrt bleiben nur {$left}; die nötige Trocknung ist nicht mehr zu erreichen.',
  'Water can stay in the coat: it blisters, or the rubber sweeps it off in the mould; the bond may fail although the parts look right.':
    'In der Schicht kann Wasser bleiben: Sie wirft Blasen, oder der Kautschuk schiebt sie in der Form weg; die Bindung kann versagen, obwohl die Teile gut aussehen.',
  'Compare set temperature, line speed, exhaust and load with the run card; load no more until explained.':
    'Solltemperatur, Liniengeschwindigkeit, Abluft und Charge mit der Laufkarte vergleichen; nicht mehr beladen, bis die Ursache geklärt ist.',
  'The process engineer decides: dry again only inside the allowed total heat, test, or scrap.':
    'Der Prozessingenieur entscheidet: erneut trocknen nur innerhalb der zulässigen Gesamtwärme, prüfen oder verschrotten.',
  'raise the heat to catch up: the limits of dried residue come first':
    'Die Temperatur nicht erhöhen, um aufzuholen: Die Grenzwerte für getrockneten Rückstand gehen vor.',
  'stack it wet, or mould held parts':
    'Teile nicht nass stapeln und gesperrte Teile nicht in die Presse geben.',
  // over-baked
  '{$station}, load of {$clock}: metal reached {$value}; limit {$limit}.':
    '{$station}, Charge von {$clock}: Metall erreichte {$value}; Grenzwert {$limit}.',
  'A film that cured in the oven looks perfect, and the rubber does not hold on it.':
    'Eine Schicht, die im Ofen vernetzt ist, sieht einwandfrei aus, und der Gummi haftet nicht darauf.',
  'Mark it as over-baked, with the peak and the time.':
    'Als überhitzt kennzeichnen, mit Spitzenwert und Zeit.',
  // conveyor-stopped
  '{$station}: the conveyor has stood since {$clock}, for {$duration}, with a load inside.':
    '{$station}: Der Förderer steht seit {$clock}, also seit {$duration}, mit einer Charge im Ofen.',
  'The load stays in the heat and over-bakes; dried residue on racks and floor heats up and can light itself.':
    'Die Charge bleibt in der Hitze und wird überhitzt; getrockneter Rückstand auf Gestellen und Boden erwärmt sich und kann sich selbst entzünden.',
  'Otherwise turn the heat off at the oven’s outside control.':
    'Andernfalls Heizung des Ofens an der Bedienung von außen abschalten.',
  'Somebody who may restarts the conveyor by its instruction once nobody is at the chain; else the site’s plan for a stopped load holds. Tag the load “hold” at the exit.':
    'Eine befugte Person startet den Förderer nach dessen Betriebsanweisung erst dann wieder, wenn niemand mehr an der Kette ist; andernfalls gilt der Plan des Werks für eine stehende Charge. Charge an der Ausfahrt mit „gesperrt“ kennzeichnen.',
  'leave the heat on under a standing load':
    'Die Heizung bei stehender Charge nicht eingeschaltet lassen.',
  'reset an emergency stop whose cause is unknown':
    'Einen Not-Halt nicht zurücksetzen, solange seine Ursache unbekannt ist.',
  'Hot surfaces; a chain that can start without warning. Lock out by local rules.':
    'Heiße Oberflächen; eine Kette, die ohne Vorwarnung anlaufen kann. Nach den örtlichen Vorschriften gegen Wiedereinschalten sichern.',
};
