/**
 * What people read of dip tank, drying oven and residue: evidence as a line would give it, and the
 * sentence it makes, at 02:10 in Dublin. Numbers of the evidence are made up; limits are the
 * stations' own.
 */
import type { Evidence } from '#rules/kinds/kind.ts';
import { nowMs, type Spoken } from './sentences.ts';

const min = 60_000;

const away = (value: number, reference: number, side: 'low' | 'high', forMs: number): Evidence => ({
  value,
  reference,
  difference: Number(Math.abs(value - reference).toPrecision(12)),
  side,
  sinceMs: nowMs - forMs,
});
const over = (value: number, limit: number, forMs: number): Evidence => ({
  value,
  limit,
  side: 'high',
  sinceMs: nowMs - forMs,
});
const at = 'mounts-2/store-1';

const rows: readonly (readonly [station: string, rule: string, seen: Evidence, says: string])[] = [
  [
    'dip-tank',
    'bath-temperature',
    away(26.4, 23, 'high', 15 * min),
    `${at}: bath at 26.4 °C, 3.4 K from 23.0 °C, for 15 min.`,
  ],
  ['dip-tank', 'bath-solids', away(33.6, 35, 'low', 0), `${at}: solids at 33.6 %, 1.4 % from 35.0 %.`],
  [
    'dip-tank',
    'weir-fall',
    over(34, 30, 2 * min),
    `${at}: liquid falls 34 mm over the weir, above 30 mm, for 2 min.`,
  ],
  [
    'dip-tank',
    'circulation-lost',
    away(8.2, 20, 'low', 2 * min),
    `${at}: circulation at 8.2 L/min, far below 20.0 L/min, for 2 min.`,
  ],
  [
    'dip-tank',
    'filter-loaded',
    away(71.5, 20, 'high', 5 * min),
    `${at}: filter at 71.5 kPa, 51.5 kPa above the clean filter, for 5 min.`,
  ],
  [
    'dip-tank',
    'filter-torn',
    away(7.1, 20, 'low', 5 * min),
    `${at}: filter at 7.1 kPa with the loop running, far below the clean filter’s 20.0 kPa.`,
  ],
  [
    'dip-tank',
    'withdrawal',
    away(0.0201, 0.0167, 'high', 0),
    `${at}: parts drawn out at 0.0201 m/s, 0.0034 m/s from 0.0167 m/s.`,
  ],
  [
    'drying-oven',
    'under-dried',
    {
      value: 61.2,
      limit: 65,
      side: 'low',
      sinceMs: nowMs - 25 * min,
      reachedMs: 4 * min,
      requiredMs: 10 * min,
      leftMs: 5 * min,
    },
    `${at}, load of 01:45: metal 4 min at or above 65.0 °C, 10 min needed, and only 5 min left before exit; the drying can no longer be met.`,
  ],
  [
    'drying-oven',
    'over-baked',
    over(103.4, 100, 25 * min),
    `${at}, load of 01:45: metal reached 103.4 °C; limit 100.0 °C.`,
  ],
  [
    'drying-oven',
    'conveyor-stopped',
    { value: 0, limit: 1, side: 'low', sinceMs: nowMs - min },
    `${at}: the conveyor has stood since 02:09, for 60 s, with a load inside.`,
  ],
  [
    'drying-oven',
    'exhaust-lost',
    { value: 0, limit: 1, side: 'low', sinceMs: nowMs - min },
    `${at}: the exhaust has not been proven to flow since 02:09, for 60 s.`,
  ],
  [
    'drying-oven',
    'exhaust-weak',
    away(0.04, 0.1, 'low', min),
    `${at}: exhaust at 0.040 kPa, far below the normal 0.100 kPa, for 60 s.`,
  ],
  ...[1, 2, 3].flatMap((zone) => [
    [
      'drying-oven',
      `zone-${zone}-high`,
      away(101.7, 90, 'high', 2 * min),
      `${at}/zone-${zone}-air at 101.7 °C, 11.7 K above its set-point of 90.0 °C, for 2 min.`,
    ] as const,
  ]),
  [
    'residue',
    'early',
    over(93.1, 92, min),
    `${at}/surface at 93.1 °C, at or above 92.0 °C, for 60 s: past the early limit set for dried residue.`,
  ],
  [
    'residue',
    'approaching',
    {
      ...over(90.2, 112, min),
      slopePerH: 58,
      earliestMs: nowMs + 19 * min,
      latestMs: nowMs + 27 * min,
    },
    `${at}/surface at 90.2 °C, rising 0.97 K a minute; ignition limit set for dried residue, 112.0 °C, in 19 min to 27 min.`,
  ],
  [
    'residue',
    'act',
    over(103, 102, 30_000),
    `${at}/surface at 103.0 °C, at or above 102.0 °C, for 30 s: past the limit to act set for dried residue.`,
  ],
  [
    'residue',
    'act-thick',
    { ...over(8.4, 10, 30_000), side: 'low' },
    `${at}/ignition-margin: 8.4 K left to where residue as thick as gauged here may light itself, at or below 10.0 K, for 30 s.`,
  ],
  [
    'residue',
    'at-limit',
    over(112, 112, 5_000),
    `${at}/surface at 112.0 °C, past the ignition limit set for dried residue, 112.0 °C, since 02:09; a fire may have begun that this sensor cannot see.`,
  ],
  [
    'residue',
    'self-heating',
    { ...over(6.4, 5, min), input: 1, slopePerH: 84 },
    `${at}/surface: the surface is 6.4 K hotter than the air beside it and rising 1.4 K a minute with the heat steady or off.`,
  ],
  [
    'residue',
    'residue-thick',
    over(1.2, 1, 0),
    `${at}/thickness at 1.2 mm, at or above 1.0 mm: this place is due for cleaning.`,
  ],
  [
    'residue',
    'bin-warm',
    over(11.5, 10, 5 * min),
    `${at}: the waste bin is 11.5 K warmer than the air around it, for 5 min.`,
  ],
  [
    'residue',
    'stack-hot',
    over(53.2, 50, 5 * min),
    `${at}: stacked racks at 53.2 °C, above 50.0 °C, for 5 min.`,
  ],
  [
    'residue',
    'cleaning-late',
    { reachedMs: 6 * 24 * 60 * min, requiredMs: 7 * 24 * 60 * min },
    `${at}: 6 d since somebody wrote down that it was cleaned, of 7 d at most.`,
  ],
  [
    'residue',
    'bin-unemptied',
    { reachedMs: 450 * min, requiredMs: 480 * min },
    `${at}: nobody wrote down for 7.5 h that the waste bin was emptied.`,
  ],
];

export const heatSentences: readonly Spoken[] = rows.map(([station, rule, seen, says]) => ({
  station,
  rule,
  seen,
  says,
}));
