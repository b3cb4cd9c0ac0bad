/** German for the texts of `rules/stations/compressed-air-signals.ts`. */
import type { Texts } from './texts.ts';

export const compressedAirSignals: Texts = {
  'pressure dew point: below this temperature water settles out of the air at line pressure':
    'Drucktaupunkt: unter dieser Temperatur schlägt sich bei Leitungsdruck Wasser aus der Luft nieder',
  'after the dryer, at line pressure, in a sample cell with a bleed on a short metal hose; oil spoils it; a licensed person fits it, with the line vented and locked out':
    'nach dem Lufttrockner, bei Leitungsdruck, in einer Messkammer mit Spülluftauslass an einem kurzen Metallschlauch; Öl verdirbt den Sensor; Einbau durch eine zugelassene Fachkraft, die Leitung dabei drucklos und gegen Wiedereinschalten gesichert',
  'temperature of the coldest pipe': 'Temperatur des kältesten Rohrs',
  'strapped and insulated on the coldest drop: outer wall, roof, near a gate; on the pipe, never into it':
    'mit Spannband und Dämmung an der kältesten Fallleitung: Außenwand, Dach, nahe einem Tor; auf dem Rohr, nie darin',
  'gauge pressure in the header, the main air pipe': 'Überdruck in der Hauptleitung der Druckluft',
  'on the header, after the dryer; a licensed person fits it, with the line vented and locked out':
    'an der Hauptleitung, nach dem Lufttrockner; Einbau durch eine zugelassene Fachkraft, die Leitung dabei drucklos und gegen Wiedereinschalten gesichert',
  'pressure drop across the separator’s element': 'Druckabfall über dem Element des Abscheiders',
  'across the element at the point of use; keep the taps clear; a licensed person fits it, with the line vented and locked out':
    'über dem Element an der Verbrauchsstelle; Messanschlüsse frei halten; Einbau durch eine zugelassene Fachkraft, die Leitung dabei drucklos und gegen Wiedereinschalten gesichert',
  'blotter test (ASTM D4285): 0 for a clean collector, 1 for any trace of oil or water':
    'Löschblattprobe (ASTM D4285): 0 für ein sauberes Löschblatt, 1 für jede Spur von Öl oder Wasser',
  'at the point of use, after the last separator: a minute at least onto a white absorbent collector':
    'an der Verbrauchsstelle, nach dem letzten Abscheider: mindestens eine Minute auf ein weißes, saugfähiges Löschblatt',
  'how much warmer the coldest pipe is than the air’s pressure dew point':
    'um wie viel das kälteste Rohr wärmer ist als der Drucktaupunkt der Luft',
  'dew point of the same air once it has left the gun; shown only, no rule judges it':
    'Taupunkt derselben Luft, nachdem sie die Spritzpistole verlassen hat; wird nur angezeigt, keine Regel beurteilt ihn',
  'water class of ISO 8573-1 by the pressure dew point; nothing of oil or particles, which only a laboratory can tell':
    'Wasserklasse nach ISO 8573-1 aus dem Drucktaupunkt; sagt nichts über Öl oder Partikel, das kann nur ein Labor',
  // marks
  'A blotter test of the air was made (ASTM D4285), and its result entered.':
    'Eine Löschblattprobe der Luft wurde gemacht (ASTM D4285) und ihr Ergebnis eingetragen.',
  'the operator, once each shift': 'der Bediener, einmal je Arbeitsschicht',
  'Separators and receiver were drained, and the automatic drains seen to work.':
    'Abscheider und Druckluftspeicher wurden entwässert, und es wurde nachgesehen, dass die automatischen Kondensatablässe arbeiten.',
  'the maintainer, on the round of each shift':
    'die Instandhaltung, auf der Runde jeder Arbeitsschicht',
};
