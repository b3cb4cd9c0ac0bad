/** What the heat a load has had is worth, in time at one reference temperature. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { equivalentMs, type Kinetics } from '../process/heat-equivalent.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';
import { type LoadClock, loadBegin, loadGap, loadReads, loadShift } from './load-clock.ts';
import type { DerivedSettingsReader } from './settings-reader.ts';

export interface HeatDoseSettings {
  readonly referenceC: number;
  readonly kinetics: Kinetics;
  readonly loaded: number;
}

export interface HeatDoseMemory extends LoadClock {
  ms: number;
}

function compileKinetics(read: DerivedSettingsReader): Kinetics {
  if (read.has('activation_energy') === read.has('z_value'))
    read.report({
      path: [],
      problem: 'one figure says how the rate grows with temperature',
      fix: 'give either activation_energy or z_value, from the data sheet or a trial',
    });
  return read.has('z_value')
    ? { by: 'z', zK: read.positive('z_value', 'K') }
    : { by: 'arrhenius', activationKJPerMol: read.positive('activation_energy', 'kJ/mol') };
}

export const heatDose: KeepingKind<HeatDoseSettings, HeatDoseMemory> = {
  name: 'heat-dose',
  summary:
    'Time at a reference temperature that the heat since the load came in is worth, by activation energy or z-value; stands when the load has left, until the next one.',
  inputs: [
    { name: 'temperature', unit: 'Cel', meaning: 'temperature of the metal, not of the air' },
    { name: 'loaded', unit: '1', meaning: '1 while a load is inside, else 0', optional: true },
  ],
  unit: 's',
  digits: 0,
  source: 'Arrhenius 1889; z- and F-value of thermal processing',
  range: '-100 to 500 °C',
  written: z.strictObject({
    reference: quantitySetting('Temperature at which the dose is counted.'),
    activation_energy: z.optional(
      quantitySetting('How the rate grows with temperature, as "90 kJ/mol"; or give z_value.'),
    ),
    z_value: z.optional(
      quantitySetting('Kelvin for ten times the rate, as "30 K"; or give activation_energy.'),
    ),
  }),
  compile: (read) => ({
    referenceC: read.quantity('reference', 'Cel') ?? 0,
    kinetics: compileKinetics(read),
    loaded: read.place('loaded'),
  }),
  version: 1,
  begin: ({ loaded }) => ({ ...loadBegin(loaded >= 0), ms: 0 }),
  step(settings, memory, now) {
    const { referenceC, kinetics } = settings;
    const value = now.inputs[0]!;
    const loaded = settings.loaded < 0 ? null : now.inputs[settings.loaded]! >= 1;
    const { fresh, since, from } = loadReads(memory, now.at, value, loaded);
    if (fresh) memory.ms = 0;
    const worth = equivalentMs(from, value, now.at - (since ?? now.at), referenceC, kinetics);
    // A part too hot or too cold for the formula is a part of the dose nobody knows.
    if (worth === null && since !== null) memory.partial = true;
    else if (since !== null) memory.ms += worth ?? 0;
    if (memory.partial) now.doubt = quality.unobserved;
    return memory.ms / 1_000;
  },
  gap({ referenceC, kinetics }, memory, fromMs, toMs) {
    if (memory.at !== null && memory.loaded !== false) {
      const { value, at } = memory;
      memory.ms += equivalentMs(value, value, Math.max(0, fromMs - at), referenceC, kinetics) ?? 0;
    }
    loadGap(memory, toMs);
  },
  shift: loadShift,
};
