/**
 * The site file: one schema for its types, its checks and the JSON Schema editors use.
 *
 * It says what may stand where. What needs the trade (which signals a station knows, whether a
 * limit fits the signal's unit) is checked when the site is compiled (rules/plan/compile.ts).
 */
import { z } from 'zod/mini';
import { quantityText } from '../kinds/settings.ts';
import { nameText } from './name.ts';
import { ruleWritten } from './rule-schema.ts';
import { derivedWritten, signalWritten } from './signal-schema.ts';

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
            'How an oven heats. With infrared the air says nothing of a part, and a stopped conveyor is told within seconds.',
        }),
      ),
    ),
    process_temperature: z.optional(
      quantityText.check(
        z.meta({
          description:
            'What a residue-bearing place runs at by itself. Limits at or below it judge nothing there, and coverage says so.',
        }),
      ),
    ),
    basket_test: z.optional(
      z
        .strictObject({
          report: z
            .string()
            .check(z.minLength(1), z.maxLength(200), z.meta({ description: 'Number and date.' })),
          signed_by: z
            .string()
            .check(z.minLength(1), z.maxLength(200), z.meta({ description: 'Who of EHS.' })),
        })
        .check(
          z.meta({
            title: 'basket test',
            description:
              'A test of this residue (EN 15188, three basket sizes or more), signed by EHS: without it no ignition limit may be raised.',
          }),
        ),
    ),
    signals: z.optional(z.record(nameText, signalWritten)),
    derived: z.optional(z.record(nameText, derivedWritten)),
    rules: z.optional(z.record(nameText, ruleWritten)),
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
      z.record(
        nameText,
        z
          .string()
          .check(
            z.minLength(1),
            z.meta({ description: 'Material sheet, a YAML file beside this one or below it.' }),
          ),
      ),
    ),
    fire_plan: z.optional(
      z
        .strictObject({
          phone: z
            .string()
            .check(z.minLength(1), z.maxLength(100), z.meta({ description: 'Whom to call.' })),
          muster_point: z
            .string()
            .check(z.minLength(1), z.maxLength(100), z.meta({ description: 'Where to gather.' })),
        })
        .check(
          z.meta({
            title: 'fire plan',
            description: 'Printed in every alarm that may mean fire; coverage asks for it.',
          }),
        ),
    ),
    lines: z.record(nameText, z.record(nameText, stationWritten)),
  })
  .check(z.meta({ title: 'Forebond site file' }));
export type SiteWritten = z.infer<typeof siteWritten>;
