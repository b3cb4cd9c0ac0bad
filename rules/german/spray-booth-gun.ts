/** German for the texts of `rules/stations/spray-booth-gun.ts`. */
import type { Texts } from './texts.ts';

export const sprayBoothGun: Texts = {
  '{$station}: atomising air at {$value}, {$difference} from {$reference}, for {$duration} with the trigger on.':
    '{$station}: Zerstäuberluft bei {$value}, {$difference} Abweichung von {$reference}, seit {$duration} bei betätigtem Abzug.',
  'Too little spits and runs; too much sprays dry, and a dry coat is gritty and weak.':
    'Zu wenig Luft gibt Spritzer und Läufer; zu viel spritzt trocken, und eine trocken gespritzte Schicht ist rau und schwach.',
  'Check its regulator and the header.':
    'Den Druckregler der Zerstäuberluft und die Hauptleitung der Druckluft prüfen.',
  'With the gun vented, clean or change the cap; then see the pattern on glass.':
    'Bei druckloser Spritzpistole die Luftkappe reinigen oder wechseln; dann das Spritzbild auf Glas ansehen.',
  'Spray a panel before any more parts.':
    'Ein Prüfblech spritzen, bevor weitere Teile gespritzt werden.',
  'make up for it with more or less fluid': 'Das nicht mit mehr oder weniger Material ausgleichen.',
  'Stored pressure. Vent and lock out by local rules. Never point the gun at anybody.':
    'Gespeicherter Druck. Nach den örtlichen Vorschriften drucklos machen und gegen Wiedereinschalten sichern. Die Spritzpistole nie auf jemanden richten.',
  '{$station}: metal at the gun at {$value}; the limit is {$limit}.':
    '{$station}: Metall an der Spritzpistole bei {$value}; der Grenzwert ist {$limit}.',
  'Cold metal makes runs and flash rust, hot metal a dry spray that does not flow.':
    'Kaltes Metall gibt Läufer und Flugrost, heißes Metall eine trocken gespritzte Schicht, die nicht verläuft.',
  'Check the preheat, and the gap between it and the gun.':
    'Vorwärmung prüfen, ebenso den Abstand zwischen ihr und der Spritzpistole.',
  'Send the next part only once its metal is right.':
    'Das nächste Teil erst schicken, wenn die Temperatur seines Metalls stimmt.',
  'spray cold parts “thicker”': 'Kalte Teile nicht „dicker“ spritzen.',
  '{$station}: the shift ended at {$clock}, and nobody wrote down a flush for {$reached}.':
    '{$station}: Schichtende {$clock}, und seit {$reached} hat niemand ein Spülen eingetragen.',
  'Material dries in the tip; it plugs, or comes off in lumps onto the next parts.':
    'Material trocknet in der Düsenspitze; sie verstopft, oder es löst sich in Klumpen auf die nächsten Teile.',
  'Flush guns and lines with deionised water; with the gun vented, clean the caps.':
    'Spritzpistolen und Leitungen mit vollentsalztem Wasser spülen; bei druckloser Spritzpistole die Luftkappen reinigen.',
  'Write down that it was flushed.': 'Eintragen, dass gespült wurde.',
  'At the restart measure a first part before release.':
    'Beim Wiederanlauf vor der Freigabe ein Erstteil messen.',
  'put solvent on wet adhesive': 'Kein Lösemittel auf nasses Haftmittel geben.',
  'poke the tip with steel': 'Nicht mit Stahl in der Düsenspitze stochern.',
  'Stored pressure. Vent and lock out by local rules. Wear what the material’s data sheet asks for.':
    'Gespeicherter Druck. Nach den örtlichen Vorschriften drucklos machen und gegen Wiedereinschalten sichern. Schutzausrüstung tragen, wie das Datenblatt des Materials sie verlangt.',
  '{$station}: the guns have lain idle since {$clock}, for {$reached}, unflushed.':
    '{$station}: Die Spritzpistolen liegen seit {$clock} unbenutzt, seit {$reached}, ungespült.',
  '{$station}: the guns were laid down at {$clock} and have lain for {$reached}, unflushed.':
    '{$station}: Spritzpistolen abgelegt {$clock}, sie liegen seit {$reached} ungespült.',
  '{$station}: the guns have sprayed for {$reached} since the flush of {$clock}, and no first part was released.':
    '{$station}: Seit dem Spülen ({$clock}) wurde {$reached} lang gespritzt und kein Erstteil freigegeben.',
  'Water stands in the line after a flush; the first parts are thin.':
    'Nach dem Spülen steht Wasser in der Leitung; die ersten Teile werden dünn beschichtet.',
  'Release no part; tag the rack at the guns “hold”.':
    'Kein Teil freigeben; das Gestell an den Spritzpistolen mit „gesperrt“ kennzeichnen.',
  'Purge the volume of line and gun, see the pattern on glass, spray a panel and measure it.':
    'Das Volumen von Leitung und Spritzpistole freispritzen, das Spritzbild auf Glas ansehen, ein Prüfblech spritzen und messen.',
  'Good: write down the first-off, and which parts were sprayed before it.':
    'Wenn gut: die Erstteilfreigabe eintragen, dazu, welche Teile davor gespritzt wurden.',
  'release parts on looks': 'Keine Teile nach Augenschein freigeben.',
  '{$station}: the guns have sprayed for {$reached} since container {$item} was connected at {$clock}, and no first part was released.':
    '{$station}: Gebinde {$item} ist angeschlossen seit {$clock}; seither wurde {$reached} lang gespritzt und kein Erstteil freigegeben.',
  'Another container may be of other solids, or unmixed; the first parts tell.':
    'Ein anderes Gebinde kann einen anderen Feststoffgehalt haben oder ungemischt sein; die ersten Teile zeigen es.',
  '{$station}: the guns have sprayed for more than {$high} since the last change of needle and nozzle.':
    '{$station}: Mit den Spritzpistolen wurde seit dem letzten Wechsel von Nadel und Düse länger als {$high} gespritzt.',
  'Have needle and nozzle and seals changed with the rebuild kit, gun vented and flushed.':
    'Nadel, Düse und Dichtungen mit dem Reparatursatz wechseln lassen, bei druckloser und gespülter Spritzpistole.',
  'Write down the change (needle-changed).': 'Den Wechsel eintragen (needle-changed).',
  'A worn gun sprays a pattern that drifts, shift by shift, and nobody sees when.':
    'Bei einer verschlissenen Spritzpistole wandert das Spritzbild von Arbeitsschicht zu Arbeitsschicht, und niemand sieht, wann.',
  'See the pattern on glass and measure a panel.':
    'Das Spritzbild auf Glas ansehen und ein Prüfblech messen.',
  'turn fluid or air up to make up for wear':
    'Material oder Luft nicht höher stellen, um Verschleiß auszugleichen.',
  '{$station}: the guns have sprayed for more than {$high} since the last change of air cap.':
    '{$station}: Mit den Spritzpistolen wurde seit dem letzten Wechsel der Luftkappe länger als {$high} gespritzt.',
  'Have air cap and seals changed with the rebuild kit, gun vented and flushed.':
    'Luftkappe und Dichtungen mit dem Reparatursatz wechseln lassen, bei druckloser und gespülter Spritzpistole.',
  'Write down the change (cap-changed).': 'Den Wechsel eintragen (cap-changed).',
};
