/** German for the texts of `rules/stations/press.ts`. */
import type { Texts } from './texts.ts';

export const press: Texts = {
  // hazards
  'Mould too cold, cure too short or pressure too low: rubber and insert do not bond.':
    'Form zu kalt, Vulkanisation zu kurz oder Druck zu niedrig: Gummi und Einlegeteil verbinden sich nicht.',
  'The film cures on the insert before the rubber comes: hot mould, or a long wait in it.':
    'Die Schicht vernetzt auf dem Einlegeteil, bevor der Kautschuk kommt: heiße Form oder langes Warten darin.',
  'One cavity runs hotter or colder than the others.':
    'Eine Kavität läuft heißer oder kälter als die anderen.',
  'Old, scorched or bloomed compound, or release agent on the film, spoils the bond.':
    'Alte, anvulkanisierte oder ausgeblühte Kautschukmischung oder Trennmittel auf der Schicht verdirbt die Bindung.',
  'scan the compound’s batch and age to the press, and write down each application of release agent':
    'Mischungscharge und ihr Alter an der Presse scannen und jeden Auftrag von Trennmittel aufschreiben',
  'Flash and scrapings of the film lie hot on the press table and burn later, in a bin.':
    'Austrieb und Abgeschabtes der Schicht liegen heiß auf dem Pressentisch und brennen später, in einem Abfallbehälter.',
  'take flash and scrapings out each shift as residue waste, by the station residue’s rules':
    'Austrieb und Abgeschabtes in jeder Arbeitsschicht als Rückstandsabfall hinausbringen, nach den Regeln der Station für Rückstände',
  // signals
  'temperature of the mould at cavity 1': 'Temperatur der Form an Kavität 1',
  'thermocouple in a bore that ends some millimetres from the wall of cavity 1; the platen’s own reads something else; prove it with a contact probe':
    'Thermoelement in einer Bohrung, die einige Millimeter vor der Wand von Kavität 1 endet; das der Heizplatte misst etwas anderes; mit einem Kontaktfühler nachprüfen',
  'temperature of the mould at cavity 2': 'Temperatur der Form an Kavität 2',
  'thermocouple in a bore that ends some millimetres from the wall of cavity 2; the platen’s own reads something else; prove it with a contact probe':
    'Thermoelement in einer Bohrung, die einige Millimeter vor der Wand von Kavität 2 endet; das der Heizplatte misst etwas anderes; mit einem Kontaktfühler nachprüfen',
  'temperature of the mould at cavity 3': 'Temperatur der Form an Kavität 3',
  'thermocouple in a bore that ends some millimetres from the wall of cavity 3; the platen’s own reads something else; prove it with a contact probe':
    'Thermoelement in einer Bohrung, die einige Millimeter vor der Wand von Kavität 3 endet; das der Heizplatte misst etwas anderes; mit einem Kontaktfühler nachprüfen',
  'temperature of the mould at cavity 4': 'Temperatur der Form an Kavität 4',
  'thermocouple in a bore that ends some millimetres from the wall of cavity 4; the platen’s own reads something else; prove it with a contact probe':
    'Thermoelement in einer Bohrung, die einige Millimeter vor der Wand von Kavität 4 endet; das der Heizplatte misst etwas anderes; mit einem Kontaktfühler nachprüfen',
  '1 while the press is making parts, else 0': '1, solange die Presse Teile fertigt, sonst 0',
  'contact of the press’s control through a relay, never in the guard’s safety chain':
    'Kontakt der Pressensteuerung über ein Relais, nie in der Sicherheitskette der Schutzeinrichtung',
  '1 from when the first insert of a shot lies in the mould until the mould is empty':
    '1, sobald das erste Einlegeteil eines Schusses in der Form liegt, bis die Form leer ist',
  'light barrier over the loading side, or a button the moulder presses with the first insert; never in the guard’s safety chain':
    'Lichtschranke über der Beladeseite oder ein Taster, den der Bediener der Presse beim ersten Einlegeteil drückt; nie in der Sicherheitskette der Schutzeinrichtung',
  '1 while the mould is closed, also through its bumps, else 0':
    '1, solange die Form geschlossen ist, auch über ihre Entlüftungshübe hinweg, sonst 0',
  'limit switch of the press through a relay that outlasts a bump, never in the guard’s safety chain':
    'Endschalter der Presse über ein Relais, das einen Entlüftungshub überdauert, nie in der Sicherheitskette der Schutzeinrichtung',
  'pressure of the press while it cures': 'Druck der Presse beim Vulkanisieren',
  'in the hydraulic line at the cylinder, or a sensor in the cavity; a licensed person fits it':
    'in der Hydraulikleitung am Zylinder oder ein Sensor in der Kavität; Einbau durch eine zugelassene Fachkraft',
  // marks
  'The first insert of this shot was laid into the hot mould.':
    'Das erste Einlegeteil dieses Schusses wurde in die heiße Form gelegt.',
  'the moulder, or the press’s control': 'wer die Presse bedient, oder die Pressensteuerung',
  'This lot of coated inserts came to the press.':
    'Dieses Los beschichteter Einlegeteile kam an die Presse.',
  'the moulder, by scanning the rack': 'wer die Presse bedient, durch Scannen des Gestells',
  'This batch of compound came to the press; its age in a note.':
    'Diese Mischungscharge kam an die Presse; ihr Alter in einer Notiz.',
  'the moulder, by scanning the batch': 'wer die Presse bedient, durch Scannen der Mischungscharge',
  'Release agent was put onto the mould; which, and where, in a note.':
    'Trennmittel wurde auf die Form aufgetragen; welches und wo, in einer Notiz.',
  'the moulder': 'wer die Presse bedient',
};
