/** What is watched and what is not, on the wire: hazards, rules, signals never heard, derived ones. */
import { z } from 'zod';
import { asideSchema } from './aside-contract.ts';
import { epochMs } from './instant.ts';
import { refusedTopicSchema } from './refused-contract.ts';
import { calibrationSchema } from './sensor-contract.ts';
import { readinessWords } from './words.ts';

const word = z.string();

export const unheardSchema = z.object({
  signal: word.describe('line/station/signal'),
  topic: word.nullable().describe('Where its readings should come; null for what people enter.'),
  because: z
    .enum(['never-heard', 'never-entered', 'too-late', 'no-place-heard'])
    .describe(
      'too-late: readings came, and all were too old to be judged. no-place-heard: a topic with +, of which no place has been heard; the signal is then named without a place.',
    ),
  says: z.string().describe('The same in a sentence.'),
  fix: z.string(),
  to_people: z.boolean().describe('A rule that waits for it watches a hazard to people.'),
  rules: z.array(word).describe('Armed rules that cannot judge without it.'),
});
export type UnheardView = z.infer<typeof unheardSchema>;

export const nameTakenSchema = z.object({
  topic: z.string().describe('A topic with + was written for it; what it sends is refused.'),
  owner: z.string().describe('The topic that took the name first.'),
  signal: word.describe('What the owner feeds.'),
  says: z.string(),
  fix: z.string(),
  to_people: z.boolean().describe('A rule of such a place watches a hazard to people.'),
  rules: z.array(word).describe('Rules that judge the owner, and not this topic.'),
});
export type NameTakenView = z.infer<typeof nameTakenSchema>;

const asideShort = asideSchema.pick({
  rule: true,
  state: true,
  by: true,
  reason: true,
  since: true,
  until: true,
});

export const hazardSchema = z.object({
  hazard: z.string(),
  to_people: z.boolean(),
  state: z
    .enum(['watched', 'not-watched', 'unjudged'])
    .describe(
      'unjudged: rules look for it, and not all of them have a usable reading now; `unread` says which.',
    ),
  rules: z.array(word),
  missing: z
    .array(z.string())
    .describe('Signals that the site file lacks, without which it goes unwatched.'),
  unheard: z
    .array(z.string())
    .optional()
    .describe('Signals of its rules that have never been heard; `unheard` below says more.'),
  unread: z
    .array(z.object({ rule: word, signals: z.array(word) }))
    .optional()
    .describe('Its rules that are not judged now, and their signals without a usable reading.'),
  name_taken: z
    .array(z.string())
    .optional()
    .describe('Topics of places that are not watched; `name_taken` below says more.'),
  aside: z
    .array(asideShort)
    .optional()
    .describe('Its rules that nobody is told of now: out of service, suppressed, shelved.'),
  why: z
    .string()
    .nullable()
    .optional()
    .describe('Why it is not watched, or not by all its rules, or on what it leans, in sentences.'),
});
export const readinessSchema = z.object({
  rule: word,
  readiness: readinessWords,
  needs: z.array(z.string()).describe('What it needs to be armed or confirmed.'),
});
export const workedOutSchema = z.object({
  signal: word,
  kind: word.describe('How it is worked out.'),
  from: z.array(word).describe('The signals it is worked out from.'),
  needs: z.array(z.string()).describe('What would confirm the numbers it rests on.'),
  now: z.boolean().describe('true: it has a usable value now.'),
  why: z.string().nullable().describe('Why it has none, in sentences; null where it has.'),
});
export const notWorkedOutSchema = z.object({
  signal: word,
  needs: z.array(z.string()).describe('The numbers for want of which it does not exist.'),
});
export const stationCoverageSchema = z.object({
  line: word,
  station: word,
  kind: word,
  hazards: z.array(hazardSchema),
  rules: z.array(readinessSchema),
  moot: z
    .array(z.object({ rule: word, why: z.string() }))
    .describe('Rules that would mean nothing here, and why.'),
  calibrations: z
    .array(calibrationSchema)
    .optional()
    .describe('Signals whose sensors were compared with a reference, and until when that holds.'),
  worked_out: z.array(workedOutSchema).optional().describe('Signals worked out from others.'),
  not_worked_out: z
    .array(notWorkedOutSchema)
    .optional()
    .describe('Signals that would be worked out, were a number not missing.'),
});
export const coverageSchema = z.object({
  at: epochMs,
  watched: z.int().min(0),
  not_watched: z.int().min(0),
  unjudged: z.int().min(0),
  stations: z.array(stationCoverageSchema),
  unheard: z
    .array(unheardSchema)
    .optional()
    .describe('Signals that armed rules need and that have never been heard, by their ids.'),
  name_taken: z
    .array(nameTakenSchema)
    .optional()
    .describe('Places of wildcards that are not watched: the name of another is theirs too.'),
  refused: z
    .array(refusedTopicSchema)
    .optional()
    .describe('Topics whose message that came last could not be used, and why.'),
});
export type CoverageView = z.infer<typeof coverageSchema>;
