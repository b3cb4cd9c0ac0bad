/** When shifts change, as people write it and as minutes of the day. */
import { z } from 'zod/mini';

const clock = z
  .string()
  .check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'write a time of day, as "06:00"'));

export const shiftsWritten = z.array(clock).check(
  z.minLength(1),
  z.maxLength(6),
  z.meta({
    description: 'When shifts change, by the clock of the site, as ["06:00", "14:00", "22:00"].',
  }),
);

/** Three shifts: common practice, no published source. */
const usual = ['06:00', '14:00', '22:00'] as const;

/** Minutes after midnight, ascending, each once. */
export function shiftsMin(written: readonly string[] | undefined): number[] {
  const minutes = (written ?? usual).map((text) => {
    const [hour, minute] = text.split(':');
    return Number(hour) * 60 + Number(minute);
  });
  return [...new Set(minutes)].sort((a, b) => a - b);
}
