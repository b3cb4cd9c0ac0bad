/** Refused messages on the wire: what a topic sent that could not be used, and why. */
import { z } from 'zod';
import { epochMs } from './instant.ts';

export const refusedMessageSchema = z.object({
  at: epochMs.describe('When it came.'),
  signal: z
    .string()
    .nullable()
    .describe('Whose reading it was to be; null where it could be none.'),
  reason: z.string().describe('The cause, as the agent’s own figures count it.'),
  why: z.string().describe('The same in a sentence.'),
  fix: z.string().describe('What to look at first.'),
  begins: z.string().describe('How the message begins, as far as it can be printed.'),
  bytes: z.int().min(0),
});
export const refusedTopicSchema = z.object({
  topic: z.string(),
  count: z.int().min(0).describe('Refused since the agent started.'),
  standing: z.boolean().describe('true: the message that came last was refused.'),
  messages: z.array(refusedMessageSchema).describe('The last few. Oldest first.'),
});
export type RefusedTopicView = z.infer<typeof refusedTopicSchema>;
export const refusedSchema = z.object({ topics: z.array(refusedTopicSchema) });
