/** A mark as people write it: what may be said to have happened at a station, and what device says so. */
import { z } from 'zod/mini';
import { holdWhats } from '../hold/hold.ts';
import { pointer, timeFormats } from './signal-schema.ts';

const plainMark = z
  .strictObject({
    kind: z.literal('plain').check(
      z.meta({
        description: 'The payload is the item in text; of a mark of the place, anything.',
      }),
    ),
  })
  .check(z.meta({ title: 'plain mark', description: 'The payload is the item in text: R-12.' }));
const jsonMark = z
  .strictObject({
    kind: z.literal('json').check(z.meta({ description: 'The payload is JSON.' })),
    item: z.optional(pointer('the item')),
    time: z.optional(pointer('the time')),
    time_format: z.optional(
      z
        .enum(timeFormats)
        .check(z.meta({ description: 'How the time is written. Without it, it is recognised.' })),
    ),
  })
  .check(
    z.meta({
      title: 'json mark',
      description: 'The payload is JSON; pointers say where item and time stand.',
    }),
  );
export const markPayloadWritten = z.discriminatedUnion('kind', [plainMark, jsonMark]);
export type MarkPayloadWritten = z.infer<typeof markPayloadWritten>;

export const markWritten = z
  .strictObject({
    what: z.optional(
      z.enum([...holdWhats, 'none']).check(
        z.meta({
          description:
            'What it happens to: a rack, container, lot or shot; none for the place itself. Only for a mark of your own.',
        }),
      ),
    ),
    meaning: z.optional(
      z
        .string()
        .check(
          z.minLength(1),
          z.maxLength(200),
          z.meta({ description: 'What happened, in a sentence. Only for a mark of your own.' }),
        ),
    ),
    by_whom: z.optional(
      z
        .string()
        .check(
          z.minLength(1),
          z.maxLength(100),
          z.meta({ description: 'Who writes it down, as “whoever loads the press”.' }),
        ),
    ),
    topic: z.optional(
      z
        .string()
        .check(
          z.minLength(1),
          z.maxLength(1_024),
          z.meta({ description: 'MQTT topic by which a scanner or a contact says it; without +.' }),
        ),
    ),
    payload: z.optional(
      markPayloadWritten.check(
        z.meta({ description: 'How such a message is read; plain unless given.' }),
      ),
    ),
  })
  .check(z.meta({ title: 'mark' }));
export type MarkWritten = z.infer<typeof markWritten>;
