/** German for the texts of `rules/stations/preparation-water.ts`. */
import type { Texts } from './texts.ts';

export const preparationWater: Texts = {
  'Baths are hot and acidic or caustic; wear what their data sheets ask for.':
    'Bäder sind heiß und sauer oder ätzend alkalisch; Schutzausrüstung tragen, wie ihre Datenblätter sie verlangen.',
  // phosphate-weight
  '{$station}: phosphate at {$value}; the limit is {$limit}.':
    '{$station}: Phosphat bei {$value}; Grenzwert {$limit}.',
  'A heavy, powdery coat splits within itself, crystals on both sides; a thin one leaves steel bare.':
    'Eine schwere, pulvrige Phosphatschicht spaltet sich in sich selbst, Kristalle auf beiden Seiten; eine dünne lässt Stahl blank.',
  'Tag the rack “hold”; weigh a second panel.':
    'Gestell mit „gesperrt“ kennzeichnen; ein zweites Prüfblech wiegen.',
  'Check the bath’s points, its temperature, the time in it and the rinse before it.':
    'Punkte und Temperatur des Bads, die Zeit darin und die Spüle davor prüfen.',
  'The process engineer decides: bond a panel, or strip and begin anew.':
    'Der Prozessingenieur entscheidet: Probebindung auf einem Prüfblech, oder entschichten und neu beginnen.',
  'brush powder off and coat': 'Nie das Pulver abbürsten und dann beschichten.',
  // bath-points
  '{$station}: phosphate bath at {$value} points; the limit is {$limit}.':
    '{$station}: Phosphatbad bei {$value} Punkten; Grenzwert {$limit}.',
  'The phosphate coat becomes too thin, or heavy and powdery.':
    'Die Phosphatschicht wird zu dünn, oder schwer und pulvrig.',
  'Titrate a second sample.': 'Eine zweite Probe titrieren.',
  'Correct it by the bath’s data sheet, half of the step, and titrate again.':
    'Nach dem Datenblatt des Bads korrigieren, um den halben Schritt, und erneut titrieren.',
  'Weigh a panel before the next rack.': 'Vor dem nächsten Gestell ein Prüfblech wiegen.',
  'add by feel': 'Nichts nach Gefühl zugeben.',
  // rinse-conductivity
  '{$station}: last rinse at {$value}, above {$limit}, for {$duration}.':
    '{$station}: letzte Spüle bei {$value}, über {$limit}, seit {$duration}.',
  'Salts stay on the metal; the bond passes its test and fails in service, from the edge on.':
    'Salze bleiben auf dem Metall; die Bindung besteht ihre Prüfung und versagt im Einsatz, vom Rand her.',
  'Rinse no more racks until it is back; then rinse the last ones again.':
    'Keine weiteren Gestelle spülen, bis der Wert wieder stimmt; dann die letzten noch einmal spülen.',
  'Check the overflow, the supply of deionised water and what the baths carry over.':
    'Überlauf, Zulauf von vollentsalztem Wasser und Verschleppung aus den Bädern prüfen.',
  'Write down which racks were rinsed since it rose.':
    'Aufschreiben, welche Gestelle gespült wurden, seit der Wert stieg.',
  'rinse with tap water last': 'Nie zuletzt mit Leitungswasser spülen.',
  // make-up-water
  'Hard or salty water spoils baths and rinses, and breaks a dispersion.':
    'Hartes oder salziges Wasser verdirbt Bäder und Spülen und lässt eine Dispersion brechen.',
  'Let a litre run, read again with a meter that was checked on its standard.':
    'Einen Liter laufen lassen und erneut messen, mit einem Messgerät, das an seinem Standard geprüft wurde.',
  'Have the resin or the membrane of the deioniser seen to.':
    'Harz oder Membran der Vollentsalzung warten lassen.',
  'Draw no water for adhesive, bath, flush or last rinse until it is back.':
    'Kein Wasser für Haftmittel, Bad, Durchspülen oder letzte Spüle entnehmen, bis der Wert wieder stimmt.',
  'use this water up first': 'Dieses Wasser nicht erst noch aufbrauchen.',
};
