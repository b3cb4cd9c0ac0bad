/** A drum as the site describes it, and its course through the air of the store. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { airCovered, type DrumTerm, drumTerms, fadeTowards } from '../process/drum-course.ts';
import { type Container, drum208L } from '../process/freezing.ts';
import type { EpochMs } from '../signal/sample.ts';
import type { DerivedInput } from './derived-kind.ts';
import type { DerivedSettingsReader } from './settings-reader.ts';

export interface DrumSettings {
  readonly container: Container;
  readonly transferWPerM2K: number;
  /** Where it came in from: its temperature then; null for that of the air. */
  readonly startC: number | null;
  /** Place of the input that tells a new one; -1 without. */
  readonly arrived: number;
}

export interface UnstirredSettings extends DrumSettings {
  readonly terms: readonly DrumTerm[];
  /** As long as its slowest term takes to forget what nobody saw. */
  readonly forgetsMs: number;
}

export interface UnstirredMemory {
  at: EpochMs | null;
  airC: number;
  termsC: number[];
  arrived: number | null;
  /** Its past is not known before this. */
  knownAt: EpochMs;
}

const mmPerM = 1_000;

export const drumInputs: readonly DerivedInput[] = [
  { name: 'air', unit: 'Cel', meaning: 'air around the drum, at its coldest side' },
  {
    name: 'arrived',
    unit: '1',
    meaning: 'rises when a drum comes in: 1 then, or a count of drums',
    optional: true,
  },
];

export const drumWritten = {
  radius: z.optional(quantitySetting('Radius of the drum; 286 mm of a 208 L drum unless given.')),
  density: z.optional(quantitySetting('Density of the contents; 1.10 g/mL unless given.')),
  transfer: quantitySetting(
    'Heat transfer from the air to the contents, through the wall; 8 W/(m2.K) for a drum in still air (engineering judgement).',
  ),
  start: z.optional(
    quantitySetting('Temperature of a drum as it comes in; that of the air unless given.'),
  ),
} as const;

export function compileDrum(read: DerivedSettingsReader): DrumSettings {
  return {
    container: {
      ...drum208L,
      ...(read.has('radius') ? { radiusM: read.positive('radius', 'mm') / mmPerM } : {}),
      ...(read.has('density') ? { densityKgPerM3: read.positive('density', 'kg/m3') } : {}),
    },
    transferWPerM2K: read.positive('transfer', 'W/(m2.K)'),
    startC: read.quantity('start', 'Cel'),
    arrived: read.place('arrived'),
  };
}

/** A drum takes hours; what its air does within a minute is nothing to it. */
export const drumEveryMs = 60_000;

export function compileUnstirred(read: DerivedSettingsReader): UnstirredSettings {
  const drum = compileDrum(read);
  const terms = drumTerms(drum.container, drum.transferWPerM2K);
  if (terms === null)
    read.report({
      path: ['transfer'],
      problem: 'heat transfer, radius and density make no drum that can be computed',
      fix: 'look at their units: transfer is some 4 to 20 W/(m2.K)',
    });
  const slowestPerS = terms?.[0]?.perS ?? 1;
  return { ...drum, terms: terms ?? [], forgetsMs: Math.round(3_000 / slowestPerS) };
}

export const unstirredBegin = ({ forgetsMs }: UnstirredSettings, at: EpochMs): UnstirredMemory => ({
  at: null,
  airC: 0,
  termsC: [],
  arrived: null,
  knownAt: at + forgetsMs,
});

/** Takes the drum to `at`; true where a new one came in. null out of range. */
export function unstirredTo(
  settings: UnstirredSettings,
  memory: UnstirredMemory,
  at: EpochMs,
  inputs: ArrayLike<number>,
): boolean | null {
  const { terms, startC, arrived } = settings;
  const airC = inputs[0]!;
  const count = arrived < 0 ? null : inputs[arrived]!;
  const isNew = count !== null && memory.arrived !== null && count > memory.arrived;
  const begun = memory.at !== null;
  if (!airCovered(airC)) return null;
  if (begun && !fadeTowards(terms, memory.termsC, memory.airC, secondsTo(memory, at))) return null;
  if (!begun || isNew) memory.termsC = terms.map(() => (isNew ? startC : null) ?? airC);
  // How warm it came in is known only where somebody said so.
  if (isNew) memory.knownAt = startC === null ? at + settings.forgetsMs : at;
  memory.at = at;
  memory.airC = airC;
  memory.arrived = count;
  return isNew || !begun;
}

const secondsTo = (memory: UnstirredMemory, at: EpochMs): number =>
  Math.max(0, at - memory.at!) / 1_000;

/** The air went on as it was, as far as anybody knows. */
export function unstirredGap(
  settings: UnstirredSettings,
  memory: UnstirredMemory,
  toMs: EpochMs,
): void {
  if (memory.at === null) return;
  fadeTowards(settings.terms, memory.termsC, memory.airC, secondsTo(memory, toMs));
  memory.at = toMs;
  memory.knownAt = Math.max(memory.knownAt, toMs + settings.forgetsMs);
}

export function unstirredShift(memory: UnstirredMemory, deltaMs: number): void {
  if (memory.at !== null) memory.at += deltaMs;
  memory.knownAt += deltaMs;
}
