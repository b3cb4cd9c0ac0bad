/** When the plant is so that an alarm means nothing, and how long a shelf may be, as people write it. */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';
import { nameText } from './name.ts';

const because = z
  .string()
  .check(
    z.minLength(1),
    z.maxLength(200),
    z.meta({ description: 'Why the alarm means nothing then, as “the line stands”.' }),
  );

const each = {
  because,
  settle: z.optional(
    durationText.check(
      z.meta({
        description: 'It goes on for so long after that has ended, as the time an oven warms up.',
      }),
    ),
  ),
  signed_by: z.optional(
    z.string().check(
      z.minLength(1),
      z.maxLength(200),
      z.meta({
        description:
          'Who answers for it, for EHS (environment, health and safety). Needed where people can be hurt.',
      }),
    ),
  ),
};

const bySignal = z.strictObject({
  signal: nameText.check(
    z.meta({
      description: 'A signal of this station. While it cannot be read nothing is suppressed.',
    }),
  ),
  low: z.optional(quantityText),
  high: z.optional(quantityText),
  ...each,
});

const byMarks = z.strictObject({
  from: nameText.check(
    z.meta({ description: 'The mark of this station with which it begins, as cleaning-begun.' }),
  ),
  until: nameText.check(z.meta({ description: 'The mark with which it ends.' })),
  at_most: z.optional(
    durationText.check(
      z.meta({ description: 'It ends after so long though nobody wrote the second mark; 8 h.' }),
    ),
  ),
  ...each,
});

const one = z.union([bySignal, byMarks]);

export const suppressWritten = z.union([one, z.array(one).check(z.minLength(1), z.maxLength(8))]);
export type WhileWritten = z.infer<typeof one>;

const longest = (text: string) =>
  z.optional(durationText.check(z.meta({ description: `The longest shelf; ${text}.` })));

export const shelvingWritten = z
  .strictObject({ high: longest('60 min'), medium: longest('8 h'), low: longest('24 h') })
  .check(
    z.meta({
      title: 'shelving',
      description:
        'How long an alarm may be shelved at most, by its priority. What is highly managed is never shelved.',
    }),
  );
export type ShelvingWritten = z.infer<typeof shelvingWritten>;
