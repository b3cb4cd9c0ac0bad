/** A signal as people write it: where it comes from, what it means, what may be believed of it. */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';
import { nameText } from './name.ts';
import { calendarText, dateText, sensorWritten } from './sensor-schema.ts';

/** Where something stands in the payload. */
export const pointer = (what: string) =>
  z.string().check(
    z.regex(/^(\/([^~/]|~0|~1)*)*$/, 'write a JSON Pointer (RFC 6901), as "/v" or "/data/0/value"'),
    z.maxLength(256),
    z.meta({
      description: `Where ${what} stands, as a JSON Pointer (RFC 6901): /v, /data/0/value.`,
    }),
  );

export const timeFormats = ['rfc3339', 'epoch_s', 'epoch_ms'] as const;
export type TimeFormat = (typeof timeFormats)[number];

const plainPayload = z
  .strictObject({
    kind: z
      .literal('plain')
      .check(z.meta({ description: 'The payload is a number in text: 21.4.' })),
  })
  .check(z.meta({ title: 'plain', description: 'The payload is a number in text: 21.4.' }));
const jsonPayload = z
  .strictObject({
    kind: z.literal('json').check(z.meta({ description: 'The payload is JSON.' })),
    value: pointer('the value'),
    time: z.optional(pointer('the time')),
    time_format: z.optional(
      z
        .enum(timeFormats)
        .check(z.meta({ description: 'How the time is written. Without it, it is recognised.' })),
    ),
    unit: z.optional(pointer('the unit')),
    quality: z.optional(pointer('the sensor’s own word on its quality')),
  })
  .check(
    z.meta({
      title: 'json',
      description: 'The payload is JSON; pointers say where value, time, unit and quality stand.',
    }),
  );

/** Payload kinds this build decodes. */
export const payloadWritten = z.discriminatedUnion('kind', [plainPayload, jsonPayload]);
export type PayloadWritten = z.infer<typeof payloadWritten>;

/** What a signal must have that nobody enters by hand; said beside whatever else is wrong with it. */
const needed = (key: 'topic' | 'payload', expected: 'string' | 'object') =>
  z.check<object>(
    ({ value, issues }) => {
      if (value === null || typeof value !== 'object') return;
      if (Object.hasOwn(value, 'by_hand') || Object.hasOwn(value, key)) return;
      issues.push({ code: 'invalid_type', expected, path: [key], input: undefined });
    },
    { when: () => true },
  );

const calibrationPoint = z.tuple([z.number(), z.number()]);

