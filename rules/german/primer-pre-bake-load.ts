/** German for the texts of `rules/stations/primer-pre-bake-load.ts`. */
import type { Texts } from './texts.ts';

export const primerPreBakeLoad: Texts = {
  // under-baked
  '{$station}, load of {$clock}: metal at or above {$limit} for {$reached} of {$required}, and {$left} left before exit: the pre-bake can no longer be met.':
    '{$station}, Charge von {$clock}: Metall {$reached} von {$required} bei {$limit} oder darüber, bis zur Ausfahrt bleiben {$left}: Das nötige Vortrocknen ist nicht mehr zu erreichen.',
  'Water stays in the primer; under the cover coat it blisters, and the two split.':
    'Wasser bleibt im Primer; unter der Decklage wirft es Blasen, und Primer und Decklage trennen sich.',
  'Tag the rack “hold” at the exit, before the cover coat.':
    'Gestell an der Ausfahrt mit „gesperrt“ kennzeichnen, vor der Decklage.',
  'Compare line speed, air and load with the run card; load no more until explained.':
    'Liniengeschwindigkeit, Luft und Charge mit der Laufkarte vergleichen; nicht mehr beladen, bis die Ursache geklärt ist.',
  'The process engineer decides: bake again only as the data sheet says, test, or scrap.':
    'Der Prozessingenieur entscheidet: erneut vortrocknen nur nach dem Datenblatt, prüfen oder verschrotten.',
  'raise the heat to catch up': 'Die Temperatur nicht erhöhen, um aufzuholen.',
  'cover-coat it wet': 'Die Decklage nicht auf nassen Primer auftragen.',
  // over-baked
  'A primer baked dead is smooth and dull, and the cover coat does not hold on it.':
    'Ein totgebrannter Primer ist glatt und matt, und die Decklage hält nicht auf ihm.',
  'Check the set-points against the run card; compare the second sensor or the control’s own display.':
    'Sollwerte gegen die Laufkarte prüfen; mit dem zweiten Sensor oder der Anzeige der Steuerung vergleichen.',
  'Coat and bond a panel from this rack; the process engineer decides.':
    'Ein Prüfblech von diesem Gestell beschichten und darauf eine Probebindung herstellen; der Prozessingenieur entscheidet.',
  'count it as “dry enough”': 'Das nicht als „trocken genug“ gelten lassen.',
  'cover-coat held parts': 'Auf gesperrte Teile keine Decklage auftragen.',
  // cover-too-soon, cover-too-late
  'Tag the rack “hold”; keep it covered, dry and untouched.':
    'Gestell mit „gesperrt“ kennzeichnen; abgedeckt, trocken und unberührt halten.',
  'Write down how it stood since priming: where, how long, covered or not.':
    'Aufschreiben, wie es seit dem Primerauftrag stand: wo, wie lange, abgedeckt oder nicht.',
  'The process engineer decides: panel test, go on, or strip and prime anew.':
    'Der Prozessingenieur entscheidet: Prüfblech, weitermachen oder entschichten und neu primern.',
  'prime over it unasked': 'Nicht ohne Rückfrage neuen Primer darüber auftragen.',
  'Handle with clean gloves; wear what the material’s data sheet asks for.':
    'Nur mit sauberen Handschuhen anfassen; Schutzausrüstung tragen, wie das Datenblatt des Materials sie verlangt.',
  'Rack {$item} was cover-coated {$reached} after priming at {$clock}; {$required} are needed first.':
    'Gestell {$item} bekam die Decklage {$reached} nach dem Primerauftrag von {$clock}; vorher sind {$required} nötig.',
  'The cover coat closes over a primer that is still wet, and the two split.':
    'Die Decklage schließt sich über einem noch nassen Primer, und die beiden trennen sich.',
  'Rack {$item}, primed at {$clock}, has waited {$reached} for its cover coat, of {$required} at most.':
    'Gestell {$item}, Primerauftrag von {$clock}, wartet seit {$reached} auf die Decklage; zulässig sind höchstens {$required}.',
  'A primer that stands gathers dust and moisture, and the cover coat splits off it.':
    'Ein Primer, der steht, nimmt Staub und Feuchte auf, und die Decklage löst sich von ihm.',
  'Give it its cover coat now, if the time is not over.':
    'Die Decklage jetzt auftragen, wenn die Zeit nicht abgelaufen ist.',
  'Over it: tag the rack “hold”, and write down how it stood since priming.':
    'Ist sie abgelaufen: Gestell mit „gesperrt“ kennzeichnen und aufschreiben, wie es seit dem Primerauftrag stand.',
};
