/** The film that a gauge reads, with what it reads on the same bare surface taken off. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { filmFromGaugeUm, type Readings } from '../process/film-gauge.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';

interface FilmOverBaseSettings {
  readonly uUm: number;
}

export interface FilmOverBase {
  /** What was last read; null before the first time. */
  gaugeMm: number | null;
  baseMm: number | null;
  /** The base was read anew, and nothing coated since. */
  stale: boolean;
}

const umPerMm = 1_000;
/** Of a mean, on a smooth surface; engineering judgement, to be proved with foils. */
const usualUUm = 1;

const meanOf = (mm: number, uUm: number): Readings => ({ meanUm: mm * umPerMm, uUm, count: 1 });

export const filmOverBase: KeepingKind<FilmOverBaseSettings, FilmOverBase> = {
  name: 'film-over-base',
  summary:
    'Dry film from a gauge, the reading of the same bare surface taken off; uncertain where the two may err by over a third of it. A base read anew waits for the next reading of a coat.',
  inputs: [
    { name: 'gauge', unit: 'mm', meaning: 'mean of the gauge’s readings on the coat' },
    {
      name: 'base',
      unit: 'mm',
      meaning:
        'mean of its readings on the same surface before coating; 0 where it was zeroed there',
    },
  ],
  unit: 'mm',
  saidIn: 'um',
  digits: 4,
  source: 'zero on the same uncoated surface: ISO 2178, ASTM D7091',
  range: 'readings of 0 to 10 mm, that of the coat not below that of the base',
  written: z.strictObject({
    gauge_u: z.optional(
      quantitySetting(
        'Standard uncertainty of such a mean; 1 µm unless given, which is judgement.',
      ),
    ),
  }),
  compile: (read) => ({
    uUm: read.has('gauge_u') ? umPerMm * read.positive('gauge_u', 'mm') : usualUUm,
  }),
  version: 1,
  begin: () => ({ gaugeMm: null, baseMm: null, stale: false }),
  step({ uUm }, memory, now) {
    const [gaugeMm, baseMm] = [now.inputs[0]!, now.inputs[1]!];
    // The same reading over another base is the old coat, which that base does not belong to.
    const known = memory.gaugeMm !== null;
    memory.stale = known && gaugeMm === memory.gaugeMm && baseMm !== memory.baseMm;
    memory.gaugeMm = gaugeMm;
    memory.baseMm = baseMm;
    if (memory.stale) {
      now.doubt = quality.tooEarly;
      return null;
    }
    if (gaugeMm < 0 || gaugeMm > 10 || baseMm < 0 || baseMm > gaugeMm) return null;
    const film = filmFromGaugeUm(
      meanOf(gaugeMm, uUm),
      { kind: 'read', readings: meanOf(baseMm, uUm) },
      0,
    );
    if (film === null) return null;
    if (film.uncertain) now.doubt = quality.estimated;
    return film.dryUm / umPerMm;
  },
  gap() {},
  shift() {},
};
