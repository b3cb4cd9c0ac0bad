/**
 * The fixed words of the wire as zod enums: states, transitions, priorities, conditions, roles of a hold.
 *
 * Always true: each list holds exactly the words of its type in rules/; a word added there and not
 * here does not compile.
 */
import { z } from 'zod';
import type { SignalWord } from '#rules/alarm/label.ts';
import type { AlarmState, Transition } from '#rules/alarm/lifecycle.ts';
import type { Priority } from '#rules/alarm/priority.ts';
import type { Disposition, HoldWhat } from '#rules/hold/hold.ts';
import type { SignalKind } from '#rules/plan/plan.ts';
import type { Grade } from '#rules/signal/quality.ts';

/** An enum of all words of `Word`: a missing one makes the argument `never`. */
const every =
  <Word extends string>() =>
  <const Given extends readonly Word[]>(
    words: [Word] extends [Given[number]] ? Given : never,
  ): z.ZodEnum<{ [K in Word]: K }> =>
    z.enum<readonly Word[]>(words) as unknown as z.ZodEnum<{ [K in Word]: K }>;

export const alarmStateWords = every<AlarmState>()([
  'normal',
  'unacknowledged',
  'acknowledged',
  'returned-unacknowledged',
  'latched-unacknowledged',
  'latched-acknowledged',
  'shelved',
  'suppressed-by-design',
  'out-of-service',
]);
export const transitionWords = every<Transition>()([
  'raised',
  'returned',
  'acknowledged',
  'reset',
  'realarmed',
  'shelved',
  'unshelved',
  'suppressed',
  'released',
  'removed-from-service',
  'returned-to-service',
  'passed-on',
  'removed',
]);
export const priorityWords = every<Priority>()(['high', 'medium', 'low']);
export const signalWordWords = every<SignalWord>()(['DANGER', 'WARNING', 'CAUTION', 'NOTICE']);
export const holdWhatWords = every<HoldWhat>()(['container', 'rack', 'lot', 'shot']);
export const dispositionWords = every<Disposition>()([
  'released',
  'released-after-test',
  'reworked',
  'scrapped',
  'returned',
]);
export const signalKindWords = every<SignalKind>()(['measured', 'derived', 'manual']);
export const gradeWords = every<Grade>()(['good', 'uncertain', 'bad']);

/** NE 107 (NAMUR), in words: ok, M, S, C, F; the worst last. */
export const conditionWords = z.enum([
  'good',
  'maintenance-required',
  'out-of-specification',
  'function-check',
  'failure',
]);
export const readinessWords = z.enum(['armed', 'armed-limit-unconfirmed', 'not-armed']);
