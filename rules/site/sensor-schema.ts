/** A raw sensor as people write it: the signal's `unit` is then what it sends, and this what it means. */
import { z } from 'zod/mini';
import { quantityText } from '../kinds/settings.ts';
import { pt100Classes } from '../process/pt100.ts';
import { thermocoupleTypes } from '../process/thermocouple-coefficients.ts';

const thermocouple = z
  .strictObject({
    kind: z.literal('thermocouple').check(z.meta({ description: 'It sends a voltage.' })),
    type: z
      .enum(thermocoupleTypes)
      .check(z.meta({ description: 'Its letter, as the connector and the cable say.' })),
    cold_junction: z.string().check(
      z.minLength(1),
      z.maxLength(64),
      z.meta({
        description:
          'The temperature of its terminals: the name of the signal of this station that measures it, or a fixed value as `25 Cel`; `0 Cel` where the instrument makes up for it.',
      }),
    ),
    class: z.optional(
      z
        .literal([1, 2])
        .check(z.meta({ description: 'Tolerance class of the wire (IEC 60584), for display.' })),
    ),
  })
  .check(
    z.meta({
      title: 'thermocouple',
      description: 'A thermocouple; `unit` is a voltage, as mV or uV, the signal a temperature.',
    }),
  );

const pt100 = z
  .strictObject({
    kind: z.literal('pt100').check(z.meta({ description: 'It sends a resistance.' })),
    wires: z.optional(
      z
        .literal([2, 3, 4])
        .check(z.meta({ description: 'Wires from sensor to instrument; 4 unless given.' })),
    ),
    lead_resistance: z.optional(
      quantityText.check(
        z.meta({
          description:
            'Resistance of both leads together, taken off every reading; with two wires it must be given.',
        }),
      ),
    ),
    class: z.optional(
      z
        .enum(pt100Classes)
        .check(z.meta({ description: 'Tolerance class (IEC 60751), for display.' })),
    ),
  })
  .check(
    z.meta({
      title: 'Pt100',
      description: 'A Pt100; `unit` is a resistance, as Ohm, the signal a temperature.',
    }),
  );

const currentLoop = z
  .strictObject({
    kind: z.literal('current-loop').check(z.meta({ description: 'It sends a current.' })),
    from: quantityText.check(z.meta({ description: 'What 4 mA means, as `0 bar`.' })),
    to: quantityText.check(z.meta({ description: 'What 20 mA means, as `16 bar`.' })),
  })
  .check(
    z.meta({
      title: 'current loop',
      description:
        'A loop of 4 to 20 mA with the fault bands of NAMUR NE 43; `unit` is a current, as mA, the signal what `from` and `to` measure.',
    }),
  );

export const sensorWritten = z.discriminatedUnion('kind', [thermocouple, pt100, currentLoop]);
export type SensorWritten = z.infer<typeof sensorWritten>;

/** A day: `2026-03-31`. */
export const dateText = z
  .string()
  .check(z.regex(/^\d{4}-\d{2}-\d{2}$/, 'write a day as year, month, day: "2026-03-31"'));

/** Whole days or months: `365 d`, `12 mo`. */
export const calendarText = z
  .string()
  .check(z.regex(/^[1-9]\d{0,3}\s+(d|mo)$/, 'write days or months, as "365 d" or "12 mo"'));
