/** German for the texts of `rules/stations/spray-booth-hazards.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothHazards: Texts = {
  'The exhaust weakens or fails while somebody sprays: vapour and overspray are breathed, and gather.':
    'Die Abluft wird schwach oder fällt aus, während jemand spritzt: Dampf und Spritznebel werden eingeatmet und sammeln sich.',
  'The pressure pot goes over its rating, and its relief valve sticks.':
    'Der Druckbehälter übersteigt seinen zulässigen Druck, und sein Sicherheitsventil klemmt.',
  'Loaded filters blow back; missing ones let overspray into duct and fan.':
    'Zugesetzte Filter lassen Spritznebel zurückschlagen; fehlende lassen ihn in Kanal und Ventilator.',
  'The pot’s pressure moves, and the film with it.':
    'Der Druck im Druckbehälter ändert sich und mit ihm die Schichtdicke.',
  'Solids settle in a pot that is not stirred.':
    'Feststoff setzt sich in einem Druckbehälter ab, der nicht gerührt wird.',
  'The dip tube draws air; bubbles come into the film.':
    'Das Steigrohr zieht Luft; Blasen kommen in die Schicht.',
  'The atomising air moves: spits and runs, or dry spray.':
    'Die Zerstäuberluft ändert sich: Spritzer und Läufer oder trockenes Spritzen.',
  'Metal comes too cold or too hot to the gun: runs, flash rust, dry spray.':
    'Metall kommt zu kalt oder zu heiß zur Spritzpistole: Läufer, Flugrost, trockenes Spritzen.',
  'The film is too thin and starves, or too thick and splits.':
    'Die Schicht ist zu dünn und gibt der Bindung zu wenig, oder zu dick und spaltet sich.',
  'Material dries in a gun that was not flushed: plugs and lumps.':
    'Material trocknet in einer Spritzpistole, die nicht gespült wurde: Verstopfungen und Klumpen.',
  'The first parts after a flush or a change of container are thin.':
    'Die ersten Teile nach einem Spülen oder einem Gebindewechsel sind dünn beschichtet.',
  'A worn needle, nozzle or cap lets the pattern drift.':
    'Eine verschlissene Nadel, Düse oder Luftkappe lässt das Spritzbild wandern.',
  'Heat or damp of the booth’s air moves the film.':
    'Wärme oder Feuchte der Kabinenluft verändert die Schicht.',
  'A sensor, radio or tool that is not certified for it lights vapour in booth, pot or mix room.':
    'Ein Sensor, Funkgerät oder Werkzeug ohne Zulassung für den Bereich entzündet Dampf in Spritzkabine, Druckbehälter oder Mischraum.',
  'before any work or sensor ask how the area is classified, whether solvent or electrostatic guns are used here, and who may drill booth, pot or duct':
    'vor jeder Arbeit und vor jedem Sensor fragen, wie der Bereich nach Explosionsschutz eingestuft ist, ob hier Lösemittel oder elektrostatische Spritzpistolen verwendet werden und wer Spritzkabine, Druckbehälter oder Kanal anbohren darf',
  'Dried overspray in booth, filters and ducts lights itself, or two materials that must not meet do.':
    'Getrockneter Spritznebel in Spritzkabine, Filtern und Kanälen entzündet sich selbst, oder zwei Materialien tun es, die nicht zusammenkommen dürfen.',
  'watch surfaces, bin and cleaning by the station residue; never spray a material that can light with the one before until booth and ducts are free of it':
    'Oberflächen, Abfallbehälter und Reinigung mit der Station für Rückstände überwachen; nie ein Material spritzen, das sich mit dem vorigen entzünden kann, solange Spritzkabine und Kanäle nicht frei davon sind',
};
