/**
 * Settings as people write them ("7 Cel", "10 min") and the reader that turns them into numbers.
 *
 * A kind's schema says which fields exist; the reader knows the signal's unit and so can
 * say that a limit came in bar for a temperature. Every problem is collected, none thrown.
 */
import { z } from 'zod/mini';
import type { MarkOf } from './kind.ts';

/** A value with its UCUM unit: `7 Cel`, `-20.5 Cel`, `30 /min`, `5.5 bar`. */
export const quantityText = z
  .string()
  .check(
    z.regex(
      /^[+-]?(\d+(\.\d+)?|\.\d+)([eE][+-]?\d+)?\s+\S+$/,
      'write a number, a space and a UCUM unit, as "7 Cel" or "30 /min"',
    ),
  );
/** A duration: `90 s`, `10 min`, `8 h`, `30 d`, `250 ms`. */
export const durationText = z
  .string()
  .check(
    z.regex(
      /^(\d+(\.\d+)?|\.\d+)\s+(ms|s|min|h|d)$/,
      'write a number, a space and ms, s, min, h or d, as "90 s" or "10 min"',
    ),
  );

/** A quantity as a setting, with what it means to whoever writes it. */
export const quantitySetting = (description: string) => quantityText.check(z.meta({ description }));
/** A duration as a setting. */
export const durationSetting = (description: string) => durationText.check(z.meta({ description }));

/** The same in every kind that has them. */
export const deadbandSetting = z.optional(
  quantitySetting(
    'How far the value must come back inside its limit before the alarm clears, so that it does not come and go.',
  ),
);
export const delaySettings = {
  on_delay: z.optional(durationSetting('How long it must last before the alarm is raised.')),
  off_delay: z.optional(durationSetting('How long it must be well again before the alarm clears.')),
} as const;

export interface SettingsProblem {
  /** Keys from the rule's settings down. */
  readonly path: readonly (string | number)[];
  /** What is wrong. */
  readonly problem: string;
  /** What to write instead. */
  readonly fix: string;
}

/** Reads one rule's written settings for a signal of a known unit. */
export interface SettingsReader {
  /** A limit in the signal's canonical unit; null when absent. */
  limit(key: string): number | null;
  /** A difference in the signal's canonical unit (3 [degF] of a temperature is 1.67); the fallback when absent. */
  difference(key: string, fallback: number): number;
  /** A share written in per cent, 0.5 of "50 %"; null when absent or written in another unit. Reports a negative one. */
  share(key: string): number | null;
  /** Milliseconds; the fallback when absent. */
  duration(key: string, fallbackMs: number): number;
  /** A bare number; the fallback when absent. */
  number(key: string, fallback: number): number;
  /** A yes or no; the fallback when absent. */
  flag(key: string, fallback: boolean): boolean;
  /** Text, or one of the words the kind's schema allows; null when absent. */
  text(key: string): string | null;
  has(key: string): boolean;
  report(problem: SettingsProblem): void;
  /** The signal's canonical unit. */
  readonly unit: string;
  /** The signal's resolution in its canonical unit, 0 where it has none. */
  readonly resolution: number;
  /** How often the signal is promised; null when nobody said. */
  readonly expectEveryMs: number | null;
  /** How many signals the rule judges. */
  readonly signalCount: number;
  /** What each of the rule's marks is of, in order. */
  readonly marks: readonly MarkOf[];
  /** The same settings, read for another of the rule's signals. Throws where it has none. */
  of(input: number): SettingsReader;
}
