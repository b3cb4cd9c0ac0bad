/**
 * What goes over the wire: every answer, request and stream event, as zod schemas and their types.
 *
 * Times are epoch milliseconds; values are in the unit beside them (canonical UCUM); a length
 * carries its unit last. Answers grow by adding fields only. The page imports types from here.
 */
import { z } from 'zod';
import { alarmSchema } from './alarm-contract.ts';
import { asideEventSchema } from './aside-contract.ts';
import { epochMs } from './instant.ts';
import { sensorSchema } from './sensor-contract.ts';
import { siteSchema } from './site-contract.ts';
import {
  conditionWords,
  dispositionWords,
  gradeWords,
  holdWhatWords,
  signalKindWords,
  transitionWords,
} from './words.ts';
import { saidMarkSchema } from './written-contract.ts';

export { epochMs };

const word = z.string();
const value = z.number();

// health

/** NE 107 words for every part; `notes` says in a sentence why a part is not good. */
export const healthSchema = z.object({
  condition: conditionWords.describe(
    'The worst of the parts; worst first: failure, function check, out of specification, maintenance required, good (NE 107).',
  ),
  version: word,
  uptime_s: z.number().min(0),
  parts: z.record(word, conditionWords),
  notes: z.record(word, z.string()).describe('Per part that is not good: why, and what to do.'),
});
export type Health = z.infer<typeof healthSchema>;
export type Condition = Health['condition'];

// the site

export type { LoadView } from './load-contract.ts';
export type {
  InvitationView,
  InvitedView,
  MeView,
  PersonView,
  TokenAddedView,
  TokenView,
} from './people-contract.ts';
export type {
  PushDevicesView,
  PushKeyView,
  PushNotice,
  PushSubscriptionSaid,
  PushTestView,
} from './push-contract.ts';
export type { OwnSessionsView } from './session-contract.ts';
export type { SiteLoaded, SiteView } from './site-contract.ts';
export type { TellingView } from './telling-contract.ts';

// signals

export const qualitySchema = z.object({
  grade: gradeWords,
  cause: z.string().nullable().describe('Why it is not good; null where it is.'),
});
export const limitsSchema = z.object({
  low_low: value.nullable(),
  low: value.nullable(),
  high: value.nullable(),
  high_high: value.nullable(),
});
export const signalSchema = z.object({
  id: word.describe('line/station/signal'),
  line: word,
  station: word,
  signal: word,
  kind: signalKindWords,
  unit: word.describe('Canonical UCUM unit of value and limits.'),
  written_unit: word.describe(
    'The UCUM unit in which the site or its station writes it; of the same quantity.',
  ),
  resolution: value.nullable().describe('Smallest step kept; null where every digit is.'),
  expect_every_ms: z.number().nullable(),
  value: value.nullable().describe('null before the first reading and where it is not usable.'),
  at: epochMs.nullable().describe('When the value held; null before the first reading.'),
  quality: qualitySchema.nullable().describe('null before the first reading.'),
  late_at: epochMs
    .nullable()
    .describe(
      'The time given with the latest reading that came too late and was kept without being judged; null where none has since the last one that was judged.',
    ),
  limits: limitsSchema,
  judged_at: z
    .array(
      z.object({
        rule: word,
        side: z.enum(['low', 'high']),
        limit: value,
        at_limit: z
          .boolean()
          .optional()
          .describe('true: the limit itself is past it; absent: only what lies beyond.'),
      }),
    )
    .describe('Every limit that an armed rule holds it against; `limits` has those met first.'),
  yes_no: z
    .boolean()
    .optional()
    .describe('true: a state that is 1 or 0, as running or not; no measure.'),
  sensor: sensorSchema
    .nullable()
    .optional()
    .describe('The raw sensor behind it; null where the message holds the value itself.'),
});
export type SignalView = z.infer<typeof signalSchema>;
export const signalsSchema = z.object({ signals: z.array(signalSchema) });

export {
  pointSchema,
  type Series,
  type SeriesPoint,
  seriesSchema,
} from './series-contract.ts';

// alarms

export {
  type AlarmState,
  type AlarmView,
  alarmAnswerSchema,
  alarmSchema,
  alarmsSchema,
  type LabelFact,
  transitionSchema,
} from './alarm-contract.ts';

// holds

export const holdSchema = z.object({
  id: word,
  what: holdWhatWords,
  item: z.string(),
  since: epochMs,
  by: z.string(),
  reason: z.string(),
  occurrence: word.nullable().describe('The alarm that set it; null where a person did.'),
  others: z
    .int()
    .optional()
    .describe(
      'How many other holds stand on the same thing: it is on hold until the last is lifted. Absent in the stream.',
    ),
  lifted: z
    .object({ at: epochMs, by: z.string(), disposition: dispositionWords, reason: z.string() })
    .nullable(),
});
export type HoldView = z.infer<typeof holdSchema>;
export const holdsSchema = z.object({ holds: z.array(holdSchema), truncated: z.boolean() });

// put aside: aside-contract.ts

export type { AsideView } from './aside-contract.ts';

// coverage: coverage-contract.ts

export { type CoverageView, coverageSchema, type UnheardView } from './coverage-contract.ts';

// rules: rule-contract.ts

export type { RuleView } from './rule-contract.ts';

// stream

export const sampleEventSchema = z.object({
  signal: word,
  at: epochMs,
  value: value.nullable(),
  unit: word,
  quality: qualitySchema,
});
export type SampleEvent = z.infer<typeof sampleEventSchema>;
export const alarmEventSchema = z.object({
  at: epochMs,
  change: z.union([transitionWords, z.enum(['judgeable', 'unjudgeable', 'forecast', 'told'])]),
  alarm: alarmSchema,
});
export const holdEventSchema = z.object({ change: z.enum(['set', 'lifted']), hold: holdSchema });
export const resetEventSchema = z.object({ why: z.string(), fix: z.string() });
export const streamEventSchema = z.discriminatedUnion('event', [
  z.object({ event: z.literal('sample'), data: sampleEventSchema }),
  z.object({ event: z.literal('alarm'), data: alarmEventSchema }),
  z.object({ event: z.literal('hold'), data: holdEventSchema }),
  z.object({ event: z.literal('aside'), data: asideEventSchema }),
  z.object({ event: z.literal('mark'), data: saidMarkSchema }),
  z.object({ event: z.literal('health'), data: healthSchema }),
  z.object({ event: z.literal('site'), data: siteSchema }),
  z.object({ event: z.literal('reset'), data: resetEventSchema }),
]);
export type StreamEvent = z.infer<typeof streamEventSchema>;

// oven runs: run-contract.ts

export type { RunProfileView, RunView } from './run-contract.ts';
export type { ClockView, MarksView, MarkView } from './written-contract.ts';

// errors: problem details (RFC 9457)

export const problemSchema = z.object({
  type: z.literal('about:blank'),
  title: z.string(),
  status: z.int().min(400).max(599),
  detail: z.string().describe('What went wrong, and with what.'),
  code: z.string().describe('Stable; docs/errors.md lists them all.'),
  fix: z.string(),
  parameters: z
    .array(
      z.object({ in: z.enum(['path', 'query', 'body']), name: z.string(), problem: z.string() }),
    )
    .optional(),
  problems: z
    .array(z.string())
    .optional()
    .describe('Of a file: every fault with its line, column, path and fix.'),
});
export type Problem = z.infer<typeof problemSchema>;
