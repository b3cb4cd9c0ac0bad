/** Solids of the tank from its density and temperature, anchored to an oven test of the lot. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { quality } from '../signal/quality.ts';
import type { SettledKind } from './derived-kind.ts';
import {
  type AnchorSettings,
  anchorInputs,
  anchorRange,
  anchorSource,
  anchorWritten,
  compileAnchor,
  readAgainst,
} from './solids-anchor.ts';

interface SolidsSettings extends AnchorSettings {
  /** Twice the standard uncertainty may be so much. */
  readonly enoughPct: number;
}

/** What a tank's solids may be off by (engineering judgement). */
const enoughPct = 1;
/** Two standard uncertainties cover 95 %. */
export const coverage = 2;

export const solids: SettledKind<SolidsSettings> = {
  name: 'solids',
  summary:
    'Solids by mass from density and temperature, anchored to an oven test of the lot; uncertain where twice its standard uncertainty is above 1 %, or what is set.',
  inputs: anchorInputs,
  unit: '%',
  digits: 1,
  source: anchorSource,
  range: anchorRange,
  written: z.strictObject({
    ...anchorWritten,
    enough: z.optional(
      quantitySetting('Uncertain where twice its standard uncertainty is more; 1 % unless given.'),
    ),
  }),
  compile: (read) => ({
    ...compileAnchor(read),
    enoughPct: read.has('enough') ? read.positive('enough', '%') : enoughPct,
  }),
  settled(settings, now) {
    const answer = readAgainst(settings, now.inputs);
    if (answer.kind === 'refused') return null;
    if (coverage * answer.uPct > settings.enoughPct) now.doubt = quality.estimated;
    return answer.solidsPct;
  },
};
