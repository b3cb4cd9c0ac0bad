/** How much room the solids have left, allowing for what the density reading cannot tell. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import type { SettledKind } from './derived-kind.ts';
import { coverage } from './solids.ts';
import {
  type AnchorSettings,
  anchorInputs,
  anchorRange,
  anchorSource,
  anchorWritten,
  compileAnchor,
  readAgainst,
} from './solids-anchor.ts';

interface MarginSettings extends AnchorSettings {
  readonly targetPct: number;
  readonly allowedPct: number;
}

export const solidsMargin: SettledKind<MarginSettings> = {
  name: 'solids-margin',
  summary:
    'What the solids may still move before they are out: the larger of what is allowed and twice the standard uncertainty, less the distance from the target; below 0 they are out, and it is no chance of the reading.',
  inputs: anchorInputs,
  unit: '%',
  digits: 1,
  source: anchorSource,
  range: anchorRange,
  written: z.strictObject({
    ...anchorWritten,
    target: quantitySetting('Solids by mass the tank is run at.'),
    allowed: quantitySetting('How far from the target they may be, either way.'),
  }),
  compile: (read) => ({
    ...compileAnchor(read),
    targetPct: read.positive('target', '%'),
    allowedPct: read.positive('allowed', '%'),
  }),
  settled(settings, { inputs }) {
    const answer = readAgainst(settings, inputs);
    if (answer.kind === 'refused') return null;
    const room = Math.max(settings.allowedPct, coverage * answer.uPct);
    return room - Math.abs(answer.solidsPct - settings.targetPct);
  },
};
