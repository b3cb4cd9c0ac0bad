/**
 * Make-up of a tank: how much water or adhesive to add, or why nothing is said.
 *
 * Only beyond twice the uncertainty of the solids, and only half the step: then stir, wait, measure
 * again. The sample must be said to be free of foam, stirred, and read at its temperature: one
 * percent of entrained air reads as 3.4 % too few solids, and the tank would be given adhesive.
 * Water is deionised, with its conductivity known: tap water can coagulate the dispersion.
 *
 * Basis: half steps and the 2u are engineering judgement; conductivity at most 5 µS/cm when new is
 * ISO 3696 grade 3 and ASTM D1193 type IV; acting at 10 to 20 µS/cm is common practice, no
 * published source.
 */
import type { Subject } from './subject.ts';

/** Deionised water when new (ISO 3696 grade 3). */
export const deionisedMaxUSPerCm = 5;
/** Where a plant must act at the latest (common practice, no published source). */
export const deionisedActMaxUSPerCm = 20;

/** What the person at the tank has done. All three, or nothing is recommended. */
export interface SampleConfirmed {
  readonly foamFree: boolean;
  readonly stirred: boolean;
  readonly temperatureReadWithIt: boolean;
}

export type Water =
  | { readonly kind: 'deionised'; readonly conductivityUSPerCm: number | null }
  | { readonly kind: 'tap' };

export interface Tank {
  /** What is in it now, kg; over 0 to 1e5. */
  readonly massKg: number;
  /** What it may hold, kg; null where nobody said. */
  readonly massMaxKg: number | null;
  /** Mass solids by density with their standard uncertainty (solids.ts), %. */
  readonly solidsPct: number;
  readonly uPct: number;
  /** Target of the data sheet, %, over 1 and below 80. */
  readonly targetPct: number;
  /** Solids of the container at hand, %; null where none is at hand. */
  readonly adhesivePct: number | null;
  readonly water: Water;
  /** The site's own limit for its water, µS/cm: 5 to 20. */
  readonly waterActUSPerCm: number;
}

export type MakeUpRefusal =
  | 'sample-not-confirmed'
  | 'out-of-range'
  | 'tap-water'
  | 'water-conductivity-unknown'
  | 'water-too-conductive'
  | 'no-adhesive-at-hand'
  /** The container is not richer than the target. */
  | 'adhesive-too-lean'
  | 'tank-would-overflow';

export type MakeUp =
  | {
      readonly kind: 'add';
      readonly what: 'water' | 'adhesive';
      /** Half the step: this much now. */
      readonly addKg: number;
      /** What would reach the target at once, for the record: never to be added. */
      readonly wholeStepKg: number;
      /** Expected after it, %. */
      readonly expectedPct: number;
    }
  | { readonly kind: 'nothing'; readonly why: 'within-uncertainty' }
  | { readonly kind: 'refused'; readonly why: MakeUpRefusal };

const refused = (why: MakeUpRefusal): MakeUp => ({ kind: 'refused', why });
const solid = (pct: number): boolean => pct > 1 && pct < 80;

/**
 * The next half step towards the target. Water: m (w/w_t - 1). Adhesive: m (w_t - w)/(w_a - w_t).
 * A refusal says why; the order of the reasons is that of the questions a person would ask.
 */
export function makeUp(tank: Tank, confirmed: SampleConfirmed): MakeUp {
  if (!confirmed.foamFree || !confirmed.stirred || !confirmed.temperatureReadWithIt)
    return refused('sample-not-confirmed');
  const { massKg, massMaxKg, solidsPct, uPct, targetPct, waterActUSPerCm } = tank;
  if (!(massKg > 0 && massKg <= 1e5) || !(massMaxKg === null || massMaxKg >= massKg))
    return refused('out-of-range');
  if (!solid(solidsPct) || !solid(targetPct) || !(uPct > 0 && uPct < 50))
    return refused('out-of-range');
  if (!(waterActUSPerCm >= deionisedMaxUSPerCm && waterActUSPerCm <= deionisedActMaxUSPerCm))
    return refused('out-of-range');
  const offPct = solidsPct - targetPct;
  if (Math.abs(offPct) <= 2 * uPct) return { kind: 'nothing', why: 'within-uncertainty' };

  const step = offPct > 0 ? waterStep(tank) : adhesiveStep(tank);
  if (typeof step === 'string') return refused(step);
  const addKg = step.wholeStepKg / 2;
  if (massMaxKg !== null && massKg + addKg > massMaxKg) return refused('tank-would-overflow');
  const expectedPct = (massKg * solidsPct + addKg * step.addedPct) / (massKg + addKg);
  const what = offPct > 0 ? 'water' : 'adhesive';
  return { kind: 'add', what, addKg, wholeStepKg: step.wholeStepKg, expectedPct };
}

interface Step {
  readonly wholeStepKg: number;
  /** Solids of what is added, %. */
  readonly addedPct: number;
}

function waterStep(tank: Tank): Step | MakeUpRefusal {
  const { water, waterActUSPerCm, massKg, solidsPct, targetPct } = tank;
  if (water.kind === 'tap') return 'tap-water';
  const { conductivityUSPerCm } = water;
  if (conductivityUSPerCm === null || !(conductivityUSPerCm >= 0))
    return 'water-conductivity-unknown';
  if (conductivityUSPerCm > waterActUSPerCm) return 'water-too-conductive';
  return { wholeStepKg: massKg * (solidsPct / targetPct - 1), addedPct: 0 };
}

function adhesiveStep(tank: Tank): Step | MakeUpRefusal {
  const { adhesivePct, massKg, solidsPct, targetPct } = tank;
  if (adhesivePct === null) return 'no-adhesive-at-hand';
  if (!solid(adhesivePct)) return 'out-of-range';
  // Within a percent of the target a tank would have to be filled many times over.
  if (adhesivePct < targetPct + 1) return 'adhesive-too-lean';
  const wholeStepKg = (massKg * (targetPct - solidsPct)) / (adhesivePct - targetPct);
  return { wholeStepKg, addedPct: adhesivePct };
}

export const subject: Subject = {
  title: 'Make-up of a tank',
  about:
    'Water or adhesive to bring solids back to target: half the step, then stir and measure again. Nothing within twice the uncertainty; nothing unless the sample was free of foam, stirred, and read at its temperature; never tap water. It recommends to a person and moves no valve.',
  symbols: {
    m: 'what is in the tank, kg',
    w: 'solids now, %',
    w_t: 'target, %',
    w_a: 'solids of the adhesive added, %',
    u: 'standard uncertainty of w, %',
  },
  source:
    'Mass balance. Half step and 2u: engineering judgement. Water: ISO 3696 grade 3 and ASTM D1193 type IV, 5 µS/cm when new; acting at 10 to 20 µS/cm is common practice, no published source.',
  uncertainty: 'That of the solids put in; the amount errs by u/(w - w_t) of itself.',
  functions: {
    makeUp: {
      formula: 'water: m (w/w_t - 1)/2; adhesive: m (w_t - w)/(w_a - w_t)/2; both in kg',
      range:
        'Tank over 0 to 1e5 kg, solids over 1 and below 80 %, u over 0; refused outside, saying why; nothing where abs(w - w_t) <= 2u.',
    },
  },
};
