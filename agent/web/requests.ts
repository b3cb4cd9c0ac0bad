/**
 * What people's scripts and the page may send: path, query and body of every route.
 *
 * Unknown names are refused, so that a misspelt one is never silently without effect. Texts are
 * single lines of well-formed Unicode, because they enter the ledger as canonical JSON (RFC 8785).
 */

import { z } from 'zod';
import { itemFault } from '#rules/hold/item.ts';
import { limits } from '../limits.ts';
import { epochMs } from './contract.ts';
import { unitsWords } from './reader-units.ts';
import { alarmStateWords, dispositionWords, holdWhatWords } from './words.ts';

const dayMs = 86_400_000;

/** One line a person wrote: trimmed, without control characters. */
export const line = (charsMin: number, charsMax: number) =>
  z
    .string()
    .refine((text) => text.isWellFormed(), 'half a surrogate pair is no character')
    .regex(/^[^\p{Cc}\u2028\u2029]*$/u, 'write one line without control characters')
    .trim()
    .min(charsMin)
    .max(charsMax);

/** Of a rack, container, lot or shot; characters that nobody sees are refused by name. */
const itemName = line(1, limits.itemCharsMax).refine((name) => itemFault(name) === null, {
  error: ({ input }) => itemFault(String(input)) ?? 'it is no name',
});

const rfc3339 = /^\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(\.\d{1,9})?([Zz]|[+-]\d{2}:\d{2})$/;
const timeHint = 'write epoch milliseconds or RFC 3339, as 2026-01-01T06:00:00Z';

/** Epoch milliseconds or RFC 3339, in text; whole milliseconds out. */
const time = z
  .string()
  .max(40)
  .transform((text, context) => {
    const ms = /^\d{1,15}$/.test(text) ? Number(text) : rfc3339.test(text) ? Date.parse(text) : NaN;
    if (epochMs.safeParse(ms).success) return ms;
    context.addIssue(timeHint);
    return z.NEVER;
  })
  .describe('Epoch milliseconds or RFC 3339.');

/** A whole number of 1 to `max`, in text. */
const count = (max: number) =>
  z
    .string()
    .regex(/^\d{1,9}$/, `write a whole number of 1 to ${max}`)
    .transform(Number)
    .refine((n) => n >= 1 && n <= max, `write a whole number of 1 to ${max}`);

/** `state=a,b` or `state=a&state=b`. */
const states = z
  .union([z.string(), z.array(z.string()).max(20)])
  .transform((given) => [given].flat().flatMap((text) => text.split(',')))
  .pipe(z.array(alarmStateWords).max(20))
  .describe('One or more states, separated by commas.');

const inOrder = (span: { since?: number | undefined; until?: number | undefined }): boolean =>
  span.since === undefined || span.until === undefined || span.since < span.until;
const orderHint = { path: ['since'], error: 'must lie before until' };

const id = z.string().min(1).max(limits.idCharsMax);
export const signalPath = z.strictObject({ id: id.describe('Signal id, URL-encoded.') });
export const occurrencePath = z.strictObject({
  occurrence: id.describe('Occurrence id, URL-encoded.'),
});
export const holdPath = z.strictObject({ id: id.describe('Hold id, URL-encoded.') });
export const runPath = z.strictObject({ id: id.describe('Run id, URL-encoded.') });
export const nothing = z.strictObject({});

export const seriesQuery = z
  .strictObject({
    since: time.optional().describe('Default: a day before `until`.'),
    until: time.optional().describe('Default: now, by the engine’s clock.'),
    points: count(limits.seriesPointsMax).optional().describe('At most this many; default 1000.'),
  })
  .refine(inOrder, orderHint);
export const alarmsQuery = z
  .strictObject({
    state: states.optional(),
    since: time.optional().describe('Open at or after this time.'),
    until: time.optional().describe('Raised before this time.'),
    units: z
      .enum(unitsWords)
      .optional()
      .describe(
        'Units of the sentences: canonical (°C, kPa; the default), metric (°C, bar, µm) or us (°F, psi, mil). Numbers outside the sentences stay canonical.',
      ),
    limit: count(limits.answerRowsMax).optional().describe('At most this many; default 1000.'),
  })
  .refine(inOrder, orderHint);
export const loadQuery = z
  .strictObject({
    since: time.optional().describe('Default: 30 days before `until`.'),
    until: time.optional().describe('Default: now, by the engine’s clock.'),
    line: id.optional().describe('One line; the whole site where absent.'),
  })
  .refine(inOrder, orderHint);
export const neededBody = z.strictObject({ needed: z.boolean() });
export const runsQuery = z
  .strictObject({
    station: id.optional().describe('line/station; all where absent.'),
    since: time.optional().describe('Lasted to this time or beyond.'),
    until: time.optional().describe('Opened before this time.'),
    limit: count(limits.answerRowsMax).optional().describe('At most this many; default 1000.'),
  })
  .refine(inOrder, orderHint);
export const runQuery = z.strictObject({
  points: count(limits.seriesPointsMax).optional().describe('A signal; default 1000.'),
});
export const holdsQuery = z.strictObject({
  standing: z.enum(['true', 'false']).optional().describe('true: only those not lifted.'),
  what: holdWhatWords.optional(),
  item: itemName.optional(),
  limit: count(limits.answerRowsMax).optional().describe('At most this many; default 1000.'),
});

/** A moment in a body: a number of epoch milliseconds, or text as in a query. */
const moment = z.union([epochMs, time]).describe('Epoch milliseconds or RFC 3339; now if absent.');
const note = line(0, limits.reasonCharsMax).optional();
export const marksQuery = z.strictObject({
  station: id.optional().describe('line/station; all where absent.'),
});
export const sayMarkBody = z.strictObject({
  station: id.describe('line/station'),
  mark: id,
  item: itemName.optional(),
  at: moment.optional(),
  note,
});
export const readingBody = z.strictObject({
  signal: id.describe('line/station/signal'),
  value: z.number(),
  unit: z.string().min(1).max(40).describe('A UCUM unit of the signal’s quantity.'),
  at: moment.optional(),
  note,
});

const reason = line(3, limits.reasonCharsMax);
export const acknowledgeBody = z
  .strictObject({ comment: line(0, limits.reasonCharsMax).optional() })
  .optional();
export const shelveBody = z.strictObject({
  minutes: z.int().min(1).max(limits.shelveMinutesMax),
  reason,
  one_shot: z
    .boolean()
    .optional()
    .describe('true: it ends before, as soon as the alarm returns to normal.'),
});
export const resetBody = z
  .strictObject({
    reason: reason
      .optional()
      .describe('Needed where the alarm is highly managed, 10 letters or more.'),
  })
  .optional();
export const outOfServiceBody = z.strictObject({
  reason,
  minutes: z
    .int()
    .min(1)
    .max(limits.shelveMinutesMax)
    .optional()
    .describe(
      'After so long it is back in service by itself. Needed where the alarm is highly managed, 1440 at most; else it stays until it is brought back.',
    ),
});
export const emptyBody = nothing.optional();
export const setHoldBody = z.strictObject({
  what: holdWhatWords,
  item: itemName,
  reason,
});
export const liftHoldBody = z.strictObject({ disposition: dispositionWords, reason });

export const defaults = { seriesSpanMs: dayMs, seriesPoints: 1_000, answerRows: 1_000 } as const;
