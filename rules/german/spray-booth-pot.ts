/** German for the texts of `rules/stations/spray-booth-pot.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothPot: Texts = {
  '{$station}: pot at {$value}, {$difference} from {$reference}, for {$duration}.':
    '{$station}: Druckbehälter bei {$value}, {$difference} Abweichung von {$reference}, seit {$duration}.',
  'More or less material comes to the gun, and the film moves with it.':
    'Mehr oder weniger Material kommt zur Spritzpistole, und die Schichtdicke ändert sich mit.',
  'Check the pot’s regulator and the header.':
    'Den Druckregler des Druckbehälters und die Hauptleitung der Druckluft prüfen.',
  'Check the level, and the filter between pot and gun.':
    'Füllstand prüfen, ebenso den Filter zwischen Druckbehälter und Spritzpistole.',
  'Spray a panel before the next part.': 'Vor dem nächsten Teil ein Prüfblech spritzen.',
  'open the pot under pressure': 'Den Druckbehälter nicht unter Druck öffnen.',
  'make up for it with the fluid knob': 'Das nicht mit dem Materialmengenregler ausgleichen.',
  '{$station}: pot at {$value}, at or above {$limit}, close to what its plate allows.':
    '{$station}: Druckbehälter bei {$value}, auf oder über {$limit}, nahe an dem, was sein Typenschild zulässt.',
  'A pot over its rating can burst, or throw its lid.':
    'Ein Druckbehälter über seinem zulässigen Druck kann bersten oder seinen Deckel wegschleudern.',
  'Keep people away from the pot.': 'Personen vom Druckbehälter fernhalten.',
  'Turn its air off at the shut-off valve that can be reached without standing by the pot.':
    'Die Luft zum Druckbehälter an dem Absperrventil abstellen, das erreichbar ist, ohne neben dem Druckbehälter zu stehen.',
  'Call the maintainer: regulator and relief valve are seen to before it is used again.':
    'Instandhaltung rufen: Druckregler und Sicherheitsventil in Ordnung bringen lassen, bevor der Druckbehälter wieder benutzt wird.',
  'open it under pressure': 'Den Druckbehälter nicht unter Druck öffnen.',
  'plug or screw down the relief valve':
    'Das Sicherheitsventil nicht verschließen und nicht zuschrauben.',
  'spray it empty first': 'Nicht erst noch leerspritzen.',
  'The relief valve protects; this page is none. Work on the pot is for licensed people, vented and locked out.':
    'Schutz bietet das Sicherheitsventil, nicht diese Seite. Arbeiten am Druckbehälter nur durch zugelassene Fachleute, drucklos und gegen Wiedereinschalten gesichert.',
  '{$station}: nobody wrote down a test of the pot’s relief valve for {$reached}; it is due every {$required}.':
    '{$station}: Seit {$reached} hat niemand eine Prüfung des Sicherheitsventils am Druckbehälter eingetragen; fällig ist sie alle {$required}.',
  'A relief valve that sticks is found when the pot needs it.':
    'Ein klemmendes Sicherheitsventil zeigt sich erst, wenn der Druckbehälter es braucht.',
  'Have it tested or replaced by a licensed person.':
    'Das Sicherheitsventil von zugelassenen Fachleuten prüfen oder ersetzen lassen.',
  'Until then keep people away from the pot under pressure as the site’s rule says.':
    'Bis dahin Personen vom Druckbehälter fernhalten, solange er unter Druck steht, wie es die Regel des Werks sagt.',
  'Write down that it was tested.': 'Eintragen, dass es geprüft wurde.',
  'test it by raising the pot’s pressure':
    'Das Sicherheitsventil nicht prüfen, indem der Druck im Druckbehälter erhöht wird.',
  '{$station}: the pot’s paddle has stood since {$clock}, with the pot filled.':
    '{$station}: Das Rührpaddel steht seit {$clock}, bei gefülltem Druckbehälter.',
  'Solids settle in the pot; the guns draw thin material first, then thick.':
    'Feststoff setzt sich im Druckbehälter ab; die Spritzpistolen ziehen erst dünnes Material, dann dickes.',
  'Check the air to the paddle’s motor and its regulator.':
    'Die Luft zum Motor des Rührpaddels und dessen Druckregler prüfen.',
  'Stop spraying until it turns; then let it stir, slowly, as the data sheet says.':
    'Spritzen einstellen, bis das Rührpaddel sich dreht; dann rühren lassen, langsam, wie es das Datenblatt sagt.',
  'Spray a panel before parts are released.':
    'Ein Prüfblech spritzen, bevor Teile freigegeben werden.',
  'start it fast': 'Das Rührpaddel nicht schnell anfahren.',
  'stir by blowing air in': 'Nicht durch Einblasen von Luft rühren.',
  'use the speed of a drum agitator': 'Nicht die Drehzahl eines Fassrührwerks verwenden.',
  'Stored pressure. Vent and lock out by local rules. Turning shaft: lock out before hands go near.':
    'Gespeicherter Druck. Nach den örtlichen Vorschriften drucklos machen und gegen Wiedereinschalten sichern. Drehende Welle: gegen Wiedereinschalten sichern, bevor Hände in die Nähe kommen.',
  '{$station}: level in the pot at {$value}, below {$limit}; the dip tube soon draws air.':
    '{$station}: Füllstand im Druckbehälter bei {$value}, unter {$limit}; das Steigrohr zieht bald Luft.',
  'Air in the line spits at the gun and leaves bubbles in the film.':
    'Luft in der Leitung lässt die Spritzpistole spucken und hinterlässt Blasen in der Schicht.',
  'Stop spraying and shut off the pot’s air before the tube is bare.':
    'Spritzen beenden und die Luft des Druckbehälters absperren, bevor das Steigrohr freiliegt.',
  'Vent the pot by its instruction, then fill or change it.':
    'Druckbehälter nach seiner Anleitung drucklos machen, dann füllen oder wechseln.',
  'Purge until no bubble comes; measure a first part before release.':
    'Freispritzen, bis keine Blase mehr kommt; vor der Freigabe ein Erstteil messen.',
  'spray on to the last drop': 'Nicht bis zum letzten Tropfen weiterspritzen.',
};
