/** German for the texts of `rules/stations/compressed-air.ts`. */
import type { Texts } from './texts.ts';

export const compressedAir: Texts = {
  // air-dew-point, pipe-margin
  '{$station}: air at pressure dew point {$value}, above {$limit}, for {$duration}.':
    '{$station}: Drucktaupunkt der Luft {$value}, über {$limit}, seit {$duration}.',
  '{$station}: margin of the coldest pipe over the dew point of the air {$value}, below {$limit}, for {$duration}; under zero water settles in it.':
    '{$station}: Abstand des kältesten Rohrs zum Taupunkt der Luft {$value}, unter {$limit}, seit {$duration}; unter null schlägt sich im Rohr Wasser nieder.',
  'Liquid water reaches gun and film: craters, pinholes, blisters, rust, a weak bond.':
    'Flüssiges Wasser gelangt in Spritzpistole und Schicht: Krater, Nadelstiche, Blasen, Rost, eine schwache Bindung.',
  'Stop spraying parts.': 'Keine Teile mehr spritzen.',
  'Drain the separators by their instruction; read the dryer’s own display.':
    'Abscheider nach ihrer Betriebsanweisung entwässern; Anzeige des Lufttrockners ablesen.',
  'Once the reading is back within its limit, make a blotter test (ASTM D4285) and spray a test panel; go on if neither shows water or oil.':
    'Sobald der Messwert wieder innerhalb des Grenzwerts liegt, eine Löschblattprobe (ASTM D4285) machen und ein Prüfblech spritzen; weitermachen, wenn beides weder Wasser noch Öl zeigt.',
  'go on because the gauge looks right':
    'Nicht weitermachen, nur weil das Manometer richtig aussieht.',
  'open a bowl or fitting under pressure':
    'Keinen Abscheiderbehälter und keine Verschraubung unter Druck öffnen.',
  'point air at anyone': 'Druckluft nie auf jemanden richten.',
  // header-low
  '{$station}: header at {$value}, below {$limit}, for {$duration}.':
    '{$station}: Druck in der Hauptleitung {$value}, unter {$limit}, seit {$duration}.',
  'Guns, agitators and pumps all slow down together: film, mixing and circulation suffer.':
    'Spritzpistolen, Rührwerke und Pumpen werden alle zugleich langsamer: Schicht, Mischen und Umwälzung leiden.',
  'See whether the compressor runs and loads.':
    'Nachsehen, ob der Kompressor läuft und auf Last geht.',
  'Listen for a leak or a drain that stays on.':
    'Auf ein Leck oder einen Kondensatablass horchen, der offen bleibt.',
  'Check the agitators and pumps from outside their guards; write down which slowed.':
    'Rührwerke und Pumpen von außerhalb ihrer Schutzeinrichtungen prüfen; aufschreiben, welche langsamer wurden.',
  'raise regulators to make up for it': 'Keinen Druckregler höher stellen, um es auszugleichen.',
  'feel for a leak with the hand': 'Nicht mit der Hand nach einem Leck tasten.',
  'Stored pressure. Vent and lock out by local rules. Agitators and air tools start when the pressure returns.':
    'Gespeicherter Druck. Nach den örtlichen Vorschriften drucklos machen und gegen Wiedereinschalten sichern. Rührwerke und Druckluftwerkzeuge laufen an, wenn der Druck wiederkommt.',
  // separator-dp
  '{$station}: pressure drop across the separator at {$value}, above {$limit}, for {$duration}.':
    '{$station}: Druckabfall am Abscheider {$value}, über {$limit}, seit {$duration}.',
  'A loaded element lets water and oil through to the guns.':
    'Ein zugesetztes Element lässt Wasser und Öl zu den Spritzpistolen durch.',
  'Have the separator depressurised and locked out by somebody who may, by its instruction.':
    'Den Abscheider von jemandem, der dazu befugt ist, nach der Betriebsanweisung drucklos machen und gegen Wiedereinschalten sichern lassen.',
  'Have the element changed and the drain tested.':
    'Das Element wechseln und den Kondensatablass prüfen lassen.',
  'Write down the pressure drop before and after.':
    'Den Druckabfall davor und danach aufschreiben.',
  'open a bowl under pressure': 'Keinen Abscheiderbehälter unter Druck öffnen.',
  // hazards
  'Liquid water in the air spoils film and prepared metal.':
    'Flüssiges Wasser in der Luft verdirbt Schicht und vorbereitetes Metall.',
  'Guns, agitators and pumps lose their air.':
    'Spritzpistolen, Rührwerke und Pumpen verlieren ihre Druckluft.',
  'A loaded separator lets water and oil through.':
    'Ein zugesetzter Abscheider lässt Wasser und Öl durch.',
  'Oil in the air makes small craters (fish-eyes) and bare spots in the film.':
    'Öl in der Luft macht kleine Krater (Fischaugen) und blanke Stellen in der Schicht.',
  'Oil vapour and fine particles pass every test of the shift.':
    'Öldampf und feine Partikel fallen bei keinem Test der Arbeitsschicht auf.',
  'have a laboratory sample the air at the point of use, as often as the quality plan says; a class of ISO 8573-1 for oil or particles comes from there alone':
    'die Luft an der Verbrauchsstelle von einem Labor beproben lassen, so oft es der Qualitätsplan sagt; eine Klasse nach ISO 8573-1 für Öl oder Partikel kommt nur von dort',
};
