/** German for the texts of `rules/stations/drying-oven.ts`. */
import type { Texts } from './texts.ts';

export const dryingOven: Texts = {
  'Water stays in the coat: it blisters, or the rubber sweeps it off in the mould.':
    'Wasser bleibt in der Schicht: Sie wirft Blasen, oder der Kautschuk schiebt sie in der Form weg.',
  'The coat cures before it meets the rubber, and the rubber does not hold.':
    'Die Schicht vernetzt, bevor sie auf den Kautschuk trifft, und der Gummi haftet nicht.',
  'A load stands in the heat; it over-bakes, and dried residue may light itself.':
    'Eine Charge steht in der Hitze; sie wird überhitzt, und getrockneter Rückstand kann sich selbst entzünden.',
  'The exhaust fails; vapour gathers in the oven and the room.':
    'Die Abluft fällt aus; Dämpfe sammeln sich im Ofen und im Raum.',
  'The oven is judged by a sensor that is wrong.':
    'Der Ofen wird nach einem Sensor beurteilt, der falsch misst.',
  'Heat of earlier ovens and passes adds up until the coat is cured before the rubber.':
    'Die Wärme früherer Öfen und Durchläufe summiert sich, bis die Schicht schon vor dem Kautschuk vernetzt ist.',
  'write the dose of each pass on the rack’s card, preheat and primer too, and add them up before another bake':
    'die Wärmedosis jedes Durchlaufs auf die Karte des Gestells schreiben, auch Vorwärmen und Primer, und vor einer weiteren Ofenfahrt zusammenzählen',
  'Parts in another corner, or heavier or lighter ones, get another heat than the one that is measured.':
    'Teile in einer anderen Ecke, oder schwerere oder leichtere, bekommen eine andere Wärme als die gemessene.',
};
