/** Why a rule answers as it does, on the wire. Values are in the unit beside them. */
import { z } from 'zod';
import { epochMs } from './instant.ts';

const value = z.number();

export const evidenceSchema = z.object({
  unit: z.string(),
  value: value.nullable().describe('The value that decided, or the last one before silence.'),
  at: epochMs.nullable(),
  limit: value.nullable(),
  side: z.enum(['low', 'high']).nullable(),
  since: epochMs.nullable().describe('Since when the condition has held.'),
  slope_per_h: value.nullable(),
  earliest: epochMs.nullable().describe('The limit is reached no earlier than this.'),
  latest: epochMs.nullable(),
  duration_ms: z.number().nullable(),
  cause: z.string().nullable().describe('Why the last reading was not usable.'),
  which: z.string().nullable().describe('Of several signals, the one it is about.'),
  reference: value.nullable().describe('What the value is compared with.'),
  difference: value.nullable().describe('How far from it; of a temperature in K.'),
  allowed: value.nullable().describe('How far it may be from it; of a temperature in K.'),
  per_ms: z.number().nullable().describe('The time in which it changed so much.'),
  other: z.string().nullable().describe('The other of two signals that disagree.'),
  pattern: z.string().nullable().describe('The run rule that found it.'),
  reached_ms: z.number().nullable().describe('How long it was where it should be.'),
  required_ms: z.number().nullable(),
  left_ms: z.number().nullable().describe('Time left before the exit, or before the limit.'),
  item: z.string().nullable().optional().describe('The rack, container, lot or shot it is about.'),
  items: z.int().nullable().optional().describe('How many of them are as far.'),
  held_by: z
    .string()
    .nullable()
    .optional()
    .describe('Who put it on hold: a person, or `rule:` and a rule.'),
  held_for: z.string().nullable().optional().describe('Why it was put on hold.'),
});
