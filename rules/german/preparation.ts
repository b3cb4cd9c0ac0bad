/** German for the texts of `rules/stations/preparation.ts`. */
import type { Texts } from './texts.ts';

export const preparation: Texts = {
  'Bare steel rusts before it is coated.': 'Blanker Stahl rostet, bevor er beschichtet wird.',
  'A phosphate coat takes up water and dirt before it is coated.':
    'Eine Phosphatschicht nimmt Wasser und Schmutz auf, bevor sie beschichtet wird.',
  'Oil of the part, the media or the air stays under the coat.':
    'Öl vom Teil, vom Strahlmittel oder aus der Luft bleibt unter der Schicht.',
  'The blasted metal is too smooth, or too rough.':
    'Das gestrahlte Metall ist zu glatt oder zu rau.',
  'The phosphate coat is thin, heavy or powdery.':
    'Die Phosphatschicht ist dünn, schwer oder pulvrig.',
  'Salts of bath and water stay on the metal, or spoil what the water goes into.':
    'Salze aus Bad und Wasser bleiben auf dem Metall oder verderben das, in was das Wasser kommt.',
  'Water settles on cold metal.': 'Wasser schlägt sich auf kaltem Metall nieder.',
  'The shift’s checks are not made, and what drifts is found at the failed bond.':
    'Die Prüfungen der Arbeitsschicht werden nicht gemacht, und was abdriftet, zeigt sich erst an der Bindung, die versagt hat.',
  'Vapour of a solvent degreaser, mist of hot baths or blast dust harms whoever works there.':
    'Dampf aus einer Lösemittelentfettung, Nebel heißer Bäder oder Strahlstaub schadet jedem, der dort arbeitet.',
  'extraction of degreaser, baths and blast as their makers and local rules say; before any sensor goes near a solvent degreaser ask how the area is classified':
    'Absaugung von Entfettung, Bädern und Strahlanlage, wie es die Hersteller und die örtlichen Vorschriften verlangen; bevor irgendein Sensor in die Nähe einer Lösemittelentfettung kommt, fragen, wie der Bereich eingestuft ist',
};
