/** German for the texts of `rules/stations/spray-booth-film.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothFilm: Texts = {
  '{$station}: film of the coat at {$value}; the limit is {$limit}.':
    '{$station}: Dicke dieser Schicht {$value}; der Grenzwert ist {$limit}.',
  'A thin film starves the bond; a thick one is a question to ask, and a very thick one, above 50 µm most often, splits within itself.':
    'Eine dünne Schicht gibt der Bindung zu wenig; bei einer dicken ist nachzufragen, und eine sehr dicke, meist über 50 µm, spaltet sich in sich selbst.',
  'Repeat the reading, with the base read on the same bare surface.':
    'Messung wiederholen, mit dem Grundwert von derselben blanken Oberfläche.',
  'Tag every rack since the last good panel “hold”.':
    'Jedes Gestell seit dem letzten guten Prüfblech mit „gesperrt“ kennzeichnen.',
  'Purge, check gun, cap and pot, spray a panel; the process engineer decides on what is held.':
    'Freispritzen; Spritzpistole, Luftkappe und Druckbehälter prüfen; ein Prüfblech spritzen; über das Gesperrte entscheidet der Prozessingenieur.',
  'coat again over a dry film unasked':
    'Nicht ungefragt über eine trockene Schicht noch einmal beschichten.',
  'take a reading on an edge for the film':
    'Einen Messwert an einer Kante nicht als Schichtdicke nehmen.',
  '{$station}: film towards the edge at {$value}; the limit is {$limit}.':
    '{$station}: Schichtdicke zur Kante hin {$value}; der Grenzwert ist {$limit}.',
  'Film that is thin towards the edge lifts there first; thick, it runs and splits.':
    'Eine zur Kante hin dünne Schicht löst sich dort zuerst; eine dicke läuft ab und spaltet sich.',
  '{$station}: film of all coats together at {$value}; the limit is {$limit}.':
    '{$station}: Dicke aller Schichten zusammen {$value}; der Grenzwert ist {$limit}.',
  '{$station}: film of the panels, the last at {$value}, lies off its usual {$reference} in a way that is no chance.':
    '{$station}: Die Schichtdicke der Prüfbleche, zuletzt {$value}, weicht vom üblichen Wert {$reference} ab, und das nicht zufällig.',
  'Something has moved: gun, pot, solids or hand; the limits may be next.':
    'Etwas hat sich verändert: Spritzpistole, Druckbehälter, Feststoffgehalt oder Handführung; als Nächstes können die Grenzwerte erreicht sein.',
  'Repeat the panel, with the base read on the same bare surface.':
    'Prüfblech wiederholen, mit dem Grundwert von derselben blanken Oberfläche.',
  'See what changed since it began: drum, needle, cap, pot, sprayer.':
    'Nachsehen, was sich seit dem Beginn geändert hat: Fass, Nadel, Luftkappe, Druckbehälter, wer spritzt.',
  'Tag the racks since then “hold” where a second panel says the same.':
    'Die Gestelle seit dem Beginn mit „gesperrt“ kennzeichnen, wenn ein zweites Prüfblech dasselbe zeigt.',
  'turn the gun on one panel': 'Die Spritzpistole nicht nach einem einzigen Prüfblech verstellen.',
  'learn the baseline anew to be rid of it':
    'Den üblichen Wert nicht neu lernen lassen, um den Alarm loszuwerden.',
  '{$station}: nobody wrote down a film panel for {$reached}; one is due every {$required}.':
    '{$station}: Seit {$reached} hat niemand ein Prüfblech für die Schichtdicke eingetragen; fällig ist eines alle {$required}.',
  'If the next panel fails, all parts since the last one are in doubt.':
    'Fällt das nächste Prüfblech durch, sind alle Teile seit dem letzten zweifelhaft.',
  'Spray a panel beside the parts and dry it with them.':
    'Ein Prüfblech neben den Teilen spritzen und mit ihnen trocknen.',
  'Read the base on the bare panel, then the coat, three places at least; enter both.':
    'Den Grundwert am blanken Prüfblech messen, dann die Schicht, an mindestens drei Stellen; beides eintragen.',
  'Write down that the panel was taken.': 'Eintragen, dass das Prüfblech gemacht wurde.',
  'enter a film that nobody read': 'Keine Schichtdicke eintragen, die niemand gemessen hat.',
};
