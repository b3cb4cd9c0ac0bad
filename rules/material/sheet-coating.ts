/**
 * What a material sheet says of coating: the metal under it, the gun, the film in all, the clocks from
 * preparation to coat.
 */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';

const quantity = (description: string) => z.optional(quantityText.check(z.meta({ description })));
const duration = (description: string) => z.optional(durationText.check(z.meta({ description })));

export const coatingFields = {
  volume_solids: quantity('Solids by volume of what is applied, never by mass.'),
  film_total_low: quantity('Thinnest dry film of all coats together.'),
  film_total_high: quantity('Thickest dry film of all coats together.'),
  part_low: quantity('Coldest metal at the gun.'),
  part_high: quantity('Hottest metal at the gun.'),
  idle_tip: duration('Longest time a gun may lie idle before it is flushed.'),
  coat_after_blast: duration('Longest time from blasting to the coat.'),
  coat_after_conversion: duration('Longest time from phosphating to the coat, dry and covered.'),
  profile_low: quantity('Least blast profile, as "25 um".'),
  profile_high: quantity('Most blast profile.'),
  phosphate_low: quantity('Least phosphate on the metal, as "1.5 g/m2".'),
  phosphate_high: quantity('Most phosphate on the metal; heavy phosphate splits within itself.'),
  rinse_conductivity_high: quantity('Highest conductivity of the last rinse.'),
} as const;
