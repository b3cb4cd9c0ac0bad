/**
 * `deviation`: a value further from its target than allowed, for longer than its delay.
 *
 * What is allowed below and above is a difference ("3 K") or a share of the target ("50 %"); of a
 * signal that is itself in per cent, "1 %" is one point. Judged like a band.
 */
import { z } from 'zod/mini';
import { withoutDust } from '../quantity/quantity.ts';
import { type BandMemory, type BandSettings, band, bandOf } from './band.ts';
import type { RuleKind } from './kind.ts';
import {
  deadbandSetting,
  delaySettings,
  quantitySetting,
  type SettingsReader,
} from './settings.ts';

export interface DeviationSettings extends BandSettings {
  readonly target: number;
}

const sides = ['far_below', 'below', 'above', 'far_above'] as const;
type Side = (typeof sides)[number];

function compile(read: SettingsReader): DeviationSettings {
  const target = read.limit('target') ?? 0;
  const away = (key: Side | 'deadband'): number | null =>
    read.has(key) ? (shareOf(read, key, target) ?? read.difference(key, 0)) : null;
  const at = (key: Side, sign: number): number | null => {
    const distance = away(key);
    if (distance === 0)
      read.report({
        path: [key],
        problem: 'a value is never quite at its target',
        fix: 'give how far it may be from it',
      });
    return distance === null ? null : target + sign * distance;
  };
  const limits = {
    lowLow: at('far_below', -1),
    low: at('below', -1),
    high: at('above', 1),
    highHigh: at('far_above', 1),
  };
  if (sides.every((side) => !read.has(side)))
    read.report({
      path: [],
      problem: 'a target without an allowed deviation judges nothing',
      fix: 'give at least one of below, above, far_below, far_above',
    });
  return { ...bandOf(read, limits, away('deadband') ?? 0), target };
}

/** A share of the target as a difference; null where it is written in the signal's own quantity. */
function shareOf(read: SettingsReader, key: string, target: number): number | null {
  if (read.unit === '%') return null;
  const share = read.share(key);
  return share === null ? null : Math.abs(target) * share;
}

export const deviation: RuleKind<DeviationSettings, BandMemory> = {
  ...band,
  name: 'deviation',
  version: 1,
  summary: 'A value further from its target than allowed, for longer than its delay.',
  written: z.strictObject({
    target: quantitySetting('Where the value should be.'),
    below: z.optional(
      quantitySetting('How far below the target it may be; also as a share of it, 10 %.'),
    ),
    above: z.optional(
      quantitySetting('How far above the target it may be; also as a share of it, 10 %.'),
    ),
    far_below: z.optional(
      quantitySetting(
        'The second step: this far below, the alarm is raised again with its second priority.',
      ),
    ),
    far_above: z.optional(
      quantitySetting(
        'The second step: this far above, the alarm is raised again with its second priority.',
      ),
    ),
    deadband: deadbandSetting,
    ...delaySettings,
  }),
  compile,
  evidence: (settings, memory) => {
    const evidence = band.evidence(settings, memory);
    if (evidence.value === undefined) return { ...evidence, reference: settings.target };
    const difference = withoutDust(Math.abs(evidence.value - settings.target));
    return { ...evidence, reference: settings.target, difference };
  },
  sentence: (evidence) =>
    evidence.side === 'low'
      ? '{$signal} at {$value}, {$difference} below its target of {$reference}.'
      : '{$signal} at {$value}, {$difference} above its target of {$reference}.',
};
