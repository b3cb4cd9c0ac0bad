/** Telling on the wire: who would be told now, what waits to be told, a test to oneself. */
import { z } from 'zod';
import { epochMs } from './instant.ts';
import { priorityWords } from './words.ts';

const word = z.string();

export const channelWords = z.enum(['push', 'email', 'webhook']);
export const toldSchema = z.object({
  at: epochMs,
  person: word.nullable().describe('By id; null for a webhook, whose name stands in `to`.'),
  to: word.nullable(),
  channel: word,
  kind: word.describe('alarm, again, over, answered or flood.'),
  outcome: word.describe('delivered, gone, refused, given-up, withdrawn or full.'),
  cause: z.string().nullable().describe('Why it was not delivered.'),
});

export const tellingSchema = z.object({
  at: epochMs,
  rungs: z
    .array(
      z.object({
        people: z.array(z.object({ id: word, name: z.string(), channels: z.array(channelWords) })),
      }),
    )
    .describe('Who is told first, who next, up to everyone.'),
  webhooks: z.array(word),
  causes: z.array(z.string()).describe('What is wrong with it, in whole sentences.'),
});
export type TellingView = z.infer<typeof tellingSchema>;

export const waitingSchema = z.object({
  waiting: z.array(
    z.object({
      key: word,
      occurrence: word.nullable(),
      kind: word,
      title: z.string(),
      person: word.nullable(),
      to: word.nullable(),
      channel: channelWords,
      since: epochMs,
      next_try: epochMs,
      tries: z.int().min(0),
      cause: z.string().nullable().describe('Why the last try failed.'),
    }),
  ),
  chases: z.array(
    z.object({
      occurrence: word,
      waits: word.describe('answer, quiet, group, turn or nothing.'),
      due: epochMs.nullable(),
      told: z.int().min(0).describe('Rungs told so far.'),
    }),
  ),
});
export type WaitingView = z.infer<typeof waitingSchema>;

export const testSchema = z.object({ channels: z.array(channelWords) });

export const tellingQuery = z.strictObject({
  station: z.string().min(1).max(200).optional().describe('As line/station.'),
  hazard: z.string().min(1).max(200).optional(),
  priority: priorityWords.optional().describe('high where absent.'),
});
