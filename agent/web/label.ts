/** An alarm's label on the wire: texts filled in canonical units, and what they were filled with. */
import { z } from 'zod';
import { signalWordWords } from './words.ts';

const epochMs = z.int().min(0).max(253_402_300_799_999);
const word = z.string();
const value = z.number();
/** Beside a canonical unit: the UCUM code in which the site or its station writes this thing. */
const written_unit = z.string().optional();

/** What a placeholder stands for; numbers in canonical units, for the reader's own to be made of. */
export const factSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('quantity'), value, unit: word, written_unit }),
  z.object({
    kind: z.literal('reading'),
    value,
    unit: word,
    written_unit,
    digits: z.int().nullable(),
  }),
  z.object({ kind: z.literal('duration'), ms: z.number() }),
  z.object({ kind: z.literal('clock'), at: epochMs }),
  z.object({
    kind: z.literal('text'),
    text: z.string(),
    german: z.string().optional().describe('Absent where it is the same in every language.'),
  }),
]);
export type LabelFact = z.infer<typeof factSchema>;
const textsSchema = z.object({
  sentence: z.string().describe('`{$name}` stands for the fact of that name.'),
  consequence: z.string(),
  steps: z.array(z.string()),
  do_not: z.array(z.string()),
  caution: z.string(),
});
export type LabelTemplateTexts = z.infer<typeof textsSchema>;
export const templateSchema = textsSchema.extend({
  at: epochMs.describe('The moment the facts are of.'),
  german: textsSchema
    .optional()
    .describe('The same in German; its do-nots are whole sentences. What the site wrote stays.'),
  facts: z.record(word, factSchema),
});
/** As above, of a rule: what no evidence fills. */
export const ruleTemplateSchema = templateSchema.omit({ at: true, sentence: true }).extend({
  german: textsSchema.omit({ sentence: true }).optional(),
});
export const labelSchema = z.object({
  word: signalWordWords.describe('Who can be hurt (ANSI Z535.4, ISO 3864).'),
  sentence: z.string().describe('Subject, fact, limit, time; values filled in.'),
  consequence: z.string(),
  steps: z.array(z.string()),
  do_not: z.array(z.string()),
  caution: z.string(),
  deferral: z.string(),
  template: templateSchema
    .optional()
    .describe('The same texts before their values were filled in, for readers with other units.'),
});
