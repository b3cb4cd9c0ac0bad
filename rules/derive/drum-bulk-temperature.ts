/** How cold a stirred drum is: one temperature throughout, and only while it is stirred. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { biotMax, biotNumber, partAfterStepC, timeConstantS } from '../process/heating.ts';
import { quality } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { KeepingKind } from './derived-kind.ts';
import {
  compileDrum,
  type DrumSettings,
  drumEveryMs,
  drumInputs,
  drumWritten,
} from './drum-body.ts';

interface BulkSettings extends DrumSettings {
  /** At or above it, in the unit of what tells it, the drum is stirred. */
  readonly stirredAbove: number;
  readonly timeConstantS: number;
  readonly sure: boolean;
}

interface BulkMemory {
  at: EpochMs | null;
  airC: number;
  bulkC: number;
  arrived: number | null;
  knownAt: EpochMs;
}

const stirredPlace = 1;
/** By then it has forgotten all but a twentieth of what nobody saw. */
const forgets = 3;

const forgetsMs = (settings: BulkSettings): number =>
  Math.round(forgets * settings.timeConstantS * 1_000);

function warm(settings: BulkSettings, memory: BulkMemory, at: EpochMs): boolean {
  const stepS = Math.max(0, at - (memory.at ?? at)) / 1_000;
  const { airC, bulkC } = memory;
  const next = partAfterStepC(bulkC, airC, airC, stepS, settings.timeConstantS);
  if (next !== null) memory.bulkC = next;
  memory.at = at;
  return next !== null;
}

export const drumBulkTemperature: KeepingKind<BulkSettings, BulkMemory> = {
  name: 'drum-bulk-temperature',
  summary:
    'Temperature of a drum that is stirred, as one, from the air around it; nothing while it is not stirred, when the wall runs far ahead. Uncertain where even stirred the wall does (Biot number 0.1 or more).',
  inputs: [
    drumInputs[0]!,
    {
      name: 'stirred',
      unit: 'any',
      meaning: '1 while the agitator turns, else 0; or its speed, with stirred_above',
    },
    drumInputs[1]!,
  ],
  unit: 'Cel',
  digits: 1,
  source: 'lumped capacity: Çengel, Heat Transfer, chapter 4; Incropera, chapter 5',
  range: 'air of -60 to 60 °C, stirred',
  written: z.strictObject({
    ...drumWritten,
    stirred_above: z.optional(
      quantitySetting(
        'Speed of the agitator at or above which the drum is stirred, where its speed tells it.',
      ),
    ),
  }),
  compile(read) {
    const drum = compileDrum(read);
    const { container, transferWPerM2K: h } = drum;
    const volumePerAreaM = container.radiusM / 2;
    const tau = timeConstantS(container, volumePerAreaM, h);
    const biot = biotNumber(h, volumePerAreaM, container.conductivityWPerMK);
    if (tau === null)
      read.report({
        path: ['transfer'],
        problem: 'heat transfer, radius and density make no drum that can be computed',
        fix: 'look at their units: transfer is some 4 to 20 W/(m2.K)',
      });
    const stirredAbove = read.has('stirred_above') ? read.quantity('stirred_above', '/min') : 1;
    return {
      ...drum,
      stirredAbove: stirredAbove ?? 1,
      timeConstantS: tau ?? 1,
      sure: biot !== null && biot < biotMax,
    };
  },
  version: 1,
  everyMs: drumEveryMs,
  begin: (settings, at) => ({
    at: null,
    airC: 0,
    bulkC: 0,
    arrived: null,
    knownAt: at + forgetsMs(settings),
  }),
  step(settings, memory, now) {
    const airC = now.inputs[0]!;
    const stirred = now.inputs[stirredPlace]! >= settings.stirredAbove;
    const count = settings.arrived < 0 ? null : now.inputs[settings.arrived]!;
    const isNew = count !== null && memory.arrived !== null && count > memory.arrived;
    if (!(airC >= -60 && airC <= 60)) return null;
    if (memory.at === null) memory.bulkC = airC;
    else if (!warm(settings, memory, now.at)) return null;
    if (isNew) {
      memory.bulkC = settings.startC ?? airC;
      memory.knownAt = settings.startC === null ? now.at + forgetsMs(settings) : now.at;
    }
    memory.at = now.at;
    memory.airC = airC;
    memory.arrived = count;
    if (now.at < memory.knownAt) now.doubt = quality.unobserved;
    else if (!settings.sure) now.doubt = quality.estimated;
    return stirred ? memory.bulkC : null;
  },
  gap(settings, memory, _, toMs) {
    if (memory.at === null) return;
    warm(settings, memory, toMs);
    memory.knownAt = Math.max(memory.knownAt, toMs + forgetsMs(settings));
  },
  shift(memory, deltaMs) {
    if (memory.at !== null) memory.at += deltaMs;
    memory.knownAt += deltaMs;
  },
};
