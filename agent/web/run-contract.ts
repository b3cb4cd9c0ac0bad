/** Oven runs on the wire: what a load was from entry to exit, and its profile. */
import { z } from 'zod';
import { epochMs, pointSchema } from './contract.ts';

const word = z.string();
const value = z.number();

export const runLimitsSchema = z.object({
  above: value.nullable().describe('Drying: at or above this for at least above_for_ms.'),
  above_for_ms: z.number().nullable(),
  peak: value.nullable().describe('Never above this.'),
  upper: value.nullable().describe('At or above this for at most upper_for_ms.'),
  upper_for_ms: z.number().nullable(),
});
export const runSchema = z.object({
  id: word.describe('Names one run: the station, @, and when it began, in epoch milliseconds.'),
  line: word,
  station: word,
  opened: epochMs,
  closed: epochMs.nullable().describe('null while the load is inside.'),
  why: z.enum(['loaded', 'unloaded', 'removed']).describe('What last happened to it.'),
  readings: z
    .int()
    .min(0)
    .nullable()
    .describe('How many readings of the metal; null while the load is inside.'),
  peak: value.nullable().describe('Highest temperature of the metal, in Cel.'),
  lowest: value.nullable(),
  steepest_per_min: value
    .nullable()
    .describe('Fastest rise of the metal, in K from one minute’s mean to the next.'),
  above_ms: z.number().nullable(),
  upper_ms: z.number().nullable(),
  unobserved_ms: z
    .number()
    .nullable()
    .describe('How much of the run had no usable reading of the metal.'),
  under: z.boolean().nullable().describe('Dried too little; null where nobody can tell.'),
  over: z.boolean().nullable().describe('Heated too much; null where nobody can tell.'),
  limits: runLimitsSchema.describe('What runs of this station are held against now.'),
});
export type RunView = z.infer<typeof runSchema>;
export const runsSchema = z.object({ runs: z.array(runSchema), truncated: z.boolean() });
export const runProfileSchema = z.object({
  run: runSchema,
  profile: z
    .array(z.object({ signal: word, unit: word, points: z.array(pointSchema) }))
    .describe('The metal first, then the air of the zones.'),
});
export type RunProfileView = z.infer<typeof runProfileSchema>;
