/** German for the texts of `rules/stations/drum-mixer-mixing.ts`. */
import type { Texts } from './texts.ts';

export const drumMixerMixing: Texts = {
  '{$station}: container {$item}, connected at {$clock}, is drawn from after {$reached} of mixing; it needs {$required}.':
    '{$station}: Aus Gebinde {$item}, angeschlossen seit {$clock}, wird nach {$reached} Mischzeit entnommen; nötig sind {$required}.',
  'Settled adhesive comes out too thin, then too thick; film and bond vary.':
    'Abgesetztes Haftmittel kommt zu dünn heraus, dann zu dick; Schicht und Bindung schwanken.',
  'Stop the feed.': 'Zufuhr stoppen.',
  'Mix it out from the beginning: {$mixing} for {$stir}, and take a hydrometer reading before use.':
    'Von Anfang an neu ausmischen: {$mixing}, {$stir} lang, und vor Gebrauch mit dem Aräometer messen.',
  'Put parts coated since it was connected on hold; the process engineer decides.':
    'Teile sperren, die seit dem Anschließen beschichtet wurden; der Prozessingenieur entscheidet.',
  'mix it by pumping it round': 'Nicht durch Umpumpen mischen.',
};
