/** German for the texts of `rules/stations/residue-cleaning.ts`. */
import type { Texts } from './texts.ts';

export const residueCleaning: Texts = {
  '{$signal} at {$value}, at or above {$limit}: this place is due for cleaning.':
    '{$signal}: {$value}, auf oder über {$limit}: Für diese Stelle ist die Reinigung fällig.',
  'Every further millimetre lowers the temperature at which it lights itself.':
    'Jeder weitere Millimeter senkt die Temperatur, bei der sich der Rückstand selbst entzündet.',
  'Shut the oven down, let it cool and isolate it by local rules.':
    'Ofen abschalten, abkühlen lassen und nach den örtlichen Vorschriften von allen Energiequellen trennen.',
  'Have it cleaned under the site’s permit with non-sparking tools, damp as the data sheet says.':
    'Mit Erlaubnisschein des Werks reinigen lassen, mit funkenfreien Werkzeugen, feucht, wie es das Datenblatt sagt.',
  'Take the waste out of the building at once; write down the thickness left.':
    'Abfall sofort aus dem Gebäude bringen; verbliebene Dicke aufschreiben.',
  'clean it hot': 'Nicht in heißem Zustand reinigen.',
  'grind it, or use a steel scraper': 'Nicht schleifen und keinen Stahlschaber verwenden.',
  'Friction, impact and sparks light cold residue too.':
    'Reibung, Schlag und Funken entzünden auch kalten Rückstand.',
  '{$station}: {$reached} since somebody wrote down that it was cleaned, of {$required} at most.':
    '{$station}: Seit {$reached} hat niemand eine Reinigung aufgeschrieben; zulässig sind höchstens {$required}.',
  'Once it is cold and released under the site’s permit, have the thickness gauged and the place cleaned with non-sparking tools, damp as the data sheet says.':
    'Sobald die Stelle kalt und mit Erlaubnisschein des Werks freigegeben ist: Dicke messen und reinigen lassen, mit funkenfreien Werkzeugen, feucht, wie es das Datenblatt sagt.',
  'Take the waste out of the building at once; write down the cleaning and the thickness left.':
    'Abfall sofort aus dem Gebäude bringen; Reinigung und verbliebene Dicke aufschreiben.',
};