export const signalWritten = z
  .strictObject({
    topic: z.optional(
      z.string().check(
        z.minLength(1),
        z.maxLength(1_024),
        z.meta({
          description:
            'MQTT topic. Each + stands for one level and makes one signal of every value it takes; give names.',
        }),
      ),
    ),
    by_hand: z.optional(
      z.literal(true).check(
        z.meta({
          description:
            'People read it with a hand instrument and enter it; then it has no topic and no payload.',
        }),
      ),
    ),
    due_every: z.optional(
      durationText.check(
        z.meta({
          description:
            'How often somebody must enter it; once it is overdue by a quarter of that, an alarm says so. Only with by_hand.',
        }),
      ),
    ),
    names: z.optional(
      z
        .array(nameText)
        .check(
          z.minLength(1),
          z.maxLength(8),
          z.meta({ description: 'One name for each + of the topic, in order.' }),
        ),
    ),
    payload: z.optional(
      payloadWritten.check(
        z.meta({
          description:
            'How a message is read: { kind: plain } where it is a bare number, or { kind: json, value: /v } where it is JSON with the value at /v.',
        }),
      ),
    ),
    unit: z.string().check(
      z.minLength(1),
      z.meta({
        description: 'The unit the sensor sends, in UCUM: Cel, "[degF]", %, bar, /min, 1.',
      }),
    ),
    sensor: z.optional(
      sensorWritten.check(
        z.meta({
          description:
            'What stands behind a raw voltage, resistance or current; the signal is then the temperature, or what `from` and `to` measure.',
        }),
      ),
    ),
    resolution: z.optional(
      z.union([z.number(), z.literal('none')]).check(
        z.meta({
          description:
            'Smallest step kept, a power of ten in the canonical unit of the quantity (a temperature in Cel, whatever the sensor sends); none keeps every digit and costs space.',
        }),
      ),
    ),
    expect_every: z.optional(
      durationText.check(
        z.meta({
          description: 'How often it speaks; silence for three times as long is an alarm.',
        }),
      ),
    ),
    hold: z.optional(
      durationText.check(
        z.meta({
          description:
            'How long a sample waits for earlier ones still on their way. 2 s where the payload carries its own time, else none.',
        }),
      ),
    ),
    lateness: z.optional(
      durationText.check(
        z.meta({
          description:
            'A reading older than this on arrival is kept and not judged; 10 min unless given.',
        }),
      ),
    ),
    range: z.optional(
      z.tuple([quantityText, quantityText]).check(
        z.meta({
          description:
            'Lowest and highest value the sensor can send, as [0 Cel, 100 Cel] or ["32 [degF]", "212 [degF]"]; beyond it is bad.',
        }),
      ),
    ),
    max_rate: z.optional(
      z
        .strictObject({
          change: quantityText.check(
            z.meta({ description: 'The largest change that is plausible.' }),
          ),
          per: durationText.check(z.meta({ description: 'Within this time.' })),
        })
        .check(
          z.meta({
            description: 'A faster change is marked uncertain: {change: 5 K, per: 1 min}.',
          }),
        ),
    ),
    calibration: z.optional(
      z.tuple([calibrationPoint, calibrationPoint]).check(
        z.meta({
          description:
            'Two points of a comparison with a reference, each [what the reference showed, what the sensor read], in `unit`; with a sensor in Cel, or in the unit of `from`.',
        }),
      ),
    ),
    calibrated: z.optional(
      dateText.check(z.meta({ description: 'The day it was last compared with a reference.' })),
    ),
    calibrate_every: z.optional(
      calendarText.check(
        z.meta({
          description:
            'How long a calibration holds, as `12 mo` or `365 d`. After the last day of it readings are uncertain, not bad.',
        }),
      ),
    ),
  })
  .check(needed('topic', 'string'), needed('payload', 'object'), z.meta({ title: 'signal' }));
export type SignalWritten = z.infer<typeof signalWritten>;
/** One that messages bring. */
export type MeasuredWritten = SignalWritten & {
  readonly topic: string;
  readonly payload: PayloadWritten;
};

/** True where messages bring it; false where people enter it. */
export const isMeasured = (written: SignalWritten): written is MeasuredWritten =>
  written.by_hand !== true && written.topic !== undefined && written.payload !== undefined;

export const derivedWritten = z
  .looseObject({
    kind: z.optional(
      z.string().check(
        z.meta({
          description: 'A derived signal kind, as dew-point; those of the station have theirs.',
        }),
      ),
    ),
    inputs: z.optional(
      z.record(nameText, nameText).check(
        z.meta({
          description: 'For each input of the kind, the signal of this station that gives it.',
        }),
      ),
    ),
    starts_on: z.optional(
      z.array(nameText).check(
        z.minLength(1),
        z.maxLength(8),
        z.meta({
          description:
            'Marks of this station that start it anew, for a kind that adds up: a cleaning, a change of container.',
        }),
      ),
    ),
    counts_on: z.optional(
      z.array(nameText).check(
        z.minLength(1),
        z.maxLength(8),
        z.meta({
          description: 'Marks of this station that it counts, for a kind that counts marks.',
        }),
      ),
    ),
  })
  .check(z.meta({ title: 'derived signal' }));
/** The rest are settings of its kind. */
export const derivedFieldNames: readonly string[] = ['kind', 'inputs', 'starts_on', 'counts_on'];
export type DerivedWritten = z.infer<typeof derivedWritten>;
