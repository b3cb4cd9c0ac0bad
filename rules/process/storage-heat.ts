/**
 * What a store's heat has done: mean kinetic temperature, degree-hours, and a date they may shorten.
 *
 * T_K = (E/R) / -ln(mean of exp(-E/(R T))), T in K: the steady temperature that would have aged the
 * goods as much. The default E, 83.144 kJ/mol, is a customary one of pharmacy, made so that E/R is
 * 10 000 K; with it the figure compares stores and seasons and says nothing of an adhesive. Only an
 * E from its data sheet says anything of its age, and then only towards an earlier date. It is not
 * to be quoted of goods that were frozen, so any reading under 0 °C refuses it.
 *
 * Sources: W. Tong, A. Lock, mean kinetic temperature with unevenly spaced readings (2015);
 * USP general chapter 1079.2; WHO Technical Report Series 953.
 */
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Heat in storage',
  about:
    'Mean kinetic temperature and degree-hours, to compare stores and seasons. Never a shelf life: with an activation energy from the data sheet it may shorten a date, and nothing here lengthens one. Not for frozen goods.',
  symbols: {
    T: 'temperature, K in the formula',
    E: 'activation energy, kJ/mol; 83.144 is a customary figure of pharmacy, good to compare only',
    R: '8.3144 J/(mol K), so that E/R is 10 000 K',
    w: 'hours at a temperature',
  },
  source:
    'Tong and Lock 2015; USP general chapter 1079.2; WHO Technical Report Series 953; degree-hours by definition',
  uncertainty:
    'taking readings as steps or as straight lines moves it by up to 0.6 K in a published case; E itself is seldom known',
  functions: {
    meanKineticTemperature: {
      formula: 'T_K = (E/R)/-ln(sum w exp(-E/(R T)) / sum w)',
      range:
        'readings 0 to 80 °C, weights 0 or more and some over 0, E 40 to 200 kJ/mol; refused outside, and for any reading under 0 °C',
    },
    meanKineticTemperatureOverTime: {
      formula: 'the same, the mean taken by trapezoids from reading to reading',
      range: 'at least 2 readings 0 to 80 °C, hours ascending; refused outside',
    },
    degreeHours: {
      formula:
        'integral of max(0, T - base), or of max(0, base - T), on straight lines between readings, K h',
      range: 'at least 2 finite readings, hours ascending; refused outside',
    },
    shortenedDueMs: {
      formula:
        'due - (exp(E/R (1/T_ref - 1/T_K)) - 1) of the time spent, where that is over 0; else due',
      range: 'T_K and T_ref 0 to 80 °C, E from the data sheet, 40 to 200 kJ/mol; refused outside',
    },
  },
};

const perKelvinJPerMolK = 8.3144;
const zeroCelsiusK = 273.15;

/** For comparison only. */
export const comparisonActivationKJPerMol = 83.144;

export interface StorageHeatRefusal {
  readonly refused: 'frozen' | 'out-of-range' | 'too-few';
}

export interface KineticMean {
  readonly kineticMeanC: number;
  /** E is no data-sheet figure: it compares stores and says nothing of this material. */
  readonly comparisonOnly: boolean;
}

/** Of readings that count by `weights` (hours each stood, or all 1). */
export function meanKineticTemperature(
  temperaturesC: readonly number[],
  weights: readonly number[],
  dataSheetActivationKJPerMol: number | null = null,
): KineticMean | StorageHeatRefusal {
  const refused = unfit(temperaturesC, dataSheetActivationKJPerMol, 1);
  if (refused !== null) return { refused };
  if (weights.length !== temperaturesC.length) return { refused: 'out-of-range' };
  if (!weights.every((weight) => weight >= 0 && weight < 1e12)) return { refused: 'out-of-range' };
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (total === 0) return { refused: 'too-few' };
  const perK = perKelvin(dataSheetActivationKJPerMol);
  const rate = weights.reduce(
    (sum, weight, i) => sum + weight * ageing(temperaturesC[i]!, perK),
    0,
  );
  return kineticMean(rate / total, dataSheetActivationKJPerMol);
}

