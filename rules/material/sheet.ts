/**
 * A material sheet: the numbers of an adhesive or primer that only its maker's data sheet or the
 * plant's own trial can give. Absent means unknown, and the rules that need it say so.
 */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';
import { bathFields } from './sheet-bath.ts';
import { coatingFields } from './sheet-coating.ts';
import { heatFields } from './sheet-heat.ts';
import { keepingFields } from './sheet-keeping.ts';

export const sheetWritten = z
  .strictObject({
    name: z.string().check(z.minLength(1), z.meta({ description: 'What people call it.' })),
    source: z
      .string()
      .check(
        z.minLength(1),
        z.meta({ description: 'Where the numbers come from: title and date of the data sheet.' }),
      ),
    storage_low: z.optional(
      quantityText.check(z.meta({ description: 'Lowest storage temperature.' })),
    ),
    storage_high: z.optional(
      quantityText.check(z.meta({ description: 'Highest storage temperature.' })),
    ),
    shelf_life: z.optional(
      durationText.check(
        z.meta({ description: 'How long it keeps unopened, from the day it was made.' }),
      ),
    ),
    max_rest: z.optional(
      durationText.check(
        z.meta({
          description:
            'Longest time the agitator may stand before the material must be mixed anew.',
        }),
      ),
    ),
    stir_time: z.optional(
      durationText.check(z.meta({ description: 'Stirring before use, after a rest.' })),
    ),
    target_solids: z.optional(
      quantityText.check(z.meta({ description: 'Solids by mass as supplied, as "35 %".' })),
    ),
    ...heatFields,
    ...bathFields,
    ...coatingFields,
    ...keepingFields,
    residue_limit: z.optional(
      quantityText.check(
        z.meta({
          description:
            'Temperature at which its dried residue may light itself. It may lower the limits here, never raise them.',
        }),
      ),
    ),
    residue_kind: z.optional(
      z.enum(['oxidising', 'self-reactive', 'unknown']).check(
        z.meta({
          description:
            'How its dried residue heats itself: by taking up oxygen, or by decomposing without any, which smothering does not stop. Unknown is treated as self-reactive.',
        }),
      ),
    ),
    agitator_low: z.optional(
      quantityText.check(z.meta({ description: 'Lowest speed of the built-in drum agitator.' })),
    ),
    agitator_high: z.optional(
      quantityText.check(z.meta({ description: 'Highest speed of the built-in drum agitator.' })),
    ),
  })
  .check(z.meta({ title: 'Forebond material sheet' }));
export type SheetWritten = z.infer<typeof sheetWritten>;
