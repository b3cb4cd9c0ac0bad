/** German for the texts of `rules/stations/held-use.ts`. */
import type { Texts } from './texts.ts';

export const heldUse: Texts = {
  'Something that is on hold is used as if it were released.':
    'Etwas Gesperrtes wird verwendet, als wäre es freigegeben.',
  '{$station}: container {$item} is on hold, and in use since {$clock}. On hold by {$setter}: {$reason}.':
    '{$station}: Gebinde {$item} ist gesperrt und seit {$clock} in Gebrauch. Gesperrt durch {$setter}: {$reason}.',
  '{$station}: rack {$item} is on hold, and in use since {$clock}. On hold by {$setter}: {$reason}.':
    '{$station}: Gestell {$item} ist gesperrt und seit {$clock} in Gebrauch. Gesperrt durch {$setter}: {$reason}.',
  '{$station}: lot {$item} is on hold, and in use since {$clock}. On hold by {$setter}: {$reason}.':
    '{$station}: Los {$item} ist gesperrt und seit {$clock} in Gebrauch. Gesperrt durch {$setter}: {$reason}.',
  'A container is put on hold because it is doubted; all that is made with it is doubted too.':
    'Ein Gebinde wird gesperrt, weil es zweifelhaft ist; alles, was damit gemacht wird, ist auch zweifelhaft.',
  'A rack is put on hold because it is doubted; all that is made with it is doubted too.':
    'Ein Gestell wird gesperrt, weil es zweifelhaft ist; alles, was damit gemacht wird, ist auch zweifelhaft.',
  'A lot is put on hold because it is doubted; all that is made with it is doubted too.':
    'Ein Los wird gesperrt, weil es zweifelhaft ist; alles, was damit gemacht wird, ist auch zweifelhaft.',
  'Ask quality what becomes of it: only they lift a hold, and say why.':
    'Die Qualitätssicherung fragen, was damit geschieht: Nur sie hebt eine Sperre auf und sagt, warum.',
  'lift the hold to be able to go on': 'Die Sperre nicht aufheben, um weitermachen zu können.',
  'release, re-coat or re-bake held parts before the engineer decides':
    'Gesperrte Teile nicht freigeben, nicht neu beschichten und nicht erneut im Ofen trocknen, bevor der Ingenieur entscheidet.',
  'What it is held for cannot always be seen on it.':
    'Der Grund der Sperre ist nicht immer zu sehen.',
  'Stop the feed, and connect another container that is released.':
    'Die Zufuhr stoppen und ein anderes, freigegebenes Gebinde anschließen.',
  'Put parts coated since it was connected on hold.':
    'Teile sperren, die beschichtet wurden, seit es angeschlossen wurde.',
  'Set the rack aside, and coat nothing more of it.':
    'Das Gestell beiseitestellen und nichts mehr davon beschichten.',
  'Write on its tag what it was given since it was held.':
    'Auf seinem Anhänger vermerken, was es seit der Sperre bekommen hat.',
  'Dip nothing more, and put in no more of this lot.':
    'Nichts mehr tauchen und nichts mehr von diesem Los zugeben.',
  'Put racks dipped since it was put in on hold.':
    'Gestelle sperren, die getaucht wurden, seit dieses Los zugegeben wurde.',
  'Put shots made with it on hold.': 'Schüsse sperren, die damit gemacht wurden.',
  'Load no more inserts of this lot; take another one that is released.':
    'Keine Einlegeteile dieses Loses mehr einlegen; ein anderes, freigegebenes nehmen.',
  'Load no more of this batch; take another one that is released.':
    'Nichts mehr von dieser Mischungscharge einlegen; eine andere, freigegebene nehmen.',
  'Stop before the next parts of this rack go into the press.':
    'Anhalten, bevor die nächsten Teile dieses Gestells in die Presse kommen.',
  'Put shots made with its parts on hold.':
    'Schüsse sperren, die mit seinen Teilen gemacht wurden.',
};
