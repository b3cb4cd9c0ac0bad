/** German for the texts of `rules/stations/dip-tank-hand.ts`. */
import type { Texts } from './texts.ts';

export const dipTankHand: Texts = {
  'Draw a panel and compare it with the last good one.':
    'Prüfblech ziehen und mit dem letzten guten vergleichen.',

  // bath-ph
  '{$station}: bath at {$value}; the limit is {$limit}.':
    '{$station}: Bad bei {$value}; der Grenzwert ist {$limit}.',
  'A dispersion out of its pH thickens, lumps or lets go of the metal.':
    'Eine Dispersion außerhalb ihres pH-Bereichs dickt ein, verklumpt oder löst sich vom Metall.',
  'Calibrate the meter and read again in a fresh sample.':
    'Messgerät kalibrieren und in einer frischen Probe erneut ablesen.',
  'Tell the process engineer: cleaner, phosphate or wrong water was carried in.':
    'Prozessingenieur informieren: Reiniger, Phosphat oder falsches Wasser wurde eingeschleppt.',
  'add acid, ammonia or amine of your own choice':
    'Keine Säure, kein Ammoniak und kein Amin nach eigener Wahl zugeben.',

  // bath-conductivity
  '{$station}: conductivity of the bath at {$value}, above {$limit}.':
    '{$station}: Leitfähigkeit des Bads bei {$value}, über {$limit}.',
  'Salts from cleaner, phosphate or tap water break the dispersion and the bond.':
    'Salze aus Reiniger, Phosphat oder Leitungswasser lassen die Dispersion brechen und zerstören die Bindung.',
  'Read again with a fresh sample and a checked meter.':
    'Mit einer frischen Probe und einem geprüften Messgerät erneut ablesen.',
  'Read the last rinse before the tank, and the make-up water.':
    'Letzte Spüle vor dem Becken und Ergänzungswasser messen.',
  'Tell the process engineer; part of the bath may have to be changed.':
    'Prozessingenieur informieren; möglicherweise muss ein Teil des Bads gewechselt werden.',
  'dilute it to bring the number down': 'Das Bad nicht verdünnen, um den Wert zu senken.',

  // bath-viscosity
  '{$station}: viscosity of the bath at {$value}; the limit is {$limit}.':
    '{$station}: Viskosität des Bads bei {$value}; der Grenzwert ist {$limit}.',
  'Film follows viscosity: too thin, or too thick and uneven.':
    'Die Schicht folgt der Viskosität: entweder zu dünn oder zu dick und ungleichmäßig.',
  'Read again: same spindle, same speed, same temperature.':
    'Erneut ablesen: gleiche Spindel, gleiche Drehzahl, gleiche Temperatur.',
  'Compare temperature and solids; foam and settling move it too.':
    'Temperatur und Feststoffgehalt vergleichen; auch Schaum und Absetzen verändern die Viskosität.',
  'thin it by feel': 'Das Bad nicht nach Gefühl verdünnen.',

  // bath-foam
  '{$station}: somebody saw foam on the bath at {$clock}.':
    '{$station}: Jemand hat Schaum auf dem Bad gesehen ({$clock}).',
  'Foam marks the film; and one part of air in a hundred reads as three parts too few solids.':
    'Schaum hinterlässt Spuren in der Schicht; und ein Teil Luft in hundert Teilen lässt drei Teile Feststoff zu wenig ablesen.',
  'Have hoist and paddle parked and locked by somebody who may; then skim it from outside the guard, and let the rest settle before any density is read.':
    'Hubwerk und Rührwerk von einer befugten Person abstellen und gegen Wiedereinschalten sichern lassen; dann den Schaum von außerhalb der Schutzeinrichtung abschöpfen und den Rest zusammenfallen lassen, bevor eine Dichte abgelesen wird.',
  'Find where air gets in: fall over the weir, a leaking suction, a splashing return. Draw a panel before the next rack.':
    'Herausfinden, wo Luft hineinkommt: Fallhöhe am Überlauf, undichte Saugleitung, spritzender Rücklauf. Vor dem nächsten Gestell ein Prüfblech ziehen.',
  'correct solids on a reading through foam':
    'Den Feststoffgehalt nicht nach einem Messwert korrigieren, der durch Schaum hindurch genommen wurde.',

  // bath-skin
  '{$station}: somebody saw skin or lumps on the bath at {$clock}.':
    '{$station}: Jemand hat Haut oder Klumpen auf dem Bad gesehen ({$clock}).',
  'Skin does not dissolve again; it plugs the filter and sits on parts as lumps.':
    'Haut löst sich nicht wieder auf; sie verstopft den Filter und sitzt als Klumpen auf Teilen.',
  'Have hoist and paddle parked and locked by somebody who may; then skim it off from outside the guard and keep what you find.':
    'Hubwerk und Rührwerk von einer befugten Person abstellen und gegen Wiedereinschalten sichern lassen; dann Haut und Klumpen von außerhalb der Schutzeinrichtung abschöpfen und den Fund aufbewahren.',
  'Once they run again, see that loop and paddle move the whole surface; check the last racks for lumps, and the filter’s pressure drop.':
    'Sobald Hubwerk und Rührwerk wieder laufen, darauf achten, dass Kreislauf und Rührwerk die ganze Oberfläche bewegen; die letzten Gestelle auf Klumpen und den Druckabfall des Filters prüfen.',
  'stir it back in': 'Haut und Klumpen nicht wieder einrühren.',

  // film
  '{$station}: film of the panel at {$value}; the limit is {$limit}.':
    '{$station}: Schichtdicke des Prüfblechs {$value}; der Grenzwert ist {$limit}.',
  'A thin film starves the bond; a thick one splits in itself or is swept off.':
    'Eine dünne Schicht gibt der Bindung zu wenig; eine dicke spaltet sich in sich selbst oder wird weggeschoben.',
  'Measure again, with the base reading of the bare metal taken off.':
    'Erneut messen und dabei den Grundwert des blanken Metalls abziehen.',
  'Tag the racks since the last good panel “hold”.':
    'Gestelle seit dem letzten guten Prüfblech mit „gesperrt“ kennzeichnen.',
  'Compare temperature, solids and withdrawal speed with the run card.':
    'Temperatur, Feststoffgehalt und Ziehgeschwindigkeit mit der Laufkarte vergleichen.',
  'dip a dry film again unasked': 'Eine trockene Schicht nicht ohne Rückfrage noch einmal tauchen.',

  // make-up-water
  '{$station}: make-up water at {$value}, above {$limit}.':
    '{$station}: Ergänzungswasser bei {$value}, über {$limit}.',
  'Hard or salty water can coagulate the dispersion, a little with each make-up.':
    'Hartes oder salziges Wasser kann die Dispersion koagulieren lassen, mit jeder Ergänzung ein wenig.',
  'Put none of it in; read again with a rinsed vessel.':
    'Nichts davon zugeben; mit einem gespülten Gefäß erneut ablesen.',
  'Have the deioniser’s cartridge changed or regenerated.':
    'Patrone der Vollentsalzung wechseln oder regenerieren lassen.',
  'Write down what was already put in, and from which container.':
    'Aufschreiben, was schon zugegeben wurde und aus welchem Gebinde.',
  'use tap water instead': 'Stattdessen kein Leitungswasser verwenden.',

  // first-off-missing
  '{$station}: made up at {$clock}, and in {$required} nobody wrote down a first-off panel.':
    '{$station}: Bad ergänzt ({$clock}), und in {$required} hat niemand ein erstes Prüfblech aufgeschrieben.',
  'Racks go out on a bath whose film nobody has measured since it was changed.':
    'Gestelle verlassen ein Bad, dessen Schicht niemand gemessen hat, seit es verändert wurde.',
  'Draw a panel, dry it and measure its film.':
    'Prüfblech ziehen, trocknen und seine Schicht messen.',
  'Write down the panel; go on if it is good.':
    'Prüfblech aufschreiben; weitermachen, wenn es gut ist.',
  'If it is not: tag the racks since the make-up “hold”.':
    'Wenn nicht: Gestelle seit der Ergänzung mit „gesperrt“ kennzeichnen.',
  'take the last panel before the make-up for it':
    'Das letzte Prüfblech vor der Ergänzung nicht dafür nehmen.',
};
