/**
 * A rule as people write it. The fields here belong to every rule; all others are settings of the
 * rule's kind, which checks them itself (rules/plan/compile-rule.ts).
 */
import { z } from 'zod/mini';
import { durationText, quantityText } from '../kinds/settings.ts';
import { nameText } from './name.ts';
import { suppressWritten } from './suppress-schema.ts';

const text = z.string().check(z.minLength(1), z.maxLength(500));
const priorityText = z.enum(['high', 'medium', 'low']);

export const signalWords = ['DANGER', 'WARNING', 'CAUTION', 'NOTICE'] as const;

const oneGate = z
  .strictObject({
    signal: nameText,
    low: z.optional(quantityText),
    high: z.optional(quantityText),
  })
  .check(z.meta({ title: 'gate' }));

export const gateWritten = z.union([
  z.literal('none'),
  oneGate,
  z.array(oneGate).check(z.minLength(1), z.maxLength(8)),
]);

export const holdWritten = z.union([
  z.literal('none'),
  z.strictObject({
    what: z.enum(['container', 'rack', 'lot', 'shot']),
    item: z.optional(nameText),
  }),
]);

/** Fields of every rule, whatever its kind. */
export const ruleFields = {
  kind: z.optional(
    z.string().check(
      z.meta({
        description: 'Rule kind, for a rule of your own; a station’s rules have theirs.',
      }),
    ),
  ),
  signal: z.optional(
    nameText.check(z.meta({ description: 'The signal of this station it judges.' })),
  ),
  signals: z.optional(
    z.array(nameText).check(
      z.minLength(2),
      z.maxLength(8),
      z.meta({
        description:
          'The signals of this station it judges together, for a kind that judges several.',
      }),
    ),
  ),
  marks: z.optional(
    z.array(nameText).check(
      z.minLength(1),
      z.maxLength(2),
      z.meta({
        description:
          'The marks of this station it judges, for a kind that judges what people write down.',
      }),
    ),
  ),
  off: z.optional(
    z.literal(true).check(
      z.meta({
        description:
          'Switches the rule off; needs a reason, and signed_by where people can be hurt.',
      }),
    ),
  ),
  reason: z.optional(
    text.check(z.meta({ description: 'Why the rule is off; coverage shows it.' })),
  ),
  signed_by: z.optional(
    text.check(
      z.meta({
        description:
          'Who answers for it that the rule is off; needed where people can be hurt by what it watches.',
      }),
    ),
  ),
  priority: z.optional(
    z.union([priorityText, z.tuple([priorityText, priorityText])]).check(
      z.meta({
        description: 'How soon somebody must act; two for the first and the second limit.',
      }),
    ),
  ),
  gate: z.optional(
    gateWritten.check(
      z.meta({
        description:
          'Judge only while another signal lies within low and high, as only while the oven is loaded; several in a list, and all must hold; or none.',
      }),
    ),
  ),
  hold: z.optional(
    holdWritten.check(
      z.meta({
        description:
          'What to put on hold when the alarm is raised; only quality lifts the hold. Or none.',
      }),
    ),
  ),
  suppress_while: z.optional(
    suppressWritten.check(
      z.meta({
        description:
          'While the plant is so, nobody is told of this alarm, as while the line stands; it is still judged and recorded. One, or a list of which any suffices.',
      }),
    ),
  ),
  latching: z.optional(
    z.boolean().check(
      z.meta({
        description:
          'The alarm stays, even once the value is well again, until somebody resets it.',
      }),
    ),
  ),
  self_acknowledging: z.optional(
    z.boolean().check(z.meta({ description: 'Needs no answer once it is over.' })),
  ),
  highly_managed: z.optional(
    z.boolean().check(z.meta({ description: 'ISA-18.2 highly managed: nobody can shelve it.' })),
  ),
  respond: z.optional(
    durationText.check(z.meta({ description: 'Time there is to act, once told.' })),
  ),
  consequence: z.optional(
    text.check(z.meta({ description: 'What happens if nobody acts. One or two sentences.' })),
  ),
  actions: z.optional(
    z
      .array(text)
      .check(
        z.minLength(1),
        z.maxLength(5),
        z.meta({ description: 'The first things to do, in order.' }),
      ),
  ),
  signal_word: z.optional(
    z
      .enum(signalWords)
      .check(z.meta({ description: 'Who can be hurt (ANSI Z535.4). NOTICE where nobody can.' })),
  ),
  sentence: z.optional(
    text.check(
      z.meta({
        description:
          'What is wrong, with {$value} and its like filled in. Where people can be hurt the station’s own stays.',
      }),
    ),
  ),
  do_not: z.optional(
    z
      .array(text)
      .check(
        z.maxLength(5),
        z.meta({ description: 'What nobody may do, each as it follows “Do not”.' }),
      ),
  ),
  caution: z.optional(
    text.check(z.meta({ description: 'How the first steps themselves can hurt somebody.' })),
  ),
} as const;
export const ruleFieldNames: readonly string[] = Object.keys(ruleFields);

export const ruleWritten = z.looseObject(ruleFields).check(z.meta({ title: 'rule' }));
export type RuleWritten = z.infer<typeof ruleWritten>;
