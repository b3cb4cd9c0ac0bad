/** Refused messages on the wire: what a topic sent that could not be used, and why. */
import { z } from 'zod';
import { epochMs } from './instant.ts';

export const refusedMessageSchema = z.object({
  at: epochMs.describe('When it came.'),
  from: z
    .string()
    .nullable()
    .describe('The device that sent it, or its MQTT client id where it has no name.'),
  signal: z
    .string()
    .nullable()
    .describe('Whose reading it was to be, or which mark; null where it could be none.'),
  reason: z.string().describe('The cause, as the agent’s own figures count it.'),
  why: z.string().describe('The same in a sentence.'),
  fix: z.string().describe('What to look at first.'),
  looked_for: z
    .string()
    .nullable()
    .describe('The JSON Pointer that was followed; null where none was.'),
  found: z
    .string()
    .nullable()
    .describe('What stood there, in words; null where nothing was looked at.'),
  begins: z.string().describe('How the message begins, as far as it can be printed.'),
  bytes: z
    .int()
    .min(0)
    .describe(
      'Read of it. Of one that is too large this is not its size: no more is read than shows that.',
    ),
});
export const refusedTopicSchema = z.object({
  topic: z.string(),
  count: z.int().min(0).describe('Refused since the agent started.'),
  standing: z.boolean().describe('true: the message that came last was refused.'),
  messages: z.array(refusedMessageSchema).describe('The last few. Oldest first.'),
});
export type RefusedTopicView = z.infer<typeof refusedTopicSchema>;
export const refusedSchema = z.object({ topics: z.array(refusedTopicSchema) });
