/** One temperature that would have aged a store as its own course did, to compare stores and seasons. */
import { z } from 'zod/mini';
import { durationSetting } from '../kinds/settings.ts';
import { meanKineticTemperature } from '../process/storage-heat.ts';
import { quality } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { KeepingKind } from './derived-kind.ts';
import {
  halfSeen,
  meanBegin,
  meanGap,
  meanSay,
  meanShift,
  type Span,
  type SpanMean,
} from './span-mean.ts';
import { compileSpan } from './span-setting.ts';

interface KineticMemory extends SpanMean {
  /** Worked out last, and what it came to. */
  askedAt: EpochMs | null;
  kineticC: number | null;
  /** It was frozen within the span until then. */
  frozenUntil: EpochMs;
}

const everyMs = 60_000;

/** Of the means of the slices that were seen; null where they lie out of range. */
function kineticMean(memory: SpanMean): number | null {
  const seen = [...memory.seen.keys()].filter((i) => memory.seen[i]! > 0);
  if (seen.length === 0) return memory.held;
  const answer = meanKineticTemperature(
    seen.map((i) => memory.sums[i]! / memory.seen[i]!),
    seen.map((i) => memory.seen[i]!),
  );
  return 'refused' in answer ? null : answer.kineticMeanC;
}

export const meanKineticTemperatureKind: KeepingKind<Span, KineticMemory> = {
  name: 'mean-kinetic-temperature',
  summary:
    'Mean kinetic temperature over a span that moves along, to compare stores and seasons; never a shelf life, and nothing for goods that were frozen.',
  inputs: [{ name: 'temperature', unit: 'Cel', meaning: 'temperature of the store' }],
  unit: 'Cel',
  digits: 1,
  source:
    'Tong and Lock 2015, with the customary 83.144 kJ/mol of pharmacy; USP general chapter 1079.2',
  range: 'no reading under 0 °C within the span',
  written: z.strictObject({
    span: durationSetting('How long it looks back; it is made of 64 means over that time.'),
  }),
  compile: (read) => compileSpan(read, 64),
  version: 1,
  begin: (span, at) => ({
    ...meanBegin(span, at),
    askedAt: null,
    kineticC: null,
    frozenUntil: at,
  }),
  step(span, memory, now) {
    const temperatureC = now.inputs[0]!;
    if (temperatureC < 0) memory.frozenUntil = now.at + span.spanMs;
    meanSay(memory, span, temperatureC, now.at);
    if (memory.askedAt === null || now.at - memory.askedAt >= everyMs) {
      memory.kineticC = kineticMean(memory);
      memory.askedAt = now.at;
    }
    if (!halfSeen(memory, span)) now.doubt = quality.unobserved;
    return now.at < memory.frozenUntil ? null : memory.kineticC;
  },
  gap: (span, memory, fromMs, toMs) => meanGap(memory, span, fromMs, toMs),
  shift(memory, deltaMs) {
    meanShift(memory, deltaMs);
    memory.frozenUntil += deltaMs;
    if (memory.askedAt !== null) memory.askedAt += deltaMs;
  },
};
