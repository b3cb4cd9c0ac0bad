/** A rule on the wire: what it judges, its settings with where each comes from, its rationalisation. */
import { z } from 'zod';
import { ruleTemplateSchema } from './label.ts';
import { priorityWords, readinessWords, signalWordWords } from './words.ts';

export const ruleNumberSchema = z.object({
  setting: z.string(),
  written: z.union([z.string(), z.number(), z.boolean(), z.null()]),
  mark: z
    .string()
    .describe('CP common practice, PUB published, DS data sheet, SITE set here, EJ judgement.'),
  note: z.string(),
  source: z.string().nullable(),
  confirmed: z.boolean(),
});
export const ruleSchema = z.object({
  id: z.string().describe('line/station/rule'),
  line: z.string(),
  station: z.string(),
  kind: z.string(),
  summary: z.string().describe('What the kind judges, in one sentence.'),
  signals: z.array(z.string()).describe('Those it judges; the first is the one it is about.'),
  marks: z.array(z.string()).optional().describe('What people write down that it judges.'),
  unit: z.string(),
  readiness: readinessWords,
  needs: z.array(z.string()),
  settings: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])),
  priority: z
    .array(priorityWords)
    .min(1)
    .max(2)
    .describe('For the first limit, then for the second.'),
  word: signalWordWords,
  hazard: z
    .string()
    .nullable()
    .describe('What can happen that it watches for; null where it watches a sensor.'),
  people: z.boolean().describe('Somebody can be hurt by it.'),
  gates: z
    .array(
      z.object({
        signal: z.string(),
        low: z.number().nullable(),
        high: z.number().nullable(),
        unit: z.string(),
      }),
    )
    .describe('Judged only while each of these lies within its bounds.'),
  suppressed_while: z
    .array(
      z.object({
        because: z.string(),
        signed_by: z.string().nullable(),
        signal: z.string().nullable(),
        low: z.number().nullable(),
        high: z.number().nullable(),
        unit: z.string().nullable(),
        from: z.string().nullable().describe('The mark with which it begins.'),
        until: z.string().nullable(),
        at_most_ms: z.number().nullable(),
      }),
    )
    .optional()
    .describe('While any of these holds nobody is told; it is judged and recorded all the same.'),
  hold: z.string().nullable().describe('What it puts on hold, as "rack mounts-1/oven-1".'),
  highly_managed: z.boolean(),
  latching: z.boolean(),
  consequence: z.string(),
  steps: z.array(z.string()),
  do_not: z.array(z.string()),
  basis: z.string().describe('Where the limit comes from.'),
  caution: z.string().optional(),
  respond_ms: z.number().nullable().optional().describe('Time there is to act.'),
  numbers: z.array(ruleNumberSchema).optional().describe('Every setting with where it comes from.'),
  template: ruleTemplateSchema
    .optional()
    .describe('Its texts before they were filled in, for readers with other units.'),
});
export type RuleView = z.infer<typeof ruleSchema>;
export const rulesSchema = z.object({ rules: z.array(ruleSchema) });
