/** German for the texts of `rules/stations/spray-booth-marks.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothMarks: Texts = {
  'This rack came to the guns.': 'Dieses Gestell kam zu den Spritzpistolen.',
  'the sprayer, or the scanner at the booth': 'wer spritzt, oder der Scanner an der Spritzkabine',
  'The parts of this rack were coated, and it left the booth.':
    'Die Teile dieses Gestells wurden beschichtet, und es verließ die Spritzkabine.',
  'This container was connected to the guns or filled into the pot.':
    'Dieses Gebinde wurde an die Spritzpistolen angeschlossen oder in den Druckbehälter gefüllt.',
  'the sprayer': 'wer spritzt',
  'Guns and lines were flushed with deionised water, and the caps cleaned.':
    'Spritzpistolen und Leitungen wurden mit vollentsalztem Wasser gespült und die Luftkappen gereinigt.',
  'The guns were laid down; nobody sprays for a while.':
    'Die Spritzpistolen wurden abgelegt; eine Weile spritzt niemand.',
  'The last parts of the shift were sprayed; the flush follows.':
    'Die letzten Teile der Arbeitsschicht wurden gespritzt; das Spülen folgt.',
  'Purged, pattern seen on glass, panel measured: parts were released after a flush or a change.':
    'Freigespritzt, Spritzbild auf Glas angesehen, Prüfblech gemessen: Nach einem Spülen oder einem Wechsel wurden Teile freigegeben.',
  'whoever releases it': 'wer freigibt',
  'A film panel was sprayed and measured, its readings entered.':
    'Ein Prüfblech für die Schichtdicke wurde gespritzt und gemessen, seine Messwerte wurden eingetragen.',
  'Exhaust filters were changed and bagged as residue waste.':
    'Abluftfilter wurden gewechselt und als Rückstandsabfall in Säcke gepackt.',
  'the maintainer': 'die Instandhaltung',
  'Needle, nozzle and seals of the guns were changed.':
    'Nadel, Düse und Dichtungen der Spritzpistolen wurden gewechselt.',
  'The air caps of the guns were changed.': 'Die Luftkappen der Spritzpistolen wurden gewechselt.',
  'The pot’s relief valve was tested by a licensed person.':
    'Das Sicherheitsventil des Druckbehälters wurde von zugelassenen Fachleuten geprüft.',
  'The air speed over the booth’s face was surveyed, and its average entered in a note.':
    'Die Luftgeschwindigkeit über den Eintrittsquerschnitt der Spritzkabine wurde gemessen und ihr Mittelwert in einer Notiz eingetragen.',
  EHS: 'die Arbeitssicherheit',
};
