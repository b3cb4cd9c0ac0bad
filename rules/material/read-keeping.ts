/** The material sheet's times of keeping and mixing, in milliseconds, and how warm coated parts may be; null is unknown. */
import type { SheetWritten } from './sheet.ts';

export interface SheetKeeping {
  readonly openedLifeMs: number | null;
  readonly letDownLifeMs: number | null;
  readonly layoverMs: number | null;
  readonly coatedHighC: number | null;
  readonly mixHalfPintMs: number | null;
  readonly mixGallonMs: number | null;
  readonly mixFiveGallonMs: number | null;
  readonly mixDrumMs: number | null;
}

export const readKeeping = (
  quantity: (key: keyof SheetWritten, canonical: string) => number | null,
  duration: (key: keyof SheetWritten) => number | null,
): SheetKeeping => ({
  openedLifeMs: duration('opened_life'),
  letDownLifeMs: duration('let_down_life'),
  layoverMs: duration('layover'),
  coatedHighC: quantity('coated_high', 'Cel'),
  mixHalfPintMs: duration('mix_half_pint'),
  mixGallonMs: duration('mix_gallon'),
  mixFiveGallonMs: duration('mix_five_gallon'),
  mixDrumMs: duration('mix_drum'),
});