/** Of readings at hours that ascend; between them the ageing runs straight. */
export function meanKineticTemperatureOverTime(
  timesH: readonly number[],
  temperaturesC: readonly number[],
  dataSheetActivationKJPerMol: number | null = null,
): KineticMean | StorageHeatRefusal {
  const refused = unfit(temperaturesC, dataSheetActivationKJPerMol, 2);
  if (refused !== null) return { refused };
  if (!ascending(timesH, temperaturesC.length)) return { refused: 'out-of-range' };
  const perK = perKelvin(dataSheetActivationKJPerMol);
  let sum = 0;
  for (let i = 1; i < timesH.length; i += 1) {
    const both = ageing(temperaturesC[i - 1]!, perK) + ageing(temperaturesC[i]!, perK);
    sum += (both / 2) * (timesH[i]! - timesH[i - 1]!);
  }
  return kineticMean(sum / (timesH.at(-1)! - timesH[0]!), dataSheetActivationKJPerMol);
}

/** Kelvin beyond `baseC` times hours, K h. */
export function degreeHours(
  timesH: readonly number[],
  temperaturesC: readonly number[],
  baseC: number,
  side: 'above' | 'below',
): number | StorageHeatRefusal {
  if (temperaturesC.length < 2) return { refused: 'too-few' };
  if (!ascending(timesH, temperaturesC.length) || !Number.isFinite(baseC)) {
    return { refused: 'out-of-range' };
  }
  if (!temperaturesC.every((each) => each >= -100 && each <= 400)) {
    return { refused: 'out-of-range' };
  }
  const sign = side === 'above' ? 1 : -1;
  let sum = 0;
  for (let i = 1; i < timesH.length; i += 1) {
    const from = sign * (temperaturesC[i - 1]! - baseC);
    const to = sign * (temperaturesC[i]! - baseC);
    sum += positivePart(from, to) * (timesH[i]! - timesH[i - 1]!);
  }
  return sum;
}

/**
 * A due date after `spentMs` at a kinetic mean, for goods whose date holds at `referenceC`. Warmer
 * spends the date faster; cooler gives nothing back. E must come from the data sheet.
 */
export function shortenedDueMs(
  dueMs: number,
  spentMs: number,
  kineticMeanC: number,
  referenceC: number,
  dataSheetActivationKJPerMol: number,
): number | StorageHeatRefusal {
  const refused = unfit([kineticMeanC, referenceC], dataSheetActivationKJPerMol, 2);
  if (refused !== null) return { refused };
  if (!Number.isFinite(dueMs) || !(spentMs >= 0 && spentMs < 1e13)) {
    return { refused: 'out-of-range' };
  }
  const perK = perKelvin(dataSheetActivationKJPerMol);
  const faster = ageing(kineticMeanC, perK) / ageing(referenceC, perK) - 1;
  return dueMs - Math.max(0, faster) * spentMs;
}

const perKelvin = (activationKJPerMol: number | null): number =>
  ((activationKJPerMol ?? comparisonActivationKJPerMol) * 1_000) / perKelvinJPerMolK;

const ageing = (celsius: number, perK: number): number =>
  Math.exp(-perK / (celsius + zeroCelsiusK));

function kineticMean(rate: number, dataSheetKJPerMol: number | null): KineticMean {
  return {
    kineticMeanC: perKelvin(dataSheetKJPerMol) / -Math.log(rate) - zeroCelsiusK,
    comparisonOnly: dataSheetKJPerMol === null,
  };
}

function unfit(
  temperaturesC: readonly number[],
  activationKJPerMol: number | null,
  least: number,
): StorageHeatRefusal['refused'] | null {
  if (temperaturesC.length < least) return 'too-few';
  if (temperaturesC.some((each) => each < 0)) return 'frozen';
  if (!temperaturesC.every((each) => each <= 80)) return 'out-of-range';
  const energy = activationKJPerMol ?? comparisonActivationKJPerMol;
  return energy >= 40 && energy <= 200 ? null : 'out-of-range';
}

const ascending = (timesH: readonly number[], count: number): boolean =>
  timesH.length === count &&
  timesH.every((at, i) => Number.isFinite(at) && (i === 0 || at > timesH[i - 1]!));

/** Mean of what is over 0 on the straight line between two values. */
function positivePart(from: number, to: number): number {
  if (from <= 0 && to <= 0) return 0;
  if (from >= 0 && to >= 0) return (from + to) / 2;
  const top = Math.max(from, to);
  return (top * top) / (2 * Math.abs(to - from));
}
