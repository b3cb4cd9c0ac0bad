/** What a material sheet says of a bath and its film: the state it is run in, and the oven test of this lot. */
import { z } from 'zod/mini';
import { quantityText } from '../kinds/settings.ts';

const quantity = (description: string) => z.optional(quantityText.check(z.meta({ description })));

export const bathFields = {
  bath_temperature: quantity('Temperature at which the film was set up.'),
  withdrawal_speed: quantity('Speed of withdrawal at which the film was set up.'),
  oven_solids: quantity('Solids by mass of this lot, by oven (ISO 3251 or ASTM D2369).'),
  oven_solids_u: quantity('Standard uncertainty of that oven test, half of what covers 95 %.'),
  oven_density: quantity('Density of the same sample.'),
  oven_density_u: quantity('Standard uncertainty of that density.'),
  oven_temperature: quantity('Temperature at which that density was read.'),
  film_low: quantity('Thinnest dry film.'),
  film_high: quantity('Thickest dry film.'),
  ph_low: quantity('Lowest pH of the bath, as "6.5 [pH]".'),
  ph_high: quantity('Highest pH of the bath.'),
  conductivity_high: quantity(
    'Highest conductivity of the bath; it rises with what parts carry in.',
  ),
  viscosity_low: quantity('Lowest viscosity of the bath, at one shear rate and temperature.'),
  viscosity_high: quantity('Highest viscosity of the bath, at the same.'),
} as const;
