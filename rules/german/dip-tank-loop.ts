/** German for the texts of `rules/stations/dip-tank-loop.ts`. */
import type { Texts } from './texts.ts';

export const dipTankLoop: Texts = {
  'Stored pressure, and a pump and paddle that can start without warning. Vent and lock out by local rules.':
    'Gespeicherter Druck, dazu Pumpe und Rührwerk, die ohne Vorwarnung anlaufen können. Nach den örtlichen Vorschriften drucklos machen und gegen Wiedereinschalten sichern.',

  // circulation-lost
  '{$station}: circulation at {$value}, far below {$reference}, for {$duration}.':
    '{$station}: Umwälzung bei {$value}, weit unter {$reference}, seit {$duration}.',
  'Solids settle and skin forms; film becomes uneven.':
    'Feststoffe setzen sich ab und Haut bildet sich; die Schicht wird ungleichmäßig.',
  'Check the air to the pump and its regulator.':
    'Druckluft zur Pumpe und deren Druckregler prüfen.',
  'Check the filter’s pressure drop; where it is loaded, have it vented and changed by somebody who may.':
    'Druckabfall des Filters prüfen; ist der Filter zugesetzt, ihn von einer befugten Person drucklos machen und wechseln lassen.',
  'See that the tank’s own paddle runs until the loop is back.':
    'Dafür sorgen, dass das eigene Rührwerk des Beckens läuft, bis der Kreislauf wieder in Gang ist.',
  'put a piston or centrifugal pump in its place':
    'Die Pumpe nicht durch eine Kolben- oder Kreiselpumpe ersetzen.',

  // filter-loaded
  '{$station}: filter at {$value}, {$difference} above the clean filter, for {$duration}.':
    '{$station}: Filter bei {$value}, {$difference} über dem sauberen Filter, seit {$duration}.',
  'A loaded filter starves the loop and may tear.':
    'Ein zugesetzter Filter lässt den Kreislauf zu wenig fördern und kann reißen.',
  'Have the loop stopped and its filter vented by somebody who may; then have the 300 µm element changed by its instruction.':
    'Kreislauf von einer befugten Person anhalten und seinen Filter drucklos machen lassen; dann das 300-µm-Filterelement nach seiner Anleitung wechseln lassen.',
  'Keep what it caught and write down what it is.':
    'Aufbewahren, was der Filter aufgefangen hat, und aufschreiben, was es ist.',
  'Find where it comes from: skin, lumps, or what parts carry in.':
    'Herausfinden, woher es kommt: Haut, Klumpen oder was Teile einschleppen.',
  'run on through the bypass': 'Nicht über die Umgehungsleitung weiterfahren.',
  'open the housing under pressure': 'Das Gehäuse nicht unter Druck öffnen.',

  // filter-torn
  '{$station}: filter at {$value} with the loop running, far below the clean filter’s {$reference}.':
    '{$station}: Filter bei {$value} bei laufendem Kreislauf, weit unter {$reference} beim sauberen Filter.',
  'A torn or missing filter lets lumps through to the parts.':
    'Ein gerissener oder fehlender Filter lässt Klumpen zu den Teilen durch.',
  'Have the loop stopped and its filter vented by somebody who may.':
    'Kreislauf von einer befugten Person anhalten und seinen Filter drucklos machen lassen.',
  'Then have it seen whether the element is in its place and whole; have it changed by its instruction and keep the old one.':
    'Dann nachsehen lassen, ob das Filterelement an seinem Platz und unbeschädigt ist; es nach seiner Anleitung wechseln lassen und das alte aufbewahren.',
  'Check the parts since the drop fell for lumps.':
    'Die Teile, die seit dem Sinken des Druckabfalls kamen, auf Klumpen prüfen.',
};
