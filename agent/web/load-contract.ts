/** Alarm performance on the wire (ISA-18.2 / IEC 62682, "monitoring and assessment"). */
import { z } from 'zod';
import { epochMs } from './instant.ts';

const count = z.int().min(0);
const figure = z.number().min(0);
const answering = z.object({
  count,
  share: figure,
  answered: count,
  unanswered: count,
  median_ms: figure.nullable().describe('From told to acknowledged; null where none was.'),
  slowest_tenth_ms: figure.nullable(),
});

const figuresSchema = z.object({
  told: count.describe('Times somebody was called.'),
  fresh: count.describe('Of those, for the first time.'),
  per_day: figure,
  per_hour: figure,
  per_ten_minutes: figure,
  most_in_ten_minutes: count,
  share_of_hours_above_30: figure,
  share_of_ten_minutes_above_10: figure,
  floods: z.array(z.object({ from: epochMs, to: epochMs.nullable(), count })),
  share_in_flood: figure,
  top_ten: z.array(z.object({ rule: z.string(), count, share: figure })),
  share_of_top_ten: figure,
  chattering: z.array(z.object({ rule: z.string(), at: epochMs })),
  fleeting: z.array(z.object({ rule: z.string(), count })),
  standing: z.array(z.object({ rule: z.string(), since: epochMs })),
  by_priority: z.object({ high: answering, medium: answering, low: answering }),
});

const both = z.object({ acceptable: figure, manageable: figure });
const guidanceSchema = z.object({
  per_day: both,
  per_hour: both,
  per_ten_minutes: both,
  most_in_ten_minutes: figure,
  share_of_hours_above_30: figure,
  share_of_ten_minutes_above_10: figure,
  share_in_flood: figure,
  share_of_top_ten: figure,
  chattering: figure,
  standing: figure,
  by_priority: z.object({ high: figure, medium: figure, low: figure }),
});

export const loadSchema = z.object({
  since: epochMs.describe('As asked.'),
  counted_from: epochMs
    .optional()
    .describe('What is counted begins here: `since`, or where the record begins after that.'),
  until: epochMs,
  line: z.string().nullable(),
  enough: z.boolean().describe('The span is the 30 days or more that the standard wants.'),
  figures: figuresSchema,
  guidance: guidanceSchema.describe('What the standard calls acceptable; from memory of it.'),
  shifts: z.array(
    z.object({
      begins_min: count.describe('Minutes after midnight by the clock of the site.'),
      told: count,
      hours: figure.optional().describe('Hours of this shift that were counted.'),
      per_hour: figure.describe('0 where none was counted.'),
    }),
  ),
  needed: z
    .array(z.object({ rule: z.string(), yes: count, no: count }))
    .describe('What people said of alarms that were over: was this needed?'),
});
export type LoadView = z.infer<typeof loadSchema>;

export const neededSchema = z.object({ occurrence: z.string(), needed: z.boolean() });
export type NeededView = z.infer<typeof neededSchema>;
