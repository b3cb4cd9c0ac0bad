/**
 * The highest surface temperature that dust may lie on: the least of every figure there is.
 *
 * The dust-layer rule of explosion protection, T = min(T_5mm - 75 K, 2/3 T_cloud) with T in °C, is
 * written for dust up to 5 mm thick. For dust of unvulcanised rubber it gives 145 °C, well above
 * where film residue is known to light itself: the rule is one figure among others and never
 * replaces a lower one. Thicker layers are derated by curves that begin above 250 °C; rubber dust
 * lies below them and needs a laboratory. Results are cut off downward, as published tables are.
 *
 * Sources: IEC 60079-14; EN 1127-1.
 */
import type { Subject } from './subject.ts';

export const subject: Subject = {
  title: 'Dust on hot surfaces',
  about:
    'The highest temperature of a surface on which dust settles. It takes the least of all figures given and so can only lower; the 5 mm rule for rubber dust, 145 °C, never stands above the limit set for the residue. For layers over 5 mm of dust that lights below 250 °C it refuses: a laboratory must say.',
  symbols: {
    T_5mm: 'ignition temperature of a 5 mm layer of this dust, °C',
    T_cloud: 'ignition temperature of a cloud of it, °C',
  },
  source: 'IEC 60079-14, EN 1127-1, as tabled by makers of protected equipment',
  uncertainty:
    'whole degrees, cut off downward; the values of the dust itself scatter by tens of kelvin with its fineness',
  functions: {
    dustSurfaceMaxC: {
      formula: 'min(T_5mm - 75 K, 2/3 T_cloud), cut off to whole degrees',
      range:
        'T_5mm and T_cloud 75 to 1000 °C, at least one of them; layer over 0 to 5 mm; refused outside',
    },
    lowestFigureC: {
      formula: 'the least of all figures that are known',
      range: 'at least one finite figure; nothing without',
    },
  },
};

const ruleThicknessMmMax = 5;
const layerMarginK = 75;

export interface Dust {
  /** Null where nobody measured it. */
  readonly layer5MmC: number | null;
  readonly cloudC: number | null;
}

export interface DustRefusal {
  /** `laboratory`: thicker than the rule is made for. */
  readonly refused: 'no-figure' | 'out-of-range' | 'laboratory';
}

export interface DustSurfaceMax {
  /** Whole degrees. */
  readonly maxC: number;
  readonly decidedBy: 'layer' | 'cloud';
}

const usable = (figureC: number | null): boolean =>
  figureC === null || (figureC >= layerMarginK && figureC <= 1_000);

/** By the rule above alone; take it into `lowestFigureC` with the other figures. */
export function dustSurfaceMaxC(dust: Dust, thicknessMm: number): DustSurfaceMax | DustRefusal {
  const { layer5MmC, cloudC } = dust;
  if (!usable(layer5MmC) || !usable(cloudC) || !(thicknessMm > 0)) {
    return { refused: 'out-of-range' };
  }
  if (layer5MmC === null && cloudC === null) return { refused: 'no-figure' };
  if (thicknessMm > ruleThicknessMmMax) return { refused: 'laboratory' };
  const byLayerC = layer5MmC === null ? Number.POSITIVE_INFINITY : layer5MmC - layerMarginK;
  const byCloudC = cloudC === null ? Number.POSITIVE_INFINITY : (cloudC * 2) / 3;
  const decidedBy = byLayerC <= byCloudC ? 'layer' : 'cloud';
  return { maxC: Math.floor(Math.min(byLayerC, byCloudC)), decidedBy };
}

/** The least of the figures; null for an unknown one, null in all where none is finite. */
export function lowestFigureC(figuresC: readonly (number | null)[]): number | null {
  const known = figuresC.filter((figure) => figure !== null && Number.isFinite(figure));
  return known.length === 0 ? null : Math.min(...(known as number[]));
}
