/**
 * Metal temperature of a part that nobody measures, from the air of the oven.
 *
 * One temperature for the whole part, one time constant for its family. Uncertain until a trial run
 * has given the time constant, and where the part is too thick to warm as one.
 */
import { z } from 'zod/mini';
import { durationSetting, quantitySetting } from '../kinds/settings.ts';
import {
  biotNumber,
  carbonSteel,
  lumpedQuality,
  partAfterStepC,
  transferFromTimeConstantWPerM2K,
} from '../process/heating.ts';
import { quality } from '../signal/quality.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { KeepingKind } from './derived-kind.ts';
import type { DerivedSettingsReader } from './settings-reader.ts';

export interface PartSettings {
  readonly timeConstantS: number;
  readonly sure: boolean;
  /** Of a part at the door, where nobody measures it. */
  readonly entryC: number;
  readonly entry: number;
  /** Heat its water takes, as a rise of the metal, and the temperature it is held at meanwhile. */
  readonly waterK: number;
  readonly wetC: number;
}

export interface PartMemory {
  at: EpochMs | null;
  airC: number;
  partC: number;
  loaded: boolean | null;
  waterK: number;
  /** The load came in, or was lost sight of, while nobody looked. */
  partial: boolean;
}

const mmPerM = 1_000;
const loadedAt = 1;

function compile(read: DerivedSettingsReader): PartSettings {
  const timeConstantS = read.duration('time_constant', 1_000) / 1_000;
  const waterK = read.quantity('evaporation', 'K');
  const wetC = read.quantity('wet_at', 'Cel');
  if (timeConstantS <= 0)
    read.report({
      path: ['time_constant'],
      problem: 'no part follows the air at once',
      fix: 'make it more than 0 s',
    });
  if ((waterK === null) !== (wetC === null))
    read.report({
      path: [waterK === null ? 'wet_at' : 'evaporation'],
      problem: 'evaporation and wet_at belong together',
      fix: 'give both, or neither',
    });
  const entryC = read.quantity('entry', 'Cel');
  const entry = read.place('entry');
  if (entryC === null && entry < 0)
    read.report({
      path: [],
      problem: 'nothing says how warm a part comes in',
      fix: 'give the setting entry, or a signal for the input entry',
    });
  const volumePerAreaM =
    read.quantity('volume_per_area', 'mm') === null
      ? null
      : read.positive('volume_per_area', 'mm') / mmPerM;
  const from = read.flag('from_trial_run', false) ? 'trial-run' : 'estimate';
  return {
    timeConstantS,
    sure: lumpedQuality(biotOf(volumePerAreaM, timeConstantS), from) === 'good',
    entryC: entryC ?? 0,
    entry,
    waterK: waterK ?? 0,
    wetC: wetC ?? 0,
  };
}

/** Of carbon steel, whose heat transfer follows from the time constant; null where nobody knows how thick. */
function biotOf(volumePerAreaM: number | null, timeConstantS: number): number | null {
  if (volumePerAreaM === null) return null;
  const h = transferFromTimeConstantWPerM2K(carbonSteel, volumePerAreaM, timeConstantS);
  return h === null ? null : biotNumber(h, volumePerAreaM, carbonSteel.conductivityWPerMK);
}

/** Warms the part up to `at`; false where the temperatures lie out of range. */
function warm(settings: PartSettings, memory: PartMemory, at: EpochMs, airC: number): boolean {
  const { timeConstantS, wetC } = settings;
  const stepS = memory.at === null ? 0 : Math.max(0, at - memory.at) / 1_000;
  const next = partAfterStepC(memory.partC, memory.airC, airC, stepS, timeConstantS);
  if (next === null) return false;
  // While the film is wet, what would warm the part beyond that dries it.
  const spare = memory.waterK > 0 ? Math.max(0, next - Math.max(memory.partC, wetC)) : 0;
  const taken = Math.min(memory.waterK, spare);
  memory.waterK -= taken;
  memory.partC = next - taken;
  return true;
}

export const partTemperature: KeepingKind<PartSettings, PartMemory> = {
  name: 'part-temperature',
  summary:
    'Metal temperature of a part from the air around it, by one time constant; between loads that of a part at the door. Uncertain unless a trial run gave the time constant and the part is thin enough to warm as one. Not for infrared.',
  inputs: [
    { name: 'air', unit: 'Cel', meaning: 'air of the oven at the height of the parts' },
    { name: 'loaded', unit: '1', meaning: '1 while the load is inside, else 0' },
    { name: 'entry', unit: 'Cel', meaning: 'temperature of a part at the door', optional: true },
  ],
  unit: 'Cel',
  digits: 1,
  source: 'lumped capacity: Çengel, Heat Transfer, chapter 4; Incropera, chapter 5',
  range: '-100 to 1500 °C',
  written: z.strictObject({
    time_constant: durationSetting(
      'How long a part of this family takes to close two thirds of the distance to the air, in this load.',
    ),
    from_trial_run: z.optional(
      z.boolean().check(
        z.meta({
          description:
            'The time constant was fitted to a run with thermocouples on the parts; until then the result is uncertain.',
        }),
      ),
    ),
    volume_per_area: z.optional(
      quantitySetting(
        'Volume of the metal over its heated surface, half the thickness of a sheet heated on both sides. Without it nobody knows whether the part warms as one, and the result is uncertain.',
      ),
    ),
    entry: z.optional(
      quantitySetting('Temperature of a part as it comes in, where no signal gives it.'),
    ),
    evaporation: z.optional(
      quantitySetting(
        'Heat that the water of the wet film takes, as the rise it would have given the metal, as "60 K".',
      ),
    ),
    wet_at: z.optional(quantitySetting('Temperature a part is held at while its film is wet.')),
  }),
  compile,
  version: 1,
  begin: (settings) => ({
    at: null,
    airC: 0,
    partC: settings.entryC,
    loaded: null,
    waterK: 0,
    partial: true,
  }),
  step(settings, memory, now) {
    const airC = now.inputs[0]!;
    const loaded = now.inputs[1]! >= loadedAt;
    const entryC = settings.entry < 0 ? settings.entryC : now.inputs[settings.entry]!;
    if (!loaded || memory.loaded !== true) {
      // What was in already when observation began may be warmer by now than at the door.
      memory.partial = loaded && memory.loaded === null;
      memory.partC = entryC;
      memory.waterK = settings.waterK;
    } else if (!warm(settings, memory, now.at, airC)) return null;
    memory.at = now.at;
    memory.airC = airC;
    memory.loaded = loaded;
    if (memory.partial && loaded) now.doubt = quality.unobserved;
    else if (!settings.sure) now.doubt = quality.unproven;
    return memory.partC;
  },
  gap(settings, memory, fromMs, toMs) {
    if (memory.at === null) return;
    if (memory.loaded === true) {
      warm(settings, memory, fromMs, memory.airC);
      memory.at = fromMs;
      // The oven hardly stood still: the part went on with the air it had.
      warm(settings, memory, toMs, memory.airC);
      memory.partial = true;
    }
    memory.at = toMs;
  },
  shift(memory, deltaMs) {
    if (memory.at !== null) memory.at += deltaMs;
  },
};
