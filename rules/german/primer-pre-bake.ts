/** German for the texts of `rules/stations/primer-pre-bake.ts`. */
import type { Texts } from './texts.ts';

export const primerPreBake: Texts = {
  // hazards
  'Water stays in the primer under the cover coat, and the two split.':
    'Wasser bleibt im Primer unter der Decklage, und die beiden trennen sich.',
  'The primer is baked dead, and the cover coat does not hold on it.':
    'Der Primer ist totgebrannt, und die Decklage hält nicht auf ihm.',
  'The cover coat comes before the primer is dry, or after it has gathered dirt.':
    'Die Decklage kommt, bevor der Primer trocken ist oder nachdem er Schmutz aufgenommen hat.',
  'Zones leave their set-points, and racks get another heat than was set up.':
    'Zonen verlassen ihre Sollwerte, und Gestelle bekommen eine andere Wärme als eingestellt.',
  // marks
  'The parts of this rack were coated with primer.':
    'Die Teile dieses Gestells wurden mit Primer beschichtet.',
  'the sprayer or the scanner at the primer booth':
    'wer spritzt, oder der Scanner an der Primerkabine',
  'The parts of this rack were given their cover coat.':
    'Die Teile dieses Gestells bekamen ihre Decklage.',
  'the sprayer or the scanner at the adhesive booth':
    'wer spritzt, oder der Scanner an der Haftmittelkabine',
};
