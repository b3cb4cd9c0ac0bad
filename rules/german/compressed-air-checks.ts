/** German for the texts of `rules/stations/compressed-air-checks.ts`. */
import type { Texts } from './texts.ts';

export const compressedAirChecks: Texts = {
  // blotter-failed
  '{$station}: the blotter test of {$clock} showed oil or water; all that was sprayed or blasted since the last clean one is in doubt.':
    '{$station}: Die Löschblattprobe von {$clock} zeigte Öl oder Wasser; alles, was seit der letzten sauberen gespritzt oder gestrahlt wurde, ist zweifelhaft.',
  'Oil and water in the air make fish-eyes in the film and bare spots under it.':
    'Öl und Wasser in der Luft machen Fischaugen in der Schicht und blanke Stellen darunter.',
  'Stop guns and blasting on this air.': 'Spritzen und Strahlen mit dieser Luft beenden.',
  'Tag all parts coated or blasted since the last clean test “hold”.':
    'Alle seit der letzten sauberen Probe beschichteten oder gestrahlten Teile mit „gesperrt“ kennzeichnen.',
  'Have separators drained and their elements seen to; spray and blast again only after a clean test, a minute at least onto a new white collector.':
    'Abscheider entwässern und ihre Elemente in Ordnung bringen lassen; erst nach einer sauberen Probe (mindestens eine Minute auf ein neues weißes Löschblatt) wieder spritzen und strahlen.',
  'wipe the nozzle and try once more': 'Nicht die Düse abwischen, um es noch einmal zu versuchen.',
  'count a dew point within its limit as clean air':
    'Einen Taupunkt innerhalb des Grenzwerts nicht als saubere Luft werten.',
  'Stored pressure. Vent and lock out by local rules. Keep hands and face out of the jet; eye protection.':
    'Gespeicherter Druck. Nach den örtlichen Vorschriften drucklos machen und gegen Wiedereinschalten sichern. Hände und Gesicht aus dem Luftstrahl halten; Augenschutz.',
  // blotter-late
  '{$station}: nobody wrote down a blotter test of the air for {$reached}; one is due every {$required}.':
    '{$station}: Seit {$reached} hat niemand eine Löschblattprobe der Luft aufgeschrieben; fällig ist eine alle {$required}.',
  'No sensor here sees oil; each hour without a test is an hour of parts in doubt if the next one fails.':
    'Kein Sensor hier sieht Öl; jede Stunde ohne Probe ist eine Stunde zweifelhafter Teile, wenn die nächste schlecht ausfällt.',
  'Let the air stream onto a clean white collector for a minute at least, at the point of use (ASTM D4285).':
    'Die Luft an der Verbrauchsstelle mindestens eine Minute auf ein sauberes weißes Löschblatt strömen lassen (ASTM D4285).',
  'Enter 0 for a clean collector, 1 for any trace of oil or water.':
    '0 für ein sauberes Löschblatt eintragen, 1 für jede Spur von Öl oder Wasser.',
  'Write down that the test was made.': 'Aufschreiben, dass die Probe gemacht wurde.',
  'take the dew point for it': 'Den Taupunkt nicht als Ersatz für die Probe nehmen.',
  'enter a test that nobody made': 'Keine Probe eintragen, die niemand gemacht hat.',
  // separator-round-late
  '{$station}: nobody wrote down for {$reached} that separators and receiver were drained; it is due every {$required}.':
    '{$station}: Seit {$reached} hat niemand aufgeschrieben, dass Abscheider und Druckluftspeicher entwässert wurden; fällig ist es alle {$required}.',
  'A separator that is full lets water and oil through to guns and blast.':
    'Ein voller Abscheider lässt Wasser und Öl zu Spritzpistolen und Strahlanlage durch.',
  'Drain separators and receiver by their instruction; see that the automatic drains work.':
    'Abscheider und Druckluftspeicher nach ihrer Betriebsanweisung entwässern; nachsehen, ob die automatischen Kondensatablässe arbeiten.',
  'Write down that it was done, and what came: clear, milky or oily.':
    'Aufschreiben, dass es getan wurde und was kam: klar, milchig oder ölig.',
  'Much more than usual: have the dryer seen to, and make a blotter test.':
    'Viel mehr als üblich: Lufttrockner in Ordnung bringen lassen und eine Löschblattprobe machen.',
  'take a bowl off under pressure': 'Keinen Abscheiderbehälter unter Druck abnehmen.',
  'leave a drain running to save the round':
    'Keinen Kondensatablass offen lassen, um sich die Runde zu sparen.',
};
