/**
 * Conduction in a cylinder that was all of one temperature and is cooled from outside: how far its
 * wall and its mean have come, as a share of the way still left (1 at the start, 0 at the air's).
 *
 * Separation of variables: sums over the roots of z J1(z) = Bi J0(z) for the round side and of
 * z tan z = Bi for the flat ends, multiplied where both cool. Forty terms: good to five digits from
 * Fo = 0.001 on; an earlier time counts as that one, which is the colder answer.
 *
 * Sources: H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 7.7 and 3.11;
 * M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 9.1.18 and 9.1.21
 * (integrals of J0 and J1), 9.5.12 (where their zeros lie).
 */
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Cylinder cooled from outside',
  about:
    'How far wall and mean of an unstirred drum have cooled, by conduction alone. The ground under the freezing of drums; no question of the trade by itself.',
  symbols: {
    theta: 'share of the way to the air still left, 1 to 0',
    Bi: 'U r/k for the side with r the radius, U L/k for the ends with L half the height',
    Fo: 'k t/(rho c r^2), for the ends with L',
    z_n: 'roots of z J1(z) = Bi J0(z), for the ends of z tan z = Bi',
  },
  source: 'Carslaw and Jaeger, Conduction of Heat in Solids',
  uncertainty: 'five digits from Fo = 0.001 on; real drums are also moved by convection',
  functions: {
    sideCooling: {
      formula:
        'wall: sum 2 Bi/(z^2 + Bi^2) exp(-z^2 Fo); mean: sum 4 Bi^2/(z^2 (z^2 + Bi^2)) exp(-z^2 Fo)',
      range: 'Bi 0.01 to 100; nothing outside',
    },
    endCooling: {
      formula:
        'wall: sum 2 Bi/(z^2 + Bi^2 + Bi) exp(-z^2 Fo); mean: sum 2 Bi^2/(z^2 (z^2 + Bi^2 + Bi)) exp(-z^2 Fo)',
      range: 'Bi 0.01 to 100; nothing outside',
    },
  },
};

const termsCount = 40;
export const fourierLeast = 0.001;

/** Shares at a time given as Fo; 0 or more. */
export interface Cooling {
  wall(fourier: number): number;
  mean(fourier: number): number;
  /** Its terms, the slowest first, for air that changes: each fades by itself. */
  readonly terms: readonly CoolingTerm[];
}

export interface CoolingTerm {
  /** It fades by exp(-perFourier Fo). */
  readonly perFourier: number;
  /** Its part in the wall and in the mean. */
  readonly wall: number;
  readonly mean: number;
}

/** The round side of a cylinder too tall for its ends to matter. Bi by the radius; null outside 0.01 to 100. */
export function sideCooling(biot: number): Cooling | null {
  if (!(biot >= 0.01 && biot <= 100)) return null;
  const roots = eachTerm((n) => {
    // Between a zero of J1 and the next of J0.
    const from = n === 1 ? 0 : (n - 0.75) * Math.PI - 0.1;
    const to = (n - 0.25) * Math.PI + 0.06;
    return root((z) => z * bessel(1, z) - biot * bessel(0, z), from, to);
  });
  return sums(
    roots,
    (z) => (2 * biot) / (z * z + biot * biot),
    (z) => (4 * biot * biot) / (z * z * (z * z + biot * biot)),
  );
}

/** Two flat ends. Bi by half the height; null outside 0.01 to 100. */
export function endCooling(biot: number): Cooling | null {
  if (!(biot >= 0.01 && biot <= 100)) return null;
  const roots = eachTerm((n) =>
    root((z) => z * Math.sin(z) - biot * Math.cos(z), (n - 1) * Math.PI, (n - 0.5) * Math.PI),
  );
  return sums(
    roots,
    (z) => (2 * biot) / (z * z + biot * biot + biot),
    (z) => (2 * biot * biot) / (z * z * (z * z + biot * biot + biot)),
  );
}

const eachTerm = (make: (n: number) => number): number[] =>
  Array.from({ length: termsCount }, (_, i) => make(i + 1));

function sums(
  roots: readonly number[],
  wallTerm: (z: number) => number,
  meanTerm: (z: number) => number,
): Cooling {
  const sum = (term: (z: number) => number, fourier: number): number => {
    const since = Math.max(fourier, fourierLeast);
    const all = roots.reduce((total, z) => total + term(z) * Math.exp(-z * z * since), 0);
    return Math.min(1, Math.max(0, all));
  };
  return {
    wall: (fourier) => sum(wallTerm, fourier),
    mean: (fourier) => sum(meanTerm, fourier),
    terms: roots.map((z) => ({ perFourier: z * z, wall: wallTerm(z), mean: meanTerm(z) })),
  };
}

/** Where a function changes its sign between two places. */
function root(at: (z: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  const sign = Math.sign(at(low)) || -1;
  while (high - low > 1e-11 * (1 + high)) {
    const middle = (low + high) / 2;
    if (Math.sign(at(middle)) === sign) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** J0 or J1 by the mean of its integral over whole periods, which is exact to the last digits. */
function bessel(order: 0 | 1, z: number): number {
  const points = 30 + Math.ceil(z);
  let sum = 0;
  for (let j = 0; j < points; j += 1) {
    const angle = ((j + 0.5) * Math.PI) / points;
    sum += Math.cos(order * angle - z * Math.sin(angle));
  }
  return sum / points;
}
