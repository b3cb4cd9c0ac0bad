/** What a material sheet says of keeping: in use, let down, on coated parts; and of mixing a new container. */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';

const duration = (description: string) => z.optional(durationText.check(z.meta({ description })));

export const keepingFields = {
  opened_life: duration('How long it keeps once its container was first drawn from.'),
  let_down_life: duration('How long it keeps once it was let down with water.'),
  layover: duration('Longest time from the coat to the press.'),
  coated_high: z.optional(
    quantityText.check(
      z.meta({ description: 'Highest temperature at which coated parts may wait.' }),
    ),
  ),
  mix_half_pint: duration(
    'Mixing of a new container of up to half a pint (0.24 L), after stirring by hand.',
  ),
  mix_gallon: duration('Mixing of a new container of up to a gallon (3.8 L).'),
  mix_five_gallon: duration(
    'Mixing of a new pail of up to five gallons (19 L), with a low-shear air mixer.',
  ),
  mix_drum: duration('Mixing of a new drum (208 L) by its agitator, after cranking by hand.'),
} as const;
