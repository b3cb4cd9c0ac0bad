/**
 * What a file of the site's own rules is handed: words for settings, and the codes of quality. The
 * same for everybody, so that it holds nothing a file could change for another.
 */
import { z } from 'zod/mini';
import { durationSetting, quantitySetting } from '#rules/kinds/settings.ts';
import { quality } from '#rules/signal/quality.ts';
import { frozen } from './plain.ts';

const described = (description: string) => z.meta({ description });

export const offered = Object.freeze({
  /** The settings of a kind, by their names in the site file. */
  settings: (fields: Readonly<Record<string, z.ZodMiniType>>) => z.strictObject({ ...fields }),
  /** A value with its unit, as "7 Cel". */
  quantity: (description: string) => quantitySetting(description),
  /** As "10 min". */
  duration: (description: string) => durationSetting(description),
  number: (description: string) => z.number().check(described(description)),
  flag: (description: string) => z.boolean().check(described(description)),
  /** One of some words. */
  word: (description: string, words: readonly [string, ...string[]]) =>
    z.enum(words).check(described(description)),
  optional: (setting: z.ZodMiniType) => z.optional(setting),
  quality: frozen({ ...quality }),
});
