/** German for the texts of `rules/stations/drying-oven-air.ts`. */
import type { Texts } from './texts.ts';

export const dryingOvenAir: Texts = {
  // zone-high
  '{$signal} at {$value}, {$difference} above its set-point of {$reference}, for {$duration}.':
    '{$signal}: {$value}, seit {$duration} um {$difference} über dem Sollwert {$reference}.',
  'Parts over-bake, and dried residue heats up towards its ignition limit.':
    'Teile werden überhitzt, und getrockneter Rückstand erwärmt sich in Richtung seiner Zündgrenze.',
  'Otherwise compare it with the zone’s second sensor and the control’s own display, and lower the zone at its control.':
    'Andernfalls: mit dem zweiten Sensor der Zone und der Anzeige der Steuerung vergleichen und die Zone an ihrer Steuerung herunterregeln.',
  'Tag what was inside “hold” and tell the process engineer.':
    'Was im Ofen war, mit „gesperrt“ kennzeichnen und den Prozessingenieur informieren.',
  'trust one sensor': 'Nicht einem einzigen Sensor vertrauen.',
  'reach into the oven with a probe': 'Nicht mit einem Fühler in den Ofen greifen.',
  'Hot surfaces; work on burners and controls is for licensed people.':
    'Heiße Oberflächen; Arbeiten an Brennern und Steuerungen nur durch zugelassene Fachleute.',
  // sensors-disagree
  '{$signals} differ by {$difference}, more than {$allowed}, although the oven is steady; go by {$which}, the hotter, until it is known which is right.':
    '{$signals}: {$difference} auseinander, mehr als {$allowed}, obwohl der Ofen gleichmäßig läuft; bis feststeht, welcher stimmt, gilt der heißere: {$which}.',
  'One of the two is wrong; the oven is judged by a number nobody can trust.':
    'Einer der beiden misst falsch; der Ofen wird nach einer Zahl beurteilt, der niemand trauen kann.',
  'Compare both with the control’s own display; tag the one that is wrong.':
    'Beide mit der Anzeige der Steuerung vergleichen; den falschen kennzeichnen.',
  'Tell maintenance: with the oven cold and isolated they put a third probe beside the two.':
    'Instandhaltung informieren: Wenn der Ofen kalt und von allen Energiequellen getrennt ist, setzt sie einen dritten Fühler neben die beiden.',
  'Until then go by the more cautious of the two.':
    'Bis dahin gilt der vorsichtigere der beiden Werte.',
  'average them': 'Keinen Mittelwert aus beiden bilden.',
  'Reach the sensors only where it is safe to, with the oven cold.':
    'An die Sensoren nur gehen, wo es gefahrlos ist, und nur bei kaltem Ofen.',
  // exhaust-lost, exhaust-weak
  '{$station}: the exhaust has not been proven to flow since {$clock}, for {$duration}.':
    '{$station}: Seit {$clock}, also seit {$duration}, ist nicht nachgewiesen, dass die Abluft strömt.',
  '{$station}: exhaust at {$value}, far below the normal {$reference}, for {$duration}.':
    '{$station}: Abluft bei {$value}, seit {$duration} weit unter dem Normalwert {$reference}.',
  'Vapour and moisture gather in the oven and in the room.':
    'Dämpfe und Feuchte sammeln sich im Ofen und im Raum.',
  'Load no more.': 'Nicht mehr beladen.',
  'See at the oven’s own panel that the burner has tripped; if not, turn the heat off at the outside control.':
    'Am Bedienpult des Ofens prüfen, ob der Brenner abgeschaltet hat; wenn nicht, Heizung an der Bedienung von außen abschalten.',
  'Call the maintainer; keep people out of the room until it flows again. Whoever feels unwell goes to fresh air.':
    'Instandhaltung rufen; alle aus dem Raum halten, bis die Abluft wieder strömt. Wer sich unwohl fühlt, geht hinaus an die frische Luft.',
  'bridge the airflow switch': 'Den Strömungswächter nicht überbrücken.',
  'The interlock is the oven’s own; this page is none. Work on it is for licensed people.':
    'Die Verriegelung ist die des Ofens; diese Seite ist keine. Arbeiten an der Verriegelung nur durch zugelassene Fachleute.',
};
