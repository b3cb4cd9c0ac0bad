/**
 * Has a tank lost water? Only where solids and level both say so.
 *
 * Denser alone proves nothing: it may have been fed richer adhesive, warmed less, or lost its foam.
 * If the solids rose from w0 to w1 by evaporation, m (1 - w0/w1) of water left, and the level must
 * have fallen by that volume over the tank's surface. What was drawn and fed between the two
 * readings has to be taken off the level first. Basis: mass balance, engineering judgement.
 */
import type { Subject } from './subject.ts';

export interface TankChange {
  /** What was in it at the first reading, kg; over 0 to 1e5. */
  readonly massKg: number;
  /** Free surface, m2; over 0 to 100. */
  readonly surfaceM2: number;
  /** Mass solids before and after, with the standard uncertainty of their difference, %. */
  readonly beforePct: number;
  readonly afterPct: number;
  readonly uDifferencePct: number;
  /** How far the level fell beyond what was drawn and fed, mm, with its standard uncertainty; null where nobody measured it. */
  readonly levelFell: { readonly mm: number; readonly uMm: number } | null;
}

export type WaterLoss =
  /** Solids rose no more than twice their uncertainty. */
  | { readonly kind: 'not-seen' }
  /** Solids rose; without a level nothing follows. */
  | { readonly kind: 'level-unknown' }
  /** Solids rose and the level did not fall to match: look for another cause. */
  | { readonly kind: 'level-disagrees'; readonly expectedMm: number }
  | { readonly kind: 'agrees'; readonly lostKg: number; readonly expectedMm: number }
  | { readonly kind: 'refused'; readonly why: 'out-of-range' };

const waterKgPerL = 0.998;

/** Compares what the solids say with what the level says; they agree within twice their uncertainties together. */
export function waterLoss(change: TankChange): WaterLoss {
  const { massKg, surfaceM2, beforePct, afterPct, uDifferencePct, levelFell } = change;
  const believable =
    massKg > 0 &&
    massKg <= 1e5 &&
    surfaceM2 > 0 &&
    surfaceM2 <= 100 &&
    [beforePct, afterPct].every((pct) => pct > 1 && pct < 80) &&
    uDifferencePct > 0 &&
    uDifferencePct < 50 &&
    (levelFell === null ||
      (Math.abs(levelFell.mm) <= 1e4 && levelFell.uMm > 0 && levelFell.uMm <= 1e4));
  if (!believable) return { kind: 'refused', why: 'out-of-range' };
  if (afterPct - beforePct <= 2 * uDifferencePct) return { kind: 'not-seen' };
  if (levelFell === null) return { kind: 'level-unknown' };
  const lostKg = massKg * (1 - beforePct / afterPct);
  // One litre on one square metre stands a millimetre high.
  const expectedMm = lostKg / waterKgPerL / surfaceM2;
  const uExpectedMm = (expectedMm * uDifferencePct) / (afterPct - beforePct);
  const within = Math.abs(levelFell.mm - expectedMm) <= 2 * Math.hypot(uExpectedMm, levelFell.uMm);
  // A level that may not have moved at all supports nothing.
  const fell = levelFell.mm > 2 * levelFell.uMm;
  return within && fell
    ? { kind: 'agrees', lostKg, expectedMm }
    : { kind: 'level-disagrees', expectedMm };
}

export const subject: Subject = {
  title: 'Water lost from a tank',
  about:
    'Whether a rise of solids is evaporation: only where the level fell to match. Never from density alone.',
  symbols: {
    m: 'what was in the tank, kg',
    w0: 'solids before, %; w1 after',
    A: 'free surface, m2',
    u: 'standard uncertainty of w1 - w0, %',
    dh: 'fall of the level, mm',
  },
  source: 'Mass balance; engineering judgement for the comparison.',
  uncertainty: 'Agreement is judged at twice both uncertainties together.',
  functions: {
    waterLoss: {
      formula: 'lost = m (1 - w0/w1) kg; dh = lost/(0.998 A) mm',
      range:
        'Solids over 1 and below 80 %, m over 0 to 1e5 kg, A over 0 to 100 m2; refused outside. Not seen where w1 - w0 <= 2u.',
    },
  },
};
