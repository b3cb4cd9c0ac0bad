/** German for the texts of `rules/stations/drum-mixer-speed.ts`. */
import type { Texts } from './texts.ts';

export const drumMixerSpeed: Texts = {
  // agitator-stopped, agitator-rest
  '{$station}: agitator at rest since {$clock}, for {$duration}.':
    '{$station}: Rührwerk steht seit {$clock}, bisher {$duration}.',
  '{$station}: agitator still at rest, for {$duration} of the {$rest} it may rest.':
    '{$station}: Rührwerk steht immer noch, bisher {$duration} von {$rest} zulässigem Stillstand.',
  'Solids settle; film drawn from the drum becomes uneven, first too thin, then too thick.':
    'Feststoff setzt sich ab; die Schicht aus diesem Fass wird ungleichmäßig, erst zu dünn, dann zu dick.',
  'Ask whether someone is working on it; if so, leave it.':
    'Fragen, ob jemand daran arbeitet; wenn ja, nichts verändern.',
  'Stop drawing from the drum. From outside the guard see whether the shaft turns; check the air supply and its regulator.':
    'Entnahme aus dem Fass stoppen. Von außerhalb der Schutzhaube nachsehen, ob sich die Welle dreht; Druckluftversorgung und ihren Druckregler prüfen.',
  'Past a rest of {$rest} take the drum off line. Once an authorised person lets it be restarted, {$mixing} for {$stir}, and take a hydrometer reading before use.':
    'Nach mehr als {$rest} Stillstand das Fass von der Linie nehmen. Sobald eine befugte Person den Neustart erlaubt: {$mixing}, {$stir} lang, und vor Gebrauch mit dem Aräometer messen.',
  'restart it unseen, or at speed on a settled bottom':
    'Das Rührwerk nicht wieder einschalten, ohne es zu sehen, und nie mit Betriebsdrehzahl auf abgesetztem Bodensatz.',
  'shake, roll or tumble the drum':
    'Das Fass nicht schütteln, nicht rollen und nicht über Kopf drehen.',
  'reset a trip whose cause is unknown':
    'Keine Schutzabschaltung zurücksetzen, deren Ursache unbekannt ist.',
  'It can start without warning. Lock out by local rules before hands go near.':
    'Kann ohne Vorwarnung anlaufen. Nach den örtlichen Vorschriften gegen Wiedereinschalten sichern, bevor Hände in die Nähe kommen.',
  // agitator-fast
  '{$station}: agitator at {$value}, above {$limit}, for {$duration}.':
    '{$station}: Rührwerk bei {$value}, über {$limit}, seit {$duration}.',
  'Shear makes foam and lumps that do not go back; the film suffers.':
    'Scherung erzeugt Schaum und Klumpen, die sich nicht zurückbilden; die Schicht leidet.',
  'Slow it to {$target} at its control.': 'Rührwerk am Bedienpult auf {$target} verlangsamen.',
  'From outside the guard watch for foam, skin and lumps, and check the level.':
    'Von außerhalb der Schutzhaube auf Schaum, Haut und Klumpen achten und den Füllstand prüfen.',
  'If you see any, put the drum on hold and tell the process engineer.':
    'Ist etwas davon zu sehen, das Fass sperren und den Prozessingenieur informieren.',
  'reach past the guard': 'Nicht hinter die Schutzhaube greifen.',
  'add water, solvent or defoamer': 'Kein Wasser, kein Lösemittel und keinen Entschäumer zugeben.',
  'Turning shaft. Isolate and lock out by local rules before any work on it.':
    'Drehende Welle. Vor jeder Arbeit daran nach den örtlichen Vorschriften von allen Energiequellen trennen und gegen Wiedereinschalten sichern.',
  // agitator-slow
  '{$station}: agitator at {$value}, below {$limit}, for {$duration}.':
    '{$station}: Rührwerk bei {$value}, unter {$limit}, seit {$duration}.',
  'Solids settle slowly; film from the drum slowly changes.':
    'Feststoff setzt sich langsam ab; die Schicht aus dem Fass ändert sich langsam.',
  'Check the regulator and the filter of its air supply.':
    'Druckregler und Filter seiner Druckluftversorgung prüfen.',
  'Bring it to {$target} at its control; if it will not go, have the shaft seen to, isolated and locked out.':
    'Rührwerk am Bedienpult auf {$target} bringen; gelingt das nicht, die Welle instand setzen lassen, von allen Energiequellen getrennt und gegen Wiedereinschalten gesichert.',
  'Write down what you found.': 'Befund aufschreiben.',
  'raise it past {$high}': 'Die Drehzahl nicht über {$high} erhöhen.',
  // blade-uncovered
  '{$station}: level at {$value}, below {$limit}; the blade nears the surface.':
    '{$station}: Füllstand bei {$value}, unter {$limit}; das Rührblatt kommt der Oberfläche nahe.',
  'A blade that breaks the surface beats air in; foam spoils the film.':
    'Ein Rührblatt, das die Oberfläche durchbricht, schlägt Luft ein; Schaum verdirbt die Schicht.',
  'Slow the agitator at its control, or stop it.':
    'Rührwerk am Bedienpult verlangsamen oder anhalten.',
  'Have it isolated and locked out; then change the drum with the drum lift.':
    'Rührwerk von allen Energiequellen trennen und gegen Wiedereinschalten sichern lassen; dann das Fass mit dem Fassheber wechseln.',
  'Filter what is left in it.': 'Filtern, was im Fass noch übrig ist.',
  'pour the rest into a new drum': 'Den Rest nicht in ein neues Fass gießen.',
  'It can start without warning. Lock out by local rules before hands go near. Drums crush: site lifting rules.':
    'Kann ohne Vorwarnung anlaufen. Nach den örtlichen Vorschriften gegen Wiedereinschalten sichern, bevor Hände in die Nähe kommen. Quetschgefahr durch Fässer: Hebevorschriften des Werks beachten.',
};
