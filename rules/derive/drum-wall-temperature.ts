/** How cold an unstirred drum is at its wall, where a dispersion breaks first. */
import { z } from 'zod/mini';
import { wallOfC } from '../process/drum-course.ts';
import { quality } from '../signal/quality.ts';
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

export const drumSource =
  'conduction in a cylinder: Carslaw and Jaeger, Conduction of Heat in Solids; the choice of the wall: common practice, no published source';

export const drumWallTemperature: KeepingKind<UnstirredSettings, UnstirredMemory> = {
  name: 'drum-wall-temperature',
  summary:
    'Temperature at the wall of an unstirred drum, from the air around it; an estimate on the cold side, and 0 °C stands for anything below. A probe at the wall comes first.',
  inputs: drumInputs,
  unit: 'Cel',
  digits: 1,
  source: drumSource,
  range: 'air of -60 to 60 °C',
  written: z.strictObject(drumWritten),
  compile: compileUnstirred,
  version: 1,
  everyMs: drumEveryMs,
  begin: unstirredBegin,
  step(settings, memory, now) {
    if (unstirredTo(settings, memory, now.at, now.inputs) === null) return null;
    now.doubt = now.at < memory.knownAt ? quality.unobserved : quality.estimated;
    return Math.max(0, wallOfC(settings.terms, memory.termsC, memory.airC));
  },
  gap: (settings, memory, _, toMs) => unstirredGap(settings, memory, toMs),
  shift: unstirredShift,
};
