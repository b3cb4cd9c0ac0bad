/** A station's basket test: what its baskets say of residue as thick as lies here, or what is wrong with it. */
import {
  type Basket,
  type BasketFit,
  type BasketRefusal,
  basketIgnitionC,
  fitBaskets,
} from '../process/basket-test.ts';
import { provenThicknessMm } from '../process/residue-ignition.ts';
import { parseQuantity } from '../quantity/quantity.ts';
import { toCanonical } from '../quantity/unit.ts';
import type { StationWritten } from '../site/schema.ts';
import type { BasketReport } from '../stations/station.ts';
import type { Path, Report } from './draft.ts';

type Written = NonNullable<StationWritten['basket_test']>;

/** null where the site has none, or none that can be read: `reportBaskets` says why. */
export function basketReport(written: Written | undefined): BasketReport | null {
  if (written === undefined) return null;
  const fit = fitOf(written);
  const { report, signed_by: signedBy } = written;
  if (fit === null) return { report, signedBy, lowC: () => null, provenC: () => null };
  return {
    report,
    signedBy,
    lowC: (thicknessMm) => atLowest(fit, Math.max(thicknessMm, provenThicknessMm) / 1_000),
    provenC: (thicknessMm) =>
      atLowest(fit, Math.max(thicknessMm / 1_000, provenThicknessMm / 1_000, fit.smallestM)),
  };
}

/**
 * The low side of the interval. A layer lies on a surface that may let no heat out: it is taken for
 * half of a slab twice as thick.
 */
const atLowest = (fit: BasketFit, thicknessM: number): number | null =>
  basketIgnitionC(fit, 'slab', thicknessM)?.lowC ?? null;

function fitOf({ baskets = [] }: Written): BasketFit | null {
  const read = baskets.map(basketOf);
  if (read.length === 0 || read.some((each) => each === null)) return null;
  const fit = fitBaskets(read.filter((each) => each !== null));
  return 'refused' in fit ? null : fit;
}

function basketOf({ side, ignition }: NonNullable<Written['baskets']>[number]): Basket | null {
  const [mm, ignitionC] = [canonicalOf(side, 'mm'), canonicalOf(ignition, 'Cel')];
  return mm === null || ignitionC === null
    ? null
    : { shape: 'cube', halfSizeM: mm / 2_000, ignitionC };
}

function canonicalOf(written: string, canonical: string): number | null {
  const read = parseQuantity(written);
  if (!read.ok || read.value.unit.canonical !== canonical) return null;
  return toCanonical(read.value.value, read.value.unit);
}

const refusals: Readonly<
  Record<BasketRefusal['refused'], { readonly problem: string; readonly fix: string }>
> = {
  'too-few-sizes': {
    problem: 'the basket test has fewer than three sizes',
    fix: 'Give three cubes of different sides or more, each with its ignition (EN 15188).',
  },
  'sizes-too-close': {
    problem: 'sizes of the basket test lie too close: each volume is at least twice the one before',
    fix: 'Leave out the size between; look again at sides that are half of what they should be.',
  },
  'out-of-range': {
    problem: 'a basket lies outside what the test is made for',
    fix: 'Sides go from 2 mm to 4 m, ignition from 20 to 400 Cel; look again at the units.',
  },
  'no-line': {
    problem: 'the baskets do not fall on a line: bigger ones light at lower temperatures',
    fix: 'Look again at which ignition belongs to which side; a scatter so wide proves nothing.',
  },
};

/** Says what cannot be read, and why baskets are no test. */
export function reportBaskets(
  { kind, basket_test: test }: StationWritten,
  path: Path,
  report: Report,
): void {
  if (test === undefined) return;
  const at = [...path, 'basket_test'];
  if (kind !== 'residue')
    report({
      path: at,
      problem: `a basket test says nothing at a station of the kind ${kind}`,
      fix: 'Give it to the residue station whose residue was tested.',
      atKey: true,
    });
  const { baskets } = test;
  if (baskets === undefined) return;
  let sound = true;
  for (const [i, basket] of baskets.entries())
    for (const [key, canonical, example] of [
      ['side', 'mm', '50 mm'],
      ['ignition', 'Cel', '149 Cel'],
    ] as const) {
      if (canonicalOf(basket[key], canonical) !== null) continue;
      sound = false;
      report({
        path: [...at, 'baskets', i, key],
        problem: `${basket[key]} is no ${key === 'side' ? 'side of a cube' : 'temperature of ignition'}`,
        fix: `Write it as "${example}".`,
      });
    }
  if (!sound) return;
  const fit = fitBaskets(baskets.map(basketOf).filter((each) => each !== null));
  if ('refused' in fit) report({ path: [...at, 'baskets'], ...refusals[fit.refused], atKey: true });
}
