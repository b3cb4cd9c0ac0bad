/** German for the texts of `rules/stations/dip-tank.ts`. */
import type { Texts } from './texts.ts';

export const dipTank: Texts = {
  // bath-temperature
  '{$station}: bath at {$value}, {$difference} from {$reference}, for {$duration}.':
    '{$station}: Bad bei {$value}, {$difference} Abweichung von {$reference}, seit {$duration}.',
  'The adhesive flows thinner or thicker with temperature, and the film changes with it.':
    'Das Haftmittel fließt je nach Temperatur dünner oder dicker, und die Schicht ändert sich mit.',
  'Check the heat exchanger’s water, its pump and its valve.':
    'Wasser, Pumpe und Ventil des Wärmetauschers prüfen.',
  'Measure a panel; compare its film with the run card.':
    'Prüfblech messen; seine Schicht mit der Laufkarte vergleichen.',
  'Read the density at this temperature before you correct anything.':
    'Dichte bei dieser Temperatur ablesen, bevor etwas korrigiert wird.',
  'heat it with an immersion rod': 'Das Bad nicht mit einem eingetauchten Heizstab erwärmen.',

  // bath-solids
  '{$station}: solids at {$value}, {$difference} from {$reference}.':
    '{$station}: Feststoffgehalt bei {$value}, {$difference} Abweichung von {$reference}.',
  'The next racks get a film that is too thick or too thin.':
    'Die nächsten Gestelle bekommen eine zu dicke oder zu dünne Schicht.',
  'Let the sample’s foam settle, stir it, and read again at the bath’s temperature.':
    'Schaum der Probe zusammenfallen lassen, Probe aufrühren und bei der Temperatur des Bads erneut ablesen.',
  'Add half of the deionised water or adhesive that the correction needs, stir, and measure once more.':
    'Die Hälfte des vollentsalzten Wassers oder Haftmittels zugeben, das die Korrektur braucht, rühren und noch einmal messen.',
  'Measure a panel before the next rack.': 'Vor dem nächsten Gestell ein Prüfblech messen.',
  'use tap water': 'Kein Leitungswasser verwenden.',
  'order adhesive on a reading taken through foam':
    'Kein Haftmittel nach einem Messwert anfordern, der durch Schaum hindurch genommen wurde.',

  // bath-solids-density
  '{$station}: solids by density are too far from {$target}; room to the limit {$value}, counting what the reading can be wrong by.':
    '{$station}: Feststoffgehalt nach Dichte zu weit weg von {$target}; Abstand zum Grenzwert {$value}, die mögliche Abweichung der Ablesung eingerechnet.',
  'Let the sample’s foam settle, stir it, and read density and temperature again.':
    'Schaum der Probe zusammenfallen lassen, Probe aufrühren und Dichte und Temperatur erneut ablesen.',
  'Water is missing only if the level is low too; else look for settling or a wrong lot.':
    'Wasser fehlt nur, wenn auch der Füllstand niedrig ist; sonst nach Absetzen oder einem falschen Los suchen.',
  'Add half of the deionised water or adhesive that the correction needs, stir, measure once more, and draw a panel.':
    'Die Hälfte des vollentsalzten Wassers oder Haftmittels zugeben, das die Korrektur braucht, rühren, noch einmal messen und ein Prüfblech ziehen.',

  // weir-fall
  '{$station}: liquid falls {$value} over the weir, above {$limit}, for {$duration}.':
    '{$station}: Fallhöhe der Flüssigkeit am Überlauf {$value}, über {$limit}, seit {$duration}.',
  'A long fall beats air in; foam marks the film and spoils density readings.':
    'Eine große Fallhöhe schlägt Luft ein; Schaum hinterlässt Spuren in der Schicht und verfälscht die Ablesung der Dichte.',
  'Top up slowly under the surface, with adhesive of the same lot and solids.':
    'Langsam unter der Oberfläche nachfüllen, mit Haftmittel desselben Loses und desselben Feststoffgehalts.',
  'Set the pump’s rate so that the level behind the weir rises.':
    'Fördermenge der Pumpe so einstellen, dass der Füllstand hinter dem Überlauf steigt.',
  'Foam that stays: once the rack is out at the end of its cycle, and hoist and paddle are parked and locked by somebody who may, skim it; a loaded conveyor is not stopped inside an oven for this. Measure a panel.':
    'Schaum, der bleibt: abschöpfen, sobald das Gestell am Ende seines Zyklus heraus ist und eine befugte Person Hubwerk und Rührwerk abgestellt und gegen Wiedereinschalten gesichert hat; ein beladener Förderer wird dafür nicht in einem Ofen angehalten. Prüfblech messen.',
  'pour from a height': 'Nicht aus der Höhe eingießen.',
  'add defoamer of your own choice': 'Keinen Entschäumer nach eigener Wahl zugeben.',
  'lean over the tank while racks move':
    'Sich nicht über das Becken beugen, während sich Gestelle bewegen.',

  // withdrawal
  '{$station}: parts drawn out at {$value}, {$difference} from {$reference}.':
    '{$station}: Teile mit {$value} herausgezogen, {$difference} Abweichung von {$reference}.',
  'Faster leaves a thicker film and slower a thinner one, uneven along the part.':
    'Schneller hinterlässt eine dickere Schicht, langsamer eine dünnere, ungleichmäßig entlang des Teils.',
  'Tag the rack “hold” where it is taken off.':
    'Gestell dort, wo es abgenommen wird, mit „gesperrt“ kennzeichnen.',
  'Have the hoist’s or the conveyor’s drive seen to.':
    'Antrieb des Hubwerks oder des Förderers in Ordnung bringen lassen.',
  'correct it with dilution': 'Das nicht durch Verdünnen ausgleichen.',
  'Moving racks and chain. Isolate and lock out by local rules before any work on them.':
    'Bewegte Gestelle und Kette. Vor jeder Arbeit daran nach den örtlichen Vorschriften von allen Energiequellen trennen und gegen Wiedereinschalten sichern.',

  // hazards
  'The film becomes too thick or too thin: temperature, solids or speed of withdrawal moved.':
    'Die Schicht wird zu dick oder zu dünn: Temperatur, Feststoffgehalt oder Ziehgeschwindigkeit hat sich verändert.',
  'A long fall beats foam into the bath.': 'Eine große Fallhöhe schlägt Schaum in das Bad.',
  'Circulation stops: solids settle and skin forms.':
    'Die Umwälzung bleibt stehen: Feststoffe setzen sich ab und Haut bildet sich.',
  'A loaded filter starves the loop; a torn one lets particles through.':
    'Ein zugesetzter Filter lässt den Kreislauf zu wenig fördern; ein gerissener lässt Partikel durch.',
  'The bath is spoilt by what parts carry in, by hard water or by skin.':
    'Das Bad wird verdorben durch das, was Teile einschleppen, durch hartes Wasser oder durch Haut.',
};
