/** A person's own sessions on the wire. */
import { z } from 'zod';
import { epochMs } from './instant.ts';

export const ownSessionsSchema = z.object({
  sessions: z
    .array(
      z.object({
        id: z.string().describe('Names it; lets nobody in.'),
        on: z.string().nullable().describe('Browser and system in words; null where not known.'),
        made: epochMs.describe('When it began.'),
        used: epochMs.describe('When it was last used.'),
        ends: epochMs.describe('When it ends if nobody uses it.'),
        here: z.boolean().describe('The one that asks.'),
      }),
    )
    .describe('Last used first.'),
});
export type OwnSessionsView = z.output<typeof ownSessionsSchema>;
