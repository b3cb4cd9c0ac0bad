/** An alarm on the wire: its occurrence with state, label, evidence and all that happened to it. */
import { z } from 'zod';
import { evidenceSchema } from './evidence-contract.ts';
import { epochMs } from './instant.ts';
import { type factSchema, labelSchema } from './label.ts';
import { toldSchema } from './telling-contract.ts';
import { alarmStateWords, priorityWords, transitionWords } from './words.ts';

const word = z.string();

export const transitionSchema = z.object({
  at: epochMs,
  transition: transitionWords,
  from: alarmStateWords,
  to: alarmStateWords,
  by: z.string().nullable(),
  reason: z.string().nullable(),
  again: z
    .int()
    .min(0)
    .optional()
    .describe(
      'Told again because nothing improved: which time. 0: told late, as it had seemed to chatter.',
    ),
});
export const alarmSchema = z.object({
  occurrence: word.describe(
    'Names one alarm of one rule: the rule, @, and when it was raised, in epoch milliseconds.',
  ),
  rule: word,
  line: word,
  station: word,
  signal: word,
  state: alarmStateWords,
  severity: z.int().min(0).max(2).describe('1: past the first limit; 2: past the second.'),
  priority: priorityWords.describe('How soon somebody must act.'),
  highly_managed: z.boolean(),
  latching: z.boolean(),
  label: labelSchema,
  evidence: evidenceSchema,
  raised: epochMs,
  returned: epochMs.nullable(),
  acknowledged: z.object({ by: z.string(), at: epochMs }).nullable(),
  shelved_until: epochMs.nullable(),
  shelved_once: z.boolean().describe('The shelf ends before, as soon as the alarm returns.'),
  shelf_minutes_max: z
    .int()
    .nullable()
    .describe('The longest shelf it may have; null where it may have none.'),
  nuisance: z
    .enum(['chattering', 'fleeting'])
    .nullable()
    .describe('It comes and goes too fast to act on: for whoever tunes the rule. null mostly.'),
  judgeable: z.boolean().describe('false: its signal is lost; nobody can tell whether it is over.'),
  superseded_by: word
    .nullable()
    .describe('Raised again before anybody answered: the occurrence that now stands for both.'),
  transitions: z.array(transitionSchema).describe('Oldest first.'),
  comments: z
    .array(z.object({ at: epochMs, by: z.string(), text: z.string() }))
    .describe('What people wrote to an alarm that was acknowledged already. Oldest first.'),
  told: z.array(toldSchema).describe('Who was told, and who could not be. Oldest first.'),
});
export type LabelFact = z.infer<typeof factSchema>;
export type AlarmView = z.infer<typeof alarmSchema>;
export type AlarmState = AlarmView['state'];
export const alarmsSchema = z.object({
  alarms: z.array(alarmSchema).describe('The latest raised first.'),
  truncated: z.boolean().describe('true: there are more; narrow the span or raise `limit`.'),
});
export const alarmAnswerSchema = z.object({
  occurrence: word,
  state: alarmStateWords,
  note: z
    .string()
    .nullable()
    .describe(
      'What was found otherwise than expected: who had acknowledged it already; of passing on, who is asked now. null else.',
    ),
  asked: z
    .object({
      people: z
        .array(z.string())
        .describe('Names. Empty: nobody is asked now; go and fetch somebody.'),
      can_be_told: z.boolean().describe('Anybody else could be told of it, now or later.'),
    })
    .optional()
    .describe('Of passing on alone: who is asked now.'),
});
