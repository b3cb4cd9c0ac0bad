/** What a site file says of people: that they are asked for, and when a session of theirs ends. */
import { z } from 'zod/mini';
import { durationSetting } from '../kinds/settings.ts';

export const peopleWritten = z
  .union([
    z
      .literal('required')
      .check(
        z.meta({ description: 'Whoever opens the page is asked who they are, as with --people.' }),
      ),
    z
      .strictObject({
        session_idle: z.optional(
          durationSetting('A session that nobody used for so long ends. 8 h where absent.'),
        ),
        session_end: z.optional(
          durationSetting('A session ends after so long in any case. 30 d where absent.'),
        ),
      })
      .check(z.meta({ title: 'sessions', description: 'Required, with other ends of a session.' })),
  ])
  .check(
    z.meta({
      title: 'people',
      description: 'Whether people are asked for. It counts from the start of the agent on.',
    }),
  );
export type PeopleWritten = z.infer<typeof peopleWritten>;
