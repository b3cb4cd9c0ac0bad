/**
 * The reference functions of thermocouples K, J and T on ITS-90, as published: voltage from
 * temperature, and the approximate inverse.
 *
 * Source: NIST, ITS-90 thermocouple database (SRD 60; Monograph 175), files type_k, type_j and
 * type_t. Temperatures in °C, voltages in mV, reference junction at 0 °C; constant term first.
 */
import type { Subject } from './subject.ts';

export type ThermocoupleType = 'K' | 'J' | 'T';
export const thermocoupleTypes = ['K', 'J', 'T'] as const satisfies readonly ThermocoupleType[];

/** One stretch: it holds from where the one before ends (the first from `from`) up to `to`. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly coefficients: readonly number[];
}

/** a0 exp(a1 (t - a2)^2), added by type K from 0 °C on. */
export interface Hump {
  readonly a0: number;
  readonly a1: number;
  readonly a2: number;
}

export interface Reference {
  /** Temperature, °C, to voltage, mV. */
  readonly voltage: readonly Stretch[];
  readonly hump: Hump | null;
  /** Voltage, mV, to temperature, °C, within some 0.06 °C. */
  readonly inverse: readonly Stretch[];
}

// biome-ignore format: a table reads better dense
export const references: Readonly<Record<ThermocoupleType, Reference>> = {
  K: {
    voltage: [
      { from: -270, to: 0, coefficients: [
        0, 0.394501280250e-1, 0.236223735980e-4, -0.328589067840e-6, -0.499048287770e-8,
        -0.675090591730e-10, -0.574103274280e-12, -0.310888728940e-14, -0.104516093650e-16,
        -0.198892668780e-19, -0.163226974860e-22,
      ] },
      { from: 0, to: 1372, coefficients: [
        -0.176004136860e-1, 0.389212049750e-1, 0.185587700320e-4, -0.994575928740e-7,
        0.318409457190e-9, -0.560728448890e-12, 0.560750590590e-15, -0.320207200030e-18,
        0.971511471520e-22, -0.121047212750e-25,
      ] },
    ],
    hump: { a0: 0.1185976, a1: -0.1183432e-3, a2: 0.1269686e3 },
    inverse: [
      { from: -5.891, to: 0, coefficients: [
        0, 2.5173462e1, -1.1662878, -1.0833638, -8.9773540e-1, -3.7342377e-1, -8.6632643e-2,
        -1.0450598e-2, -5.1920577e-4,
      ] },
      { from: 0, to: 20.644, coefficients: [
        0, 2.508355e1, 7.860106e-2, -2.503131e-1, 8.315270e-2, -1.228034e-2, 9.804036e-4,
        -4.413030e-5, 1.057734e-6, -1.052755e-8,
      ] },
      { from: 20.644, to: 54.886, coefficients: [
        -1.318058e2, 4.830222e1, -1.646031, 5.464731e-2, -9.650715e-4, 8.802193e-6, -3.110810e-8,
      ] },
    ],
  },
  J: {
    voltage: [
      { from: -210, to: 760, coefficients: [
        0, 0.503811878150e-1, 0.304758369300e-4, -0.856810657200e-7, 0.132281952950e-9,
        -0.170529583370e-12, 0.209480906970e-15, -0.125383953360e-18, 0.156317256970e-22,
      ] },
      { from: 760, to: 1200, coefficients: [
        0.296456256810e3, -0.149761277860e1, 0.317871039240e-2, -0.318476867010e-5,
        0.157208190040e-8, -0.306913690560e-12,
      ] },
    ],
    hump: null,
    inverse: [
      { from: -8.095, to: 0, coefficients: [
        0, 1.9528268e1, -1.2286185, -1.0752178, -5.9086933e-1, -1.7256713e-1, -2.8131513e-2,
        -2.3963370e-3, -8.3823321e-5,
      ] },
      { from: 0, to: 42.919, coefficients: [
        0, 1.978425e1, -2.001204e-1, 1.036969e-2, -2.549687e-4, 3.585153e-6, -5.344285e-8,
        5.099890e-10,
      ] },
      { from: 42.919, to: 69.553, coefficients: [
        -3.11358187e3, 3.00543684e2, -9.94773230, 1.70276630e-1, -1.43033468e-3, 4.73886084e-6,
      ] },
    ],
  },
  T: {
    voltage: [
      { from: -270, to: 0, coefficients: [
        0, 0.387481063640e-1, 0.441944343470e-4, 0.118443231050e-6, 0.200329735540e-7,
        0.901380195590e-9, 0.226511565930e-10, 0.360711542050e-12, 0.384939398830e-14,
        0.282135219250e-16, 0.142515947790e-18, 0.487686622860e-21, 0.107955392700e-23,
        0.139450270620e-26, 0.797951539270e-30,
      ] },
      { from: 0, to: 400, coefficients: [
        0, 0.387481063640e-1, 0.332922278800e-4, 0.206182434040e-6, -0.218822568460e-8,
        0.109968809280e-10, -0.308157587720e-13, 0.454791352900e-16, -0.275129016730e-19,
      ] },
    ],
    hump: null,
    inverse: [
      { from: -5.603, to: 0, coefficients: [
        0, 2.5949192e1, -2.1316967e-1, 7.9018692e-1, 4.2527777e-1, 1.3304473e-1, 2.0241446e-2,
        1.2668171e-3,
      ] },
      { from: 0, to: 20.872, coefficients: [
        0, 2.592800e1, -7.602961e-1, 4.637791e-2, -2.165394e-3, 6.048144e-5, -7.293422e-7,
      ] },
    ],
  },
};

export const subject: Subject = {
  title: 'Reference functions of thermocouples',
  about:
    'The published coefficients behind the voltage of a thermocouple and its approximate inverse, types K, J and T. The page on thermocouples says how they are used.',
  symbols: { E: 'voltage against a junction at 0 °C, mV', t: 'temperature, °C' },
  source:
    'NIST, ITS-90 thermocouple database (SRD 60; Monograph 175), files type_k, type_j and type_t.',
  uncertainty: 'The functions define the standard; real wire has tolerances of its own.',
  functions: {},
};
