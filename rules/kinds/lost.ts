/**
 * `lost`: no usable reading for longer than promised, whether the sensor is silent or sends nonsense.
 *
 * It is the kind that tells the engine whether a signal can be used at all: while it answers
 * abnormal, every other rule on the signal is unjudged. Silence and nonsense stay apart in the
 * evidence. A start or a gap gives the sensor its full time again, so that a reboot raises no burst.
 */
import { z } from 'zod/mini';
import type { QualityCode } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { RuleKind, Severity } from './kind.ts';
import { durationSetting } from './settings.ts';

export interface LostSettings {
  readonly afterMs: number;
}

export interface LostMemory {
  abnormal: boolean;
  /** When the last usable reading was judged; null before the first. */
  usableAt: EpochMs | null;
  /** When observation began, for a signal that never spoke. */
  beganAt: EpochMs;
  /** The last unusable reading since then, and why. */
  unusableAt: EpochMs | null;
  cause: QualityCode;
}

/** Missed this many times what was promised, a signal counts as lost. */
export const missedMax = 3;

export const lost: RuleKind<LostSettings, LostMemory> = {
  name: 'lost',
  version: 1,
  summary: 'No usable reading for longer than the site file allows.',
  written: z.strictObject({
    after: z.optional(
      durationSetting(
        'Alarm once this long has passed without a usable reading; three times expect_every of the signal unless given.',
      ),
    ),
  }),
  watchesHealth: true,
  compile(read) {
    if (!read.has('after') && read.expectEveryMs === null)
      read.report({
        path: ['after'],
        problem: 'nobody said how often this signal speaks',
        fix: 'give the signal expect_every, or this rule after',
      });
    const everyMs = read.expectEveryMs ?? 0;
    const usual = everyMs > 0 ? missedMax * everyMs : Number.POSITIVE_INFINITY;
    const afterMs = read.duration('after', usual);
    if (afterMs <= everyMs)
      read.report({
        path: ['after'],
        problem:
          everyMs === 0
            ? 'no reading could come soon enough'
            : 'it is no longer than the signal takes from one reading to the next',
        fix: `make it longer; ${missedMax} times expect_every allows for readings that are missed`,
      });
    return { afterMs };
  },
  begin(settings, at, timer) {
    timer.at = at + settings.afterMs;
    return { abnormal: false, usableAt: null, beganAt: at, unusableAt: null, cause: 0 };
  },
  stand(_settings, memory, _severity, sinceMs, timer) {
    memory.abnormal = true;
    memory.beganAt = sinceMs;
    timer.at = null;
  },
  sample(settings, memory, reading, timer): Severity {
    memory.usableAt = reading.judged;
    memory.unusableAt = null;
    memory.cause = 0;
    memory.abnormal = false;
    timer.at = reading.judged + settings.afterMs;
    return 0;
  },
  unusable(_settings, memory, reading): Severity {
    memory.unusableAt = reading.judged;
    memory.cause = reading.quality;
    return memory.abnormal ? 1 : 0;
  },
  deadline(_settings, memory, _at, timer): Severity {
    timer.at = null;
    memory.abnormal = true;
    return 1;
  },
  gap(settings, memory, _fromMs, toMs, timer) {
    if (!memory.abnormal) timer.at = toMs + settings.afterMs;
  },
  shift(memory, deltaMs) {
    memory.beganAt += deltaMs;
    if (memory.usableAt !== null) memory.usableAt += deltaMs;
    if (memory.unusableAt !== null) memory.unusableAt += deltaMs;
  },
  evidence: (settings, memory) => ({
    sinceMs: memory.usableAt ?? memory.beganAt,
    durationMs: settings.afterMs,
    ...(memory.unusableAt === null ? {} : { cause: memory.cause }),
  }),
  sentence: (evidence) =>
    evidence.cause === undefined
      ? '{$signal}: no reading since {$clock}.'
      : '{$signal}: no usable reading since {$clock}: {$cause}.',
};
