/**
 * The site file: one schema for its types, its checks and the JSON Schema editors use.
 *
 * It says what may stand where. What needs the trade (which signals a station knows, whether a
 * limit fits the signal's unit) is checked when the site is compiled (rules/plan/compile.ts).
 */
import { z } from 'zod/mini';
import { quantityText } from '../kinds/settings.ts';
import { markWritten } from './mark-schema.ts';
import { nameText } from './name.ts';
import { peopleWritten } from './people-schema.ts';
import { ruleWritten } from './rule-schema.ts';
import { shiftsWritten } from './shifts.ts';
import { derivedWritten, signalWritten } from './signal-schema.ts';
import { shelvingWritten, suppressWritten } from './suppress-schema.ts';
import { tellingWritten } from './telling-schema.ts';

export const stationWritten = z
  .strictObject({
    kind: z
      .string()
      .check(
        z.meta({ description: 'A station kind, as adhesive-store or drum-mixer; or custom.' }),
      ),
    material: z.optional(
      nameText.check(z.meta({ description: 'The material it holds, one of `materials`.' })),
    ),
    container: z.optional(
      nameText.check(
        z.meta({
          description:
            'The container that stands here, for holds. Without it a hold is set on the whole station.',
        }),
      ),
    ),
    heating: z.optional(
      z.enum(['convection', 'infrared']).check(
        z.meta({
          description:
            'How an oven heats: with hot air or with infrared. With infrared the air tells nothing about a part, and a stopped conveyor is told within seconds.',
        }),
      ),
    ),
    container_size: z.optional(
      quantityText.check(
        z.meta({
          description:
            'How much a container at this mixer holds, as “208 L” or “5 [gal_us]”; a drum of 208 L unless given. It tells how long a new one is mixed.',
        }),
      ),
    ),
    process_temperature: z.optional(
      quantityText.check(
        z.meta({
          description:
            'Temperature at which a place that gathers residue runs in normal production. A warning at or below it would always stand, so it is left out there, and coverage says so.',
        }),
      ),
    ),
    residue_thickness: z.optional(
      quantityText.check(
        z.meta({
          description:
            'How thick residue lies at its thickest here, as on a filter bank or a floor. Over 10 mm it lowers the ignition limit; thinner residue never raises it.',
        }),
      ),
    ),
    basket_test: z.optional(
      z
        .strictObject({
          report: z
            .string()
            .check(
              z.minLength(1),
              z.maxLength(200),
              z.meta({ description: 'Number and date of the test report.' }),
            ),
          signed_by: z
            .string()
            .check(
              z.minLength(1),
              z.maxLength(200),
              z.meta({ description: 'Who signed it, for EHS (environment, health and safety).' }),
            ),
          baskets: z.optional(
            z
              .array(
                z
                  .strictObject({
                    side: quantityText.check(
                      z.meta({ description: 'Side of the wire cube, as “50 mm”.' }),
                    ),
                    ignition: quantityText.check(
                      z.meta({
                        description:
                          'Lowest oven temperature at which it lit, or the middle between that and the highest at which it did not, as “149 Cel”.',
                      }),
                    ),
                  })
                  .check(z.meta({ title: 'basket' })),
              )
              .check(
                z.maxLength(20),
                z.meta({
                  description:
                    'Each cube of the report: three sizes or more, each volume at least twice the one before. They lower the limit where they must; a limit may be raised only as far as they prove, and not without them.',
                }),
              ),
          ),
        })
        .check(
          z.meta({
            title: 'basket test',
            description:
              'A laboratory test of the temperature at which this residue lights itself (EN 15188, three basket sizes or more), signed by EHS. Without it no ignition limit may be raised.',
          }),
        ),
    ),
    signals: z.optional(
      z.record(nameText, signalWritten).check(
        z.meta({
          description:
            'What is measured here, by name. A station kind knows its own names; others are kept and judged by no rule of the station.',
        }),
      ),
    ),
    derived: z.optional(
      z.record(nameText, derivedWritten).check(
        z.meta({
          description:
            'What is worked out from signals of this station. A station kind works out its own without an entry here.',
        }),
      ),
    ),
    marks: z.optional(
      z.record(nameText, markWritten).check(
        z.meta({
          description:
            'What people write down that no signal tells, by name: a topic for a mark the station kind knows, or a mark of your own.',
        }),
      ),
    ),
    suppress_while: z.optional(
      suppressWritten.check(
        z.meta({
          description:
            'While the station is so, nobody is told of its process alarms. Alarms of what can hurt people, highly managed ones and those of sensors are told all the same.',
        }),
      ),
    ),
    rules: z.optional(
      z.record(nameText, ruleWritten).check(
        z.meta({
          description: 'Changes to the rules the station kind brings, and rules of your own.',
        }),
      ),
    ),
  })
  .check(z.meta({ title: 'station' }));
export type StationWritten = z.infer<typeof stationWritten>;

export const siteWritten = z
  .strictObject({
    site: nameText,
    timezone: z
      .string()
      .check(
        z.minLength(1),
        z.meta({ description: 'IANA time zone of the site, as Europe/Dublin.' }),
      ),
    materials: z.optional(
      z
        .record(
          nameText,
          z
            .string()
            .check(
              z.minLength(1),
              z.meta({ description: 'Material sheet, a YAML file beside this one or below it.' }),
            ),
        )
        .check(
          z.meta({
            description: 'For each material its sheet, a YAML file beside this one or below it.',
          }),
        ),
    ),
    extensions: z.optional(
      z
        .array(
          z
            .string()
            .check(
              z.regex(
                /^[A-Za-z0-9][A-Za-z0-9._-]*(\/[A-Za-z0-9][A-Za-z0-9._-]*)*\.ts$/,
                'write a TypeScript file beside this one or below it, as rules/creep.ts',
              ),
              z.maxLength(100),
            ),
        )
        .check(
          z.maxLength(16),
          z.meta({
            description:
              'TypeScript files beside this one or below it that bring rule kinds or derived kinds of your own. They run with the agent’s rights: check them like a program.',
          }),
        ),
    ),
    shifts: z.optional(shiftsWritten),
    shelving: z.optional(shelvingWritten),
    people: z.optional(peopleWritten),
    telling: z.optional(
      tellingWritten.check(z.meta({ description: 'Who is told of alarms, and when.' })),
    ),
    fire_plan: z.optional(
      z
        .strictObject({
          phone: z
            .string()
            .check(
              z.minLength(1),
              z.maxLength(100),
              z.meta({ description: 'Number to call in a fire.' }),
            ),
          muster_point: z
            .string()
            .check(
              z.minLength(1),
              z.maxLength(100),
              z.meta({ description: 'Where people gather and are counted.' }),
            ),
          lone_worker: z.optional(
            z.string().check(
              z.minLength(1),
              z.maxLength(200),
              z.meta({
                description:
                  'What holds for whoever works alone, as “call 5555 first and wait for the second person”.',
              }),
            ),
          ),
        })
        .check(
          z.meta({
            title: 'fire plan',
            description: 'Printed in every alarm that may mean fire; coverage asks for it.',
          }),
        ),
    ),
    lines: z
      .record(nameText, z.record(nameText, stationWritten))
      .check(z.meta({ description: 'Each line with its stations, by name.' })),
  })
  .check(z.meta({ title: 'Forebond site file' }));
export type SiteWritten = z.infer<typeof siteWritten>;
