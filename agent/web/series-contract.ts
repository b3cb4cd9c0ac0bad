/** A signal over time, on the wire. */
import { z } from 'zod';
import { epochMs } from './instant.ts';

const word = z.string();
const value = z.number();

export const pointSchema = z
  .tuple([
    epochMs,
    value.nullable(),
    value.nullable(),
    value.nullable(),
    z.int().min(0),
    z.int().min(0),
  ])
  .describe('[at, min, max, mean, count, bad_count]; the three are null where none was usable.');
export const seriesSchema = z.object({
  unit: word,
  points: z.array(pointSchema),
  uncertain: z
    .array(z.int().min(0))
    .describe(
      'One number for each point, in the same order: how many of its readings count and are in doubt (uncertain, late or in conflict with another).',
    ),
  damage: z
    .array(z.object({ from: epochMs, to: epochMs, reason: z.string() }))
    .describe('Stretches whose samples are damaged; drawn by the minute where that is kept.'),
});
export type Series = z.infer<typeof seriesSchema>;
export type SeriesPoint = z.infer<typeof pointSchema>;
