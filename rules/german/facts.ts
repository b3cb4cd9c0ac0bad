/** German for what a placeholder prints where it prints words (rules/alarm/say.ts, `facts` of the stations). */
import type { Texts } from './texts.ts';

export const facts: Texts = {
  below: 'unter',
  above: 'über',
  'its alarm says why': 'sein Alarm sagt, warum',
  'the low limit': 'dem unteren Grenzwert',
  'the high limit': 'dem oberen Grenzwert',
  'its floor': 'dem unteren Grenzwert',
  'its target': 'dem Sollwert',
  allowed: 'erlaubt',
  'smothering stops it late': 'Luftabschluss hält das erst spät auf',
  'smothering may not stop it': 'Luftabschluss hält das vielleicht nicht auf',
  'Smoke is toxic': 'Der Rauch ist giftig',
  'Fumes can be toxic even without flames, of hydrogen chloride and nitrogen oxides':
    'Die Dämpfe können auch ohne Flammen giftig sein, durch Chlorwasserstoff und Stickoxide',
  'crank it by hand, its drive locked out, until its bottom is loose, then run its agitator':
    'das Rührwerk bei gegen Wiedereinschalten gesichertem Antrieb von Hand durchdrehen, bis der Bodensatz gelöst ist, dann laufen lassen',
  'stir it by hand, then mix it': 'von Hand aufrühren, dann mischen',
  'mix it': 'mischen',
  'mix it with a low-shear air mixer': 'mit einem scherarmen, druckluftgetriebenen Mischer mischen',
};
