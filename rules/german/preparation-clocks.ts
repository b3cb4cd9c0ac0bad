/** German for the texts of `rules/stations/preparation-clocks.ts`. */
import type { Texts } from './texts.ts';

export const preparationClocks: Texts = {
  // blast-to-coat
  'Rack {$item}, blasted at {$clock}, has waited {$reached} for its coat; {$required} are allowed in this air.':
    'Gestell {$item} (gestrahlt: {$clock}) wartet seit {$reached} auf seine Schicht; bei dieser Luft sind {$required} zulässig.',
  'Bare steel rusts before anybody sees it, and the bond fails at the metal.':
    'Blanker Stahl rostet, bevor es jemand sieht, und die Bindung versagt am Metall.',
  'Time left: coat it next, warm and dry.':
    'Noch Zeit: als Nächstes beschichten, warm und trocken.',
  'Time over: tag the rack “hold”, and see in good light whether it shows bloom.':
    'Zeit abgelaufen: Gestell mit „gesperrt“ kennzeichnen und bei gutem Licht nachsehen, ob es Flugrost zeigt.',
  'The process engineer decides: blast again, or coat and test.':
    'Der Prozessingenieur entscheidet: neu strahlen, oder beschichten und prüfen.',
  'wipe rust off and coat over it': 'Nie Rost abwischen und dann darüber beschichten.',
  'touch prepared metal with bare hands': 'Vorbereitetes Metall nicht mit bloßen Händen berühren.',
  'Clean dry gloves. Full racks are heavy; use the lift and site lifting rules.':
    'Saubere, trockene Handschuhe. Volle Gestelle sind schwer; Hebezeug benutzen und die Hebevorschriften des Werks beachten.',
  // conversion-to-coat
  'Rack {$item}, phosphated at {$clock}, has waited {$reached} for its coat; {$required} are allowed, dry and covered.':
    'Gestell {$item} (phosphatiert: {$clock}) wartet seit {$reached} auf seine Schicht; zulässig sind {$required}, trocken und abgedeckt.',
  'Phosphate takes up water and dirt as it stands, and the bond fails at the metal.':
    'Phosphat nimmt beim Stehen Wasser und Schmutz auf, und die Bindung versagt am Metall.',
  'Time over: tag the rack “hold”; write down how it stood, covered or not.':
    'Zeit abgelaufen: Gestell mit „gesperrt“ kennzeichnen; aufschreiben, wie es stand, abgedeckt oder nicht.',
  'The process engineer decides: test a bond, or strip and begin anew.':
    'Der Prozessingenieur entscheidet: eine Bindung prüfen, oder entschichten und neu beginnen.',
  // shift-check-late
  '{$station}: nobody wrote down the checks of preparation for {$reached}; they are due every {$required}.':
    '{$station}: Seit {$reached} hat niemand die Prüfungen der Vorbereitung aufgeschrieben; sie sind alle {$required} fällig.',
  'Preparation is the first suspect when a bond fails at the metal, and nothing would be on record.':
    'Versagt eine Bindung am Metall, fällt der erste Verdacht auf die Vorbereitung, und es wäre nichts aufgezeichnet.',
  'Take blast profile and pressure, media, water-break, bath and last rinse.':
    'Rauheitsprofil und Strahldruck, Strahlmittel, Wasserbruchtest, Bad und letzte Spüle aufnehmen.',
  'Enter each reading.': 'Jeden Messwert eintragen.',
  'Write down that the checks were made.': 'Aufschreiben, dass die Prüfungen gemacht wurden.',
  'Blast machine and baths only as their instructions and local rules say.':
    'Strahlanlage und Bäder nur so bedienen, wie ihre Betriebsanweisungen und die örtlichen Vorschriften es sagen.',
};
