/**
 * Who is told of alarms and when, as people write it in the site file. Secrets never stand here:
 * they come from files or the environment.
 */
import { z } from 'zod/mini';
import { durationSetting } from '../kinds/settings.ts';
import { channelsWritten } from './channel-schema.ts';

const clock = z
  .string()
  .check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'write a time of day, as "06:00"'));

export const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof weekdays)[number];

const who = z.array(z.string().check(z.minLength(1), z.maxLength(100))).check(
  z.minLength(1),
  z.maxLength(20),
  z.meta({
    description:
      'Who is on call: people by name or id, or a role (operator, maintenance, ehs, engineer, administrator). The first is told first, the next when nobody answers.',
  }),
);

const mailedTo = z.optional(
  z.array(z.string().check(z.minLength(1), z.maxLength(100))).check(
    z.minLength(1),
    z.maxLength(20),
    z.meta({
      description:
        'Who gets it, where they have an e-mail address: people by name or id, roles, `on-call` for whoever the rota names then.',
    }),
  ),
);

const places = {
  stations: z.optional(
    z.array(z.string()).check(
      z.minLength(1),
      z.maxLength(100),
      z.meta({
        description:
          'Only for alarms of these stations, as line/station, or of a whole line. All where absent.',
      }),
    ),
  ),
  hazards: z.optional(
    z
      .array(z.string())
      .check(
        z.minLength(1),
        z.maxLength(100),
        z.meta({ description: 'Only for alarms of these hazards. All where absent.' }),
      ),
  ),
};

export const rotaWeekWritten = z
  .strictObject({
    who,
    days: z.optional(
      z
        .array(z.enum(weekdays))
        .check(
          z.minLength(1),
          z.maxLength(7),
          z.meta({ description: 'Days on which it begins. Every day where absent.' }),
        ),
    ),
    from: z.optional(
      clock.check(z.meta({ description: 'By the clock of the site. The whole day where absent.' })),
    ),
    to: z.optional(
      clock.check(
        z.meta({ description: 'Until then; the day after where it is not later than `from`.' }),
      ),
    ),
    ...places,
  })
  .check(z.meta({ title: 'hours of the week' }));

export const rotaCalendarWritten = z
  .strictObject({
    calendar: z.string().check(
      z.minLength(1),
      z.maxLength(500),
      z.meta({
        description:
          'An iCalendar file (RFC 5545) beside the site file or below it, or the https address of one. The title of an event says who is on call, several with commas between.',
      }),
    ),
    ...places,
  })
  .check(z.meta({ title: 'calendar' }));

export const rotaWritten = z.array(z.union([rotaWeekWritten, rotaCalendarWritten])).check(
  z.maxLength(500),
  z.meta({
    description:
      'Who is on call when. Entries that name stations or hazards go before those that name none. Where it says nobody, everyone who wants alarms is told.',
  }),
);

const byPriority = z.enum(['medium', 'low']);

export const tellingWritten = z
  .strictObject({
    rota: z.optional(rotaWritten),
    calendar_hosts: z.optional(
      z.array(z.string().check(z.minLength(1), z.maxLength(253))).check(
        z.maxLength(20),
        z.meta({
          description:
            'Hosts inside the plant from which a calendar may be read. Without it only addresses of the public network are asked.',
        }),
      ),
    ),
    quiet_hours: z.optional(
      z
        .strictObject({
          from: clock.check(z.meta({ description: 'By the clock of the site, as "22:00".' })),
          to: clock.check(
            z.meta({ description: 'Until then; the day after where it is not later than `from`.' }),
          ),
          priorities: z.optional(
            z.array(byPriority).check(
              z.minLength(1),
              z.maxLength(2),
              z.meta({
                description:
                  'Priorities that wait until the quiet hours end. Both where absent. High priority and highly managed alarms never wait.',
              }),
            ),
          ),
        })
        .check(
          z.meta({
            title: 'quiet hours',
            description: 'Hours of the site’s clock in which no phone buzzes for less than high.',
          }),
        ),
    ),
    escalate_after: z.optional(
      z
        .strictObject({
          high: z.optional(durationSetting('For alarms of high priority.')),
          medium: z.optional(durationSetting('For alarms of medium priority.')),
          low: z.optional(durationSetting('For alarms of low priority.')),
        })
        .check(
          z.meta({
            title: 'escalation',
            description:
              'When nobody acknowledged an alarm for so long, the next person is told, then everyone of the role. Half the rule’s time to respond where absent.',
          }),
        ),
    ),
    digest_at: z.optional(
      clock.check(
        z.meta({
          description:
            'When engineers get the list of alarms that came and went without calling anybody. "07:00" where absent.',
        }),
      ),
    ),
    weekly_report: z.optional(
      z
        .union([
          z.literal('off'),
          z
            .strictObject({
              day: z.optional(
                z.enum(weekdays).check(z.meta({ description: '`mon` where absent.' })),
              ),
              at: z.optional(
                clock.check(
                  z.meta({ description: 'By the clock of the site. "07:00" where absent.' }),
                ),
              ),
              to: mailedTo,
            })
            .check(z.meta({ title: 'weekly report' })),
        ])
        .check(
          z.meta({
            description:
              'Alarm performance of the week (ISA-18.2), by e-mail. To engineers where nobody is named; `off`: to nobody.',
          }),
        ),
    ),
    checkpoint_mail: z.optional(
      z
        .union([
          z.literal('off'),
          z
            .strictObject({
              at: z.optional(
                clock.check(
                  z.meta({ description: 'By the clock of the site. "06:00" where absent.' }),
                ),
              ),
              to: mailedTo,
            })
            .check(z.meta({ title: 'checkpoint mail' })),
        ])
        .check(
          z.meta({
            description:
              'The signed head of the ledger, by e-mail, once a day. To EHS and administrators where nobody is named; `off`: to nobody.',
          }),
        ),
    ),
    ...channelsWritten,
  })
  .check(z.meta({ title: 'telling' }));
export type TellingWritten = z.infer<typeof tellingWritten>;
export type RotaEntryWritten = z.infer<typeof rotaWritten>[number];
