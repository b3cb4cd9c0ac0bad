/** German for the texts of `rules/stations/sensor-health.ts`. */
import type { Texts } from './texts.ts';

export const sensorHealth: Texts = {
  // lost
  'Nothing watches what {$signal} measures, and an alarm that stands on it cannot clear.':
    'Nichts überwacht, was {$signal} misst, und ein Alarm, der darauf beruht, kann nicht enden.',
  'Go by a second sensor or the machine’s own display; read it by hand only where that is safe, and write it down.':
    'Einen zweiten Sensor oder die Anzeige der Maschine heranziehen; von Hand nur messen, wo das gefahrlos ist, und aufschreiben.',
  'See from outside whether the sensor has power, and its cable or radio link is whole.':
    'Von außen prüfen, ob der Sensor Spannung hat und sein Kabel oder seine Funkverbindung heil ist.',
  'Tell maintenance; go by the other reading until it speaks again.':
    'Instandhaltung informieren; den anderen Messwert heranziehen, bis der Sensor wieder sendet.',
  'take silence as all being well': 'Aus dem Schweigen nicht schließen, dass alles in Ordnung ist.',
  'Reach the sensor only where it is safe to; the place it watches may be the hazard.':
    'An den Sensor nur gehen, wo es gefahrlos ist; die Stelle, die er überwacht, kann selbst die Gefahr sein.',
  // stuck
  'A reading that stands still hides what happens; its limits are judged on an old value.':
    'Ein Messwert, der stillsteht, verbirgt, was geschieht; seine Grenzwerte werden an einem alten Wert geprüft.',
  'Compare it with a second sensor or the machine’s own display; with a hand instrument only where that is safe.':
    'Mit einem zweiten Sensor oder der Anzeige der Maschine vergleichen; mit einem Handmessgerät nur, wo das gefahrlos ist.',
  'See whether the sensor, its transmitter or its gateway hangs.':
    'Prüfen, ob der Sensor, sein Messumformer oder sein Gateway hängt.',
  'Tell maintenance; go by the other reading until it moves again.':
    'Instandhaltung informieren; den anderen Messwert heranziehen, bis sich dieser wieder bewegt.',
  'trust the value because it looks right': 'Dem Wert nicht trauen, nur weil er richtig aussieht.',
  // lost and stuck where people can be hurt
  'Nothing tells what {$signal} measures, and people can be hurt by it; an alarm that stands on it cannot clear.':
    'Nichts zeigt an, was {$signal} misst, und Menschen können dadurch zu Schaden kommen; ein Alarm, der darauf beruht, kann nicht enden.',
  'A reading that stands still hides what happens, and people can be hurt by it; its limits are judged on an old value.':
    'Ein Messwert, der stillsteht, verbirgt, was geschieht, und Menschen können dadurch zu Schaden kommen; seine Grenzwerte werden an einem alten Wert geprüft.',
  'Keep everyone clear of the place it watches: nobody can tell whether it is safe.':
    'Alle von der Stelle fernhalten, die er überwacht: Niemand kann sagen, ob sie sicher ist.',
  'Tell the shift lead, EHS and maintenance.':
    'Schichtleitung, Arbeitssicherheit und Instandhaltung informieren.',
  'Go by a second sensor or the machine’s own display, from a safe place, until it speaks again.':
    'Von sicherer Stelle aus einen zweiten Sensor oder die Anzeige der Maschine heranziehen, bis der Sensor wieder sendet.',
  'Go by a second sensor or the machine’s own display, from a safe place, until it moves again.':
    'Von sicherer Stelle aus einen zweiten Sensor oder die Anzeige der Maschine heranziehen, bis sich der Messwert wieder bewegt.',
  'go near to read it by hand': 'Nicht in die Nähe gehen, um von Hand zu messen.',
  'The place it watches may be the hazard: the sensor is reached only once maintenance and EHS say that it is safe.':
    'Die Stelle, die der Sensor überwacht, kann selbst die Gefahr sein: An den Sensor erst gehen, wenn Instandhaltung und Arbeitssicherheit sagen, dass es gefahrlos ist.',
  // overdue
  '{$signal}: nobody has entered a reading since {$clock}.':
    '{$signal}: Seit {$clock} hat niemand einen Messwert eingegeben.',
  'What {$signal} tells is not known, and an alarm that stands on it cannot clear.':
    'Was {$signal} anzeigt, ist nicht bekannt, und ein Alarm, der darauf beruht, kann nicht enden.',
  'Take the reading, where that is safe, and enter it.':
    'Messwert aufnehmen, wo das gefahrlos ist, und eingeben.',
  'Where it cannot be taken, write down why and tell the shift lead.':
    'Wo er nicht aufgenommen werden kann: aufschreiben, warum, und die Schichtleitung informieren.',
  'enter a value that nobody read': 'Keinen Wert eingeben, den niemand abgelesen hat.',
  'Take the reading only where it is safe to; the place may be the hazard.':
    'Den Messwert nur aufnehmen, wo es gefahrlos ist; die Stelle kann selbst die Gefahr sein.',
};
