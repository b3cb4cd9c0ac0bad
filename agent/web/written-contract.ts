/** What people write down: marks, the clocks they start, and readings entered by hand. */
import { z } from 'zod';
import { epochMs } from './instant.ts';
import { gradeWords, holdWhatWords } from './words.ts';

const word = z.string();

export const saidMarkSchema = z.object({
  line: word,
  station: word,
  mark: word,
  item: z.string().nullable().describe('Which rack, container, lot or shot; null for a place.'),
  at: epochMs.describe('When it happened.'),
  by: word.describe('Who said so: a person, or topic: and the topic of a device.'),
});
export type SaidMarkView = z.infer<typeof saidMarkSchema>;

export const markSchema = z.object({
  id: word.describe('line/station/mark'),
  line: word,
  station: word,
  mark: word,
  what: holdWhatWords.nullable().describe('What it happens to; null where to the place itself.'),
  meaning: z.string().describe('What happened, in a sentence.'),
  by_whom: z.string().describe('Who writes it down.'),
  topic: z.string().nullable().describe('The MQTT topic by which a device says it.'),
  last: z
    .object({ at: epochMs, item: z.string().nullable(), by: word })
    .nullable()
    .describe('The last word of it; null before the first.'),
});
export type MarkView = z.infer<typeof markSchema>;

export const clockSchema = z.object({
  rule: word,
  line: word,
  station: word,
  mark: word.describe('The mark that started it.'),
  item: z.string().nullable(),
  since: epochMs,
  said: z.boolean().describe('false: nobody has said it yet; it runs since watching began.'),
  early: epochMs.describe('When it is first told.'),
  due: epochMs.describe('When it is too old.'),
  severity: z.union([z.literal(0), z.literal(1), z.literal(2)]),
});
export type ClockView = z.infer<typeof clockSchema>;

export const marksSchema = z.object({
  at: epochMs,
  marks: z.array(markSchema),
  clocks: z.array(clockSchema).describe('Clocks that run, the one due first coming first.'),
});
export type MarksView = z.infer<typeof marksSchema>;

export const readingSchema = z.object({
  signal: word,
  at: epochMs.describe('When it was read.'),
  value: z.number().describe('In `unit`, at the resolution of the signal.'),
  unit: word.describe('The unit in which the signal is kept.'),
  quality: z.object({ grade: gradeWords, cause: z.string().nullable() }),
  judged: z
    .boolean()
    .describe('false: kept, but too old, or older than the last one, or of a time that has one.'),
});
export type ReadingView = z.infer<typeof readingSchema>;
