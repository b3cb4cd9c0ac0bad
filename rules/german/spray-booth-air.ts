/** German for the texts of `rules/stations/spray-booth-air.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothAir: Texts = {
  '{$station}: air through the booth at {$value}, below {$limit}, for {$duration} while spraying.':
    '{$station}: Luftgeschwindigkeit in der Spritzkabine {$value}, unter {$limit}, seit {$duration} beim Spritzen.',
  'Vapour and overspray stay with whoever sprays, and gather in the room.':
    'Dampf und Spritznebel bleiben bei dem, der spritzt, und sammeln sich im Raum.',
  'Stop spraying and make the guns safe.': 'Spritzen beenden und Spritzpistolen sichern.',
  'Leave the booth by the site’s rule; whoever feels unwell goes to fresh air.':
    'Spritzkabine nach der Regel des Werks verlassen; wer sich unwohl fühlt, geht an die frische Luft.',
  'Have fan and filters seen to; spray again only once the flow is back and stays.':
    'Ventilator und Filter in Ordnung bringen lassen; erst wieder spritzen, wenn der Luftstrom zurück ist und bleibt.',
  'spray on with a door open': 'Nicht bei offener Tür weiterspritzen.',
  'The booth’s own interlock protects; this page is none. Fan, electrics and filters: lock out by local rules.':
    'Schutz bietet die eigene Verriegelung der Spritzkabine, nicht diese Seite. Ventilator, Elektrik und Filter: nach den örtlichen Vorschriften gegen Wiedereinschalten sichern.',
  '{$station}: the exhaust has not been proven to flow since {$clock}, for {$duration} while spraying.':
    '{$station}: Abluftstrom nicht nachgewiesen seit {$clock}, seit {$duration} beim Spritzen.',
  '{$station}: nobody wrote down a survey of the air speed over the booth’s face for {$reached}; it is due every {$required}.':
    '{$station}: Seit {$reached} hat niemand eine Messung der Luftgeschwindigkeit über den Eintrittsquerschnitt der Spritzkabine eingetragen; fällig ist sie alle {$required}.',
  'Nobody knows whether what the sensor reads still stands for the whole face.':
    'Niemand weiß, ob der Messwert des Sensors noch für den ganzen Eintrittsquerschnitt gilt.',
  'With nobody spraying, have the speed measured over the whole face, on a grid, with filters as they are used.':
    'Während niemand spritzt, die Luftgeschwindigkeit über den ganzen Eintrittsquerschnitt im Raster messen lassen, mit den Filtern wie im Betrieb.',
  'Set the sensor’s reading against its average; enter both in the note.':
    'Den Messwert des Sensors mit dem Mittelwert der Messung vergleichen; beide in der Notiz eintragen.',
  'Write down that it was surveyed.': 'Eintragen, dass gemessen wurde.',
  'take one place for the average':
    'Den Messwert einer einzelnen Stelle nicht als Mittelwert nehmen.',
  '{$station}: exhaust filters at {$value}, {$difference} above clean ones, for {$duration}.':
    '{$station}: Abluftfilter bei {$value}, {$difference} über sauberen Filtern, seit {$duration}.',
  'The air slows, overspray blows back, and the load on the filters is fuel.':
    'Die Luft wird langsamer, Spritznebel schlägt zurück, und was auf den Filtern liegt, ist Brandlast.',
  'Finish the part and stop spraying.': 'Das Teil fertig spritzen, dann das Spritzen beenden.',
  'With the fan locked out have the filters changed; bag them at once as residue waste, damp as the data sheet says.':
    'Die Filter wechseln lassen, während der Ventilator gegen Wiedereinschalten gesichert ist; sie sofort als Rückstandsabfall in Säcke packen, feucht, wie es das Datenblatt sagt.',
  'Write down the change, and the pressure drop of the clean ones.':
    'Den Wechsel eintragen, dazu den Druckabfall der sauberen Filter.',
  'knock them clean': 'Die Filter nicht ausklopfen.',
  'scrape with steel': 'Nicht mit Stahl schaben.',
  'leave them in the building overnight': 'Die Filter nicht über Nacht im Gebäude lassen.',
  'Fan: lock out by local rules. Overspray burns: no sparks, no hot work.':
    'Ventilator: nach den örtlichen Vorschriften gegen Wiedereinschalten sichern. Spritznebel und seine Ablagerungen brennen: keine Funken, keine Feuerarbeiten.',
  '{$station}: exhaust filters at {$value} with the fan running, far below the {$reference} of clean ones.':
    '{$station}: Abluftfilter bei {$value} mit laufendem Ventilator, weit unter {$reference} bei sauberen Filtern.',
  'Overspray goes past the filters and dries in duct and fan, where nobody sees it burn.':
    'Spritznebel gelangt an den Filtern vorbei und trocknet in Kanal und Ventilator, wo niemand ihn brennen sieht.',
  'Stop spraying.': 'Spritzen beenden.',
  'With the fan locked out have it seen whether each filter is in its place and whole, and whether the taps are free.':
    'Während der Ventilator gegen Wiedereinschalten gesichert ist, nachsehen lassen, ob jeder Filter an seinem Platz und heil ist und ob die Messanschlüsse frei sind.',
  'Tell EHS that overspray may lie in the duct; the residue station’s rules hold for it.':
    'Der Arbeitssicherheit melden, dass Spritznebel im Kanal abgelagert sein kann; dafür gelten die Regeln der Station für Rückstände.',
  'spray on without filters': 'Nicht ohne Filter weiterspritzen.',
  'take a low reading for a clean filter':
    'Einen niedrigen Messwert nicht für einen sauberen Filter halten.',
  '{$station}: booth air at {$value}, {$side} {$limit}, for {$duration} of spraying.':
    '{$station}: Kabinenluft bei {$value}, {$side} {$limit}, seit {$duration} beim Spritzen.',
  'The coat dries faster or slower than it was set up for; the film’s panels tell whether it matters.':
    'Die Schicht trocknet schneller oder langsamer als bei der Einstellung vorgesehen; ob das von Belang ist, zeigen die Prüfbleche für die Schichtdicke.',
  'Measure a panel; compare its film and its look with the run card.':
    'Ein Prüfblech messen; Schichtdicke und Aussehen mit der Laufkarte vergleichen.',
  'Have the supply air seen to.': 'Zuluft in Ordnung bringen lassen.',
  'Write down what was sprayed meanwhile.': 'Eintragen, was inzwischen gespritzt wurde.',
  'thin the material to make up for it': 'Das Material nicht verdünnen, um das auszugleichen.',
  '{$station}: booth humidity at {$value}, {$side} {$limit}, for {$duration} of spraying.':
    '{$station}: Luftfeuchte der Kabine bei {$value}, {$side} {$limit}, seit {$duration} beim Spritzen.',
};
