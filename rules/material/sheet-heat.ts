/**
 * What a material sheet says of heat: drying, pre-bake and cure, which are three different heats.
 *
 * Drying and pre-bake take water out, in an oven. Cure bonds the coat to rubber, in the press, and
 * is never reached for in an oven.
 */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';

const quantity = (description: string) => z.optional(quantityText.check(z.meta({ description })));
const duration = (description: string) => z.optional(durationText.check(z.meta({ description })));

export const heatFields = {
  dry_above: quantity('Metal temperature at which the coat dries.'),
  dry_for: duration('Least time at or above dry_above.'),
  prebake_above: quantity('Of a primer: metal temperature at which its water leaves it.'),
  prebake_for: duration('Of a primer: least time at or above prebake_above.'),
  cover_after: duration('Of a primer: least time from priming to the cover coat.'),
  cover_within: duration('Of a primer: longest time from priming to the cover coat.'),
  bake_peak: quantity('Highest metal temperature the coat may see before it is bonded to rubber.'),
  bake_upper: quantity('Metal temperature at which the coat begins to cure too early.'),
  bake_upper_for: duration(
    'Longest time at or above bake_upper, all passes through an oven together.',
  ),
  dose_at: quantity('Temperature at which the heat the coat has had is counted.'),
  dose_z: quantity('Kelvin for ten times the rate of its early cure, as "30 K"; or dose_energy.'),
  dose_energy: quantity('Activation energy of its early cure, as "90 kJ/mol"; or dose_z.'),
  dose_limit: duration(
    'Longest time at dose_at that all heat before rubber may be worth: preheat, primer, drying, another bake, wait in the hot mould.',
  ),
  cure_above: quantity('In the press: lowest temperature of the cavity at which it bonds.'),
  cure_for: duration('In the press: least time of cure, for this compound and part.'),
  cure_pressure: quantity('In the press: least pressure while it cures.'),
  insert_wait: duration(
    'In the press: longest time an insert may lie in the hot mould before it closes.',
  ),
} as const;
