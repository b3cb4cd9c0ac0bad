/** German for the texts of `rules/stations/residue-reaction.ts`. */
import type { Texts } from './texts.ts';

export const residueReaction: Texts = {
  '{$which}: the surface is {$value} hotter than the air beside it and rising {$minuteslope} a minute with the heat steady or off.':
    '{$which}: Die Oberfläche ist um {$value} heißer als die Luft daneben und erwärmt sich um {$minuteslope} je Minute, bei gleichbleibender oder abgeschalteter Heizung.',
  'The residue is reacting; it can burn at any oven temperature, and {$smother}.':
    'Der Rückstand reagiert; er kann bei jeder Ofentemperatur brennen, und {$smother}.',
  'Leave, keep everyone away, raise the fire alarm by the site fire plan{$plan}.':
    'Bereich verlassen, alle fernhalten, Feueralarm nach dem Brandschutzplan des Werks{$plan} auslösen.',
  'Heat off from outside, only if that is safe to reach.':
    'Nur wenn die Bedienung von außen gefahrlos zu erreichen ist: Heizung dort abschalten.',
  'open a door': 'Keine Tür öffnen.',
  'go near it or fight it': 'Nicht in die Nähe gehen und nicht zu löschen versuchen.',
  'scrape, blow or spray water at it':
    'Nicht daran schaben, nicht daraufblasen, kein Wasser daraufspritzen.',
};
