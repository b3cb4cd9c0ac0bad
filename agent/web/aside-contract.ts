/** Alarms that are put aside, on the wire: shelved, suppressed by design, out of service. */
import { z } from 'zod';
import { epochMs } from './instant.ts';
import { priorityWords, transitionWords } from './words.ts';

const word = z.string();

export const asideSchema = z.object({
  rule: word,
  line: word,
  station: word,
  signal: word,
  occurrence: word.nullable().describe('The alarm that stands or waits beneath; null for none.'),
  state: z.enum(['shelved', 'suppressed-by-design', 'out-of-service']),
  stands: z.boolean().describe('Its condition holds: it would be told, were it not put aside.'),
  priority: priorityWords,
  since: epochMs.nullable().describe('null where an older agent did not write it down.'),
  until: epochMs
    .nullable()
    .describe('When it ends by itself: a shelf always has one. null where the plant decides.'),
  one_shot: z.boolean().describe('A shelf that ends as soon as the alarm returns.'),
  by: word.nullable().describe('null where the state of the plant did it.'),
  reason: z.string(),
});
export type AsideView = z.infer<typeof asideSchema>;

export const asidesSchema = z.object({
  aside: z.array(asideSchema).describe('Out of service first, then by the end, then by rule.'),
});

export const asideEventSchema = z.object({
  at: epochMs,
  change: transitionWords,
  rule: word,
  aside: asideSchema.nullable().describe('null: it is put aside no more.'),
});
