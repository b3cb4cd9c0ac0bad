/** German for the texts of `rules/stations/coated-store.ts`. */
import type { Texts } from './texts.ts';

export const coatedStore: Texts = {
  'Rack {$item}, coated {$clock}, has waited {$reached} of the {$required} it may.':
    'Gestell {$item}, beschichtet {$clock}, hat {$reached} von den erlaubten {$required} gewartet.',
  'An aged or soiled coat may not bond.':
    'Eine gealterte oder verschmutzte Schicht bindet möglicherweise nicht.',
  'Use the oldest rack next, while its time lasts; past it, take the rack out of the press queue and tag it “hold”.':
    'Das älteste Gestell als Nächstes verarbeiten, solange seine Zeit reicht; danach aus der Warteschlange der Presse nehmen und mit „gesperrt“ kennzeichnen.',
  'Note whether it stayed covered, dry and untouched.':
    'Festhalten, ob es abgedeckt, trocken und unberührt blieb.',
  'The process engineer decides on a trial bond: use, coat anew or scrap.':
    'Der Prozessingenieur entscheidet anhand einer Probebindung: verwenden, neu beschichten oder verschrotten.',
  'mould held parts': 'Gesperrte Teile nicht in die Presse geben.',
  'wipe it with solvent': 'Die Schicht nicht mit Lösemittel abwischen.',
  'bake it again to begin its time anew':
    'Das Gestell nicht erneut in den Ofen geben, um seine Zeit neu beginnen zu lassen.',
  'Handle with clean gloves; what touches the coat stays on it. Stripping only as the data sheet says.':
    'Mit sauberen Handschuhen anfassen; was die Schicht berührt, bleibt auf ihr. Entschichten nur, wie es das Datenblatt vorgibt.',
  'The coat takes up water and the metal rusts under its edges; the bond suffers.':
    'Die Schicht nimmt Wasser auf, und das Metall rostet unter ihren Rändern; die Bindung leidet.',
  'Close the doors and cover the racks.': 'Die Türen schließen und die Gestelle abdecken.',
  'Bring in dry air, or move the racks to a drier place.':
    'Trockene Luft zuführen oder die Gestelle an einen trockeneren Platz bringen.',
  'Inspect them for rust and whitened film before the press; put any you doubt on hold.':
    'Die Gestelle vor der Presse auf Rost und weiß angelaufene Schicht prüfen; zweifelhafte sperren.',
  'wipe the parts': 'Die Teile nicht abwischen.',
  'Handle with clean gloves; what touches the coat stays on it.':
    'Mit sauberen Handschuhen anfassen; was die Schicht berührt, bleibt auf ihr.',
  '{$station}: the coldest metal’s margin to the dew point is {$value}, below {$limit}, for {$duration}.':
    '{$station}: Der Abstand des kältesten Metalls zum Taupunkt beträgt {$value}, unter {$limit}, seit {$duration}.',
  'Water settles on coat and bare metal: spots, rust, bond lost from the edge.':
    'Wasser schlägt sich auf Schicht und blankem Metall nieder: Flecken, Rost, vom Rand her verlorene Bindung.',
  'Cover the racks and close the doors to damp air.':
    'Die Gestelle abdecken und die Türen gegen feuchte Luft schließen.',
  'Warm the store slowly or bring in dry air; move racks away from the cold wall.':
    'Das Lager langsam erwärmen oder trockene Luft zuführen; Gestelle von der kalten Wand wegrücken.',
  'Inspect them for water spots and rust before the press; put any you doubt on hold.':
    'Die Gestelle vor der Presse auf Wasserflecken und Rost prüfen; zweifelhafte sperren.',
  '{$station}: the margin of parts brought in to the room’s dew point is {$value}; they need {$limit} before they are unwrapped.':
    '{$station}: Der Abstand der hereingebrachten Teile zum Taupunkt des Raums beträgt {$value}; bevor sie ausgepackt werden, brauchen sie {$limit}.',
  'Water condenses on the coat the moment its wrapping is off.':
    'Wasser kondensiert auf der Schicht, sobald die Verpackung ab ist.',
  'Keep it wrapped.': 'Das Gestell verpackt lassen.',
  'Wait; measure the heaviest part again and enter the reading.':
    'Warten; das schwerste Teil erneut messen und den Messwert eingeben.',
  'Unwrap it once this alarm is over.': 'Erst auspacken, wenn dieser Alarm vorbei ist.',
  'blow it dry with shop air': 'Die Teile nicht mit Werksdruckluft trocken blasen.',
  'warm it in an oven or before a heater':
    'Die Teile nicht in einem Ofen oder vor einem Heizgerät erwärmen.',
  'Heat ages the coat: it begins to cure before it meets the rubber.':
    'Wärme lässt die Schicht altern: Sie beginnt zu vernetzen, bevor sie auf den Kautschuk trifft.',
  'Move the racks to a cooler place, the oldest first, or cool the store.':
    'Die Gestelle an einen kühleren Platz bringen, die ältesten zuerst, oder das Lager kühlen.',
  'Count this heat with what the racks had in the ovens.':
    'Diese Wärme zu der hinzurechnen, die die Gestelle in den Öfen bekommen haben.',
  'Have the process engineer shorten their layover.':
    'Ihre Liegezeit vom Prozessingenieur verkürzen lassen.',
  'lengthen a layover for cool weeks': 'Keine Liegezeit wegen kühler Wochen verlängern.',
  'A coat waits too long for the rubber and does not bond.':
    'Eine Schicht wartet zu lange auf den Kautschuk und bindet nicht.',
  'Damp air soaks into the coat, or settles on cold metal and rusts it.':
    'Feuchte Luft zieht in die Schicht ein oder schlägt sich auf kaltem Metall nieder und lässt es rosten.',
  'Water condenses on cold parts that are unwrapped in a warm room.':
    'Wasser kondensiert auf kalten Teilen, die in einem warmen Raum ausgepackt werden.',
  'Heat ages the coat before it meets the rubber.':
    'Wärme lässt die Schicht altern, bevor sie auf den Kautschuk trifft.',
};
