/** How long until the wall of an unstirred drum is too cold, if the air stays as it is. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { timeToFloorS } from '../process/drum-course.ts';
import { quality } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { KeepingKind } from './derived-kind.ts';
import {
  compileUnstirred,
  drumEveryMs,
  drumInputs,
  drumWritten,
  type UnstirredMemory,
  type UnstirredSettings,
  unstirredBegin,
  unstirredGap,
  unstirredShift,
  unstirredTo,
} from './drum-body.ts';
import { drumSource } from './drum-wall-temperature.ts';

interface FloorSettings extends UnstirredSettings {
  readonly floorC: number;
}

interface FloorMemory extends UnstirredMemory {
  /** Worked out last, and what it came to. */
  askedAt: EpochMs | null;
  leftS: number | null;
}

/** Longer is told as this. */
const longestS = 7 * 86_400;
const stepS = 600;

export const drumTimeToFloor: KeepingKind<FloorSettings, FloorMemory> = {
  name: 'drum-time-to-floor',
  summary:
    'Time until the wall of an unstirred drum is at its lowest permitted temperature, if the air stays as it is, in steps of ten minutes; 7 d stands for longer or never. It says nothing of freezing through.',
  inputs: drumInputs,
  unit: 's',
  saidIn: 'h',
  digits: 0,
  source: drumSource,
  range: 'air of -60 to 60 °C, a floor of 0 to 60 °C',
  written: z.strictObject({
    ...drumWritten,
    floor: quantitySetting('Lowest permitted temperature of the contents, at the wall.'),
  }),
  compile(read) {
    const floorC = read.quantity('floor', 'Cel') ?? 0;
    if (!(floorC >= 0 && floorC <= 60))
      read.report({
        path: ['floor'],
        problem: 'nothing is told below 0 °C or above 60 °C',
        fix: 'write the lowest storage temperature of the data sheet',
      });
    return { ...compileUnstirred(read), floorC };
  },
  version: 1,
  everyMs: drumEveryMs,
  begin: (settings, at) => ({ ...unstirredBegin(settings, at), askedAt: null, leftS: null }),
  step(settings, memory, now, timer) {
    const isNew = unstirredTo(settings, memory, now.at, now.inputs);
    if (isNew === null) return null;
    const { terms, floorC } = settings;
    const { termsC, airC, askedAt } = memory;
    if (isNew || askedAt === null || now.at - askedAt >= drumEveryMs) {
      const left = timeToFloorS(terms, termsC, airC, floorC, longestS);
      memory.leftS = left === null ? null : Math.floor(left / stepS) * stepS;
      memory.askedAt = now.at;
    }
    timer.at = memory.askedAt === null ? null : memory.askedAt + stepS * 1_000;
    now.doubt = now.at < memory.knownAt ? quality.unobserved : quality.estimated;
    return memory.leftS;
  },
  gap: (settings, memory, _, toMs) => unstirredGap(settings, memory, toMs),
  shift(memory, deltaMs) {
    unstirredShift(memory, deltaMs);
    if (memory.askedAt !== null) memory.askedAt += deltaMs;
  },
};
