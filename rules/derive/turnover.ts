/** How often a pump has moved the whole content of a tank. */
import { z } from 'zod/mini';
import { quantitySetting } from '../kinds/settings.ts';
import { quality } from '../signal/quality.ts';
import type { KeepingKind } from './derived-kind.ts';
import {
  type SumSince,
  sumBegin,
  sumGap,
  sumSaid,
  sumShift,
  sumStart,
  sumTo,
  toldEveryMs,
} from './sum-since.ts';

export interface TurnoverSettings {
  /** Share of the tank moved by one stroke. */
  readonly share: number;
  readonly start: number;
  /** Something starts it anew. */
  readonly awaited: boolean;
}

const minutesPerH = 60;

export const turnover: KeepingKind<TurnoverSettings, SumSince> = {
  name: 'turnover',
  summary:
    'Contents of the tank that its pump has moved, strokes times their volume, since another signal last rose.',
  inputs: [
    { name: 'strokes', unit: '/min', meaning: 'strokes of the circulation pump' },
    {
      name: 'start',
      unit: '1',
      meaning: 'rises when it starts anew: 1 when the tank was filled, or a count of fillings',
      optional: true,
    },
  ],
  unit: '1',
  digits: 2,
  source: 'definition',
  written: z.strictObject({
    stroke_volume: quantitySetting('What one stroke moves, from the pump’s data sheet.'),
    tank_volume: quantitySetting('What tank and lines hold.'),
  }),
  compile: (read) => ({
    share: read.positive('stroke_volume', 'L') / read.positive('tank_volume', 'L'),
    start: read.place('start'),
    awaited: read.place('start') >= 0 || read.marked,
  }),
  version: 1,
  begin: ({ awaited }) => sumBegin(awaited),
  step(settings, memory, now, timer) {
    const strokesPerMin = now.inputs[0]!;
    sumTo(memory, now.at);
    memory.perH = 0;
    if (settings.start >= 0) sumStart(memory, now.inputs[settings.start]!);
    if (strokesPerMin < 0) return null;
    memory.perH = strokesPerMin * minutesPerH * settings.share;
    if (memory.perH > 0) timer.at = now.at + toldEveryMs;
    if (memory.partial) now.doubt = quality.unobserved;
    return memory.sum;
  },
  start: (_, memory, at, now) => sumSaid(memory, at, now),
  gap: (_, memory, fromMs, toMs) => sumGap(memory, fromMs, toMs),
  shift: sumShift,
  range: '0 strokes a minute and more',
};
