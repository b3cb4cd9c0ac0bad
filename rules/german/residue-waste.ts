/** German for the texts of `rules/stations/residue-waste.ts`. */
import type { Texts } from './texts.ts';

export const residueWaste: Texts = {
  // bin-warm
  '{$station}: the waste bin is {$value} warmer than the air around it, for {$duration}.':
    '{$station}: Der Abfallbehälter ist seit {$duration} um {$value} wärmer als die Luft um ihn herum.',
  'Scrapings, filters and wipes heat by themselves and burn hours later.':
    'Abgeschabter Rückstand, Filter und Wischtücher erwärmen sich von selbst und brennen Stunden später.',
  'Keep everyone clear; site fire plan{$plan}.':
    'Alle fernhalten; nach dem Brandschutzplan des Werks{$plan} handeln.',
  'Smoke, glow or smell: fire alarm now.':
    'Bei Rauch, Glut oder Geruch: sofort Feueralarm auslösen.',
  'Call EHS; hand over in person.': 'Arbeitssicherheit rufen; Lage persönlich übergeben.',
  'move a warm bin by hand': 'Einen warmen Behälter nicht von Hand bewegen.',
  'lift its lid, since air feeds fire': 'Seinen Deckel nicht anheben, denn Luft nährt das Feuer.',
  // stack-hot
  '{$station}: stacked racks at {$value}, above {$limit}, for {$duration}.':
    '{$station}: gestapelte Gestelle bei {$value}, seit {$duration} über {$limit}.',
  'Residue between hot racks heats by itself and burns hours later.':
    'Rückstand zwischen heißen Gestellen erwärmt sich von selbst und brennt Stunden später.',
  'Keep everyone clear; smoke, glow or smell: fire alarm, site fire plan{$plan}.':
    'Alle fernhalten; bei Rauch, Glut oder Geruch: Feueralarm auslösen, nach dem Brandschutzplan des Werks{$plan} handeln.',
  'Stack no more; let the next racks cool apart, with air between them.':
    'Nicht weiter stapeln; die nächsten Gestelle getrennt abkühlen lassen, mit Luft dazwischen.',
  'Call EHS; they say when the stack may be taken apart.':
    'Arbeitssicherheit rufen; sie sagt, wann der Stapel auseinandergenommen werden darf.',
  'pull a hot stack apart': 'Einen heißen Stapel nicht auseinanderziehen.',
  'blow air through it': 'Keine Luft hindurchblasen.',
  // bin-unemptied
  '{$station}: nobody wrote down for {$reached} that the waste bin was emptied.':
    '{$station}: Seit {$reached} hat niemand aufgeschrieben, dass der Abfallbehälter geleert wurde.',
  'Smoke, glow or smell, or a bin warmer than the room: keep clear, fire alarm, site fire plan{$plan}.':
    'Bei Rauch, Glut oder Geruch oder wenn der Behälter wärmer ist als der Raum: fernbleiben, Feueralarm auslösen, nach dem Brandschutzplan des Werks{$plan} handeln.',
  'Cold: have it emptied out of the building, as residue waste by the data sheet.':
    'Wenn der Behälter kalt ist: außerhalb des Gebäudes entleeren lassen, als Rückstandsabfall nach Datenblatt.',
  'Write down that it was emptied, and that used filters went with it.':
    'Aufschreiben, dass er geleert wurde und dass gebrauchte Filter mit hinausgebracht wurden.',
  'put other waste in that can light with it':
    'Keinen anderen Abfall hineingeben, der sich mit ihm entzünden kann.',
};
