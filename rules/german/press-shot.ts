/** German for the texts of `rules/stations/press-shot.ts`. */
import type { Texts } from './texts.ts';

export const pressShot: Texts = {
  // insert-waits
  '{$station}: the first insert has lain in the hot mould since {$clock}, longer than the {$required} it may, and the mould is not closed.':
    '{$station}: Das erste Einlegeteil liegt seit {$clock} in der heißen Form, länger als die erlaubten {$required}, und die Form ist nicht geschlossen.',
  'The film cures on the insert before the rubber comes: it looks sound, and the rubber peels off it.':
    'Die Schicht vernetzt auf dem Einlegeteil, bevor der Kautschuk kommt: Sie sieht gut aus, und der Gummi schält sich von ihr ab.',
  'With the press made safe by its own instruction, take the inserts out and scrap them; or mould and mark the shot “hold”.':
    'Presse nach ihrer Betriebsanweisung sichern, dann die Einlegeteile herausnehmen und verschrotten; oder den Schuss pressen und mit „gesperrt“ kennzeichnen.',
  'See what kept it: a part that does not fit, release agent, a hand short.':
    'Nachsehen, was aufgehalten hat: ein Teil, das nicht passt, Trennmittel, fehlendes Personal.',
  'Tell the process engineer where it happens again; a map of the mould’s heat helps.':
    'Den Prozessingenieur informieren, wenn es wieder vorkommt; eine Temperaturaufnahme der Form hilft.',
  'close anyway, unmarked': 'Die Form nicht trotzdem schließen, ohne den Schuss zu kennzeichnen.',
  // cure-short
  '{$station}: the mould closed at {$clock} and was let go after {$reached} of {$required}.':
    '{$station}: Die Form, geschlossen {$clock}, blieb nur {$reached} zu; nötig sind {$required}.',
  'An under-cured part is spongy, and adhesive and rubber have not bonded.':
    'Ein untervulkanisiertes Teil ist schwammig, und Haftmittel und Gummi haben sich nicht verbunden.',
  'Tag the shot “hold”, all cavities.': 'Den Schuss mit „gesperrt“ kennzeichnen, alle Kavitäten.',
  'Find the cause: timer, hand mode, a stop of the press.':
    'Ursache suchen: Zeitgeber, Handbetrieb, Halt der Presse.',
  'The process engineer decides by the compound’s cure curve (ISO 6502) and a bond test.':
    'Der Prozessingenieur entscheidet nach der Vulkanisationskurve der Kautschukmischung (ISO 6502) und einer Prüfung der Bindung.',
  'cure it again': 'Den Schuss nicht noch einmal vulkanisieren.',
  // pressure-low
  '{$station}: pressure at {$value} while curing, below {$limit}, for {$duration}.':
    '{$station}: Druck beim Vulkanisieren {$value}, unter {$limit}, seit {$duration}.',
  'Rubber cures porous and lifts off the insert.':
    'Der Gummi vulkanisiert porös und hebt sich vom Einlegeteil ab.',
  'Find the cause: pump, seal, compound short-weighed, flash that holds the mould apart.':
    'Ursache suchen: Pumpe, Dichtung, zu knapp eingewogene Kautschukmischung, Austrieb, der die Form auseinanderhält.',
  'raise the pressure past the press’s plate':
    'Den Druck nicht über die Angabe auf dem Typenschild der Presse erhöhen.',
  'Hot mould; keep hands and tools out of a press that can close. Lock out by local rules. Stored pressure: work on hydraulics is for licensed people.':
    'Heiße Form; Hände und Werkzeug aus einer Presse heraushalten, die schließen kann. Nach den örtlichen Vorschriften gegen Wiedereinschalten sichern. Gespeicherter Druck: Arbeiten an der Hydraulik nur durch zugelassene Fachleute.',
};
