/**
 * `stuck`: a value that has not moved for longer than such a value ever rests.
 *
 * Moved means: by more than the tolerance from where it last settled. A sensor may freeze
 * while it still sends; only its stillness gives it away.
 */
import { z } from 'zod/mini';
import type { EpochMs } from '../signal/sample.ts';
import type { RuleKind, Severity } from './kind.ts';
import { durationSetting, quantitySetting } from './settings.ts';

/** What binary fractions may add to a difference; far below any resolution. */
const dust = 1e-9;

export interface StuckSettings {
  readonly forMs: number;
  readonly tolerance: number;
}

export interface StuckMemory {
  abnormal: boolean;
  /** Where the value settled; null before the first reading. */
  settled: number | null;
  settledAt: EpochMs;
  at: EpochMs;
}

export const stuck: RuleKind<StuckSettings, StuckMemory> = {
  name: 'stuck',
  version: 1,
  summary: 'A value that has not moved for longer than such a value ever rests.',
  written: z.strictObject({
    for: durationSetting('Alarm once the value has not moved for this long.'),
    tolerance: z.optional(quantitySetting('A smaller movement does not count as one.')),
  }),
  compile(read) {
    const forMs = read.duration('for', Number.POSITIVE_INFINITY);
    if (forMs <= (read.expectEveryMs ?? 0))
      read.report({
        path: ['for'],
        problem: 'every reading would count as stuck before the next one comes',
        fix: 'make it longer than such a value ever rests, as "24 h"',
      });
    return { forMs, tolerance: read.difference('tolerance', 0) };
  },
  begin: (_settings, at) => ({ abnormal: false, settled: null, settledAt: at, at }),
  stand(_settings, memory, _severity, sinceMs) {
    memory.abnormal = true;
    memory.settledAt = sinceMs;
  },
  sample(settings, memory, reading, timer): Severity {
    memory.at = reading.at;
    // It stood when other settings came: this is where it stands.
    if (memory.abnormal) memory.settled ??= reading.value;
    const moved =
      memory.settled === null ||
      Math.abs(reading.value - memory.settled) > settings.tolerance + dust;
    if (moved) {
      memory.settled = reading.value;
      memory.settledAt = reading.judged;
      memory.abnormal = false;
      timer.at = reading.judged + settings.forMs;
    }
    return memory.abnormal ? 1 : 0;
  },
  deadline(_settings, memory, _at, timer): Severity {
    timer.at = null;
    memory.abnormal = true;
    return 1;
  },
  gap(_settings, memory, fromMs, toMs) {
    memory.settledAt += toMs - fromMs;
  },
  shift(memory, deltaMs) {
    memory.settledAt += deltaMs;
    memory.at += deltaMs;
  },
  evidence: (settings, memory) => ({
    ...(memory.settled === null ? {} : { value: memory.settled }),
    at: memory.at,
    sinceMs: memory.settledAt,
    durationMs: settings.forMs,
  }),
  sentence: () => '{$signal} has stood at {$value} since {$clock}.',
};
