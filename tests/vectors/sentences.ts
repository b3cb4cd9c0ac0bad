/**
 * What people read when a rule speaks: evidence as a line would give it, and the sentence it makes,
 * at 02:10 on 25 November 2026 in Dublin. To be read aloud; a sentence that does not read well is wrong.
 * Numbers of the evidence are made up; limits are the stations' own.
 */
import type { Evidence } from '#rules/kinds/kind.ts';
import { quality } from '#rules/signal/quality.ts';

const min = 60_000;
const h = 60 * min;
export const nowMs = Date.UTC(2026, 10, 25, 2, 10);

export interface Spoken {
  readonly station: string;
  readonly rule: string;
  readonly seen: Evidence;
  readonly says: string;
}

const low = (value: number, limit: number, forMs: number): Evidence => ({
  value,
  at: nowMs,
  limit,
  side: 'low',
  sinceMs: nowMs - forMs,
});
const high = (value: number, limit: number, forMs: number): Evidence => ({
  ...low(value, limit, forMs),
  side: 'high',
});

export const sentences: readonly Spoken[] = [
  {
    station: 'adhesive-store',
    rule: 'cold-adhesive',
    seen: low(6.8, 7, 10 * min),
    says: 'mounts-2/store-1/wall at 6.8 °C, below 7.0 °C, for 10 min.',
  },
  {
    station: 'adhesive-store',
    rule: 'cold-adhesive',
    seen: low(4.9, 5, 10 * min),
    says: 'mounts-2/store-1/wall at 4.9 °C, below 5.0 °C, for 10 min.',
  },
  {
    station: 'adhesive-store',
    rule: 'cold-adhesive-bottom',
    seen: low(6.9, 7, 10 * min),
    says: 'mounts-2/store-1/bottom at 6.9 °C, below 7.0 °C, for 10 min.',
  },
  {
    station: 'adhesive-store',
    rule: 'freeze-approaching',
    seen: {
      ...low(5.2, 2, 0),
      slopePerH: -1.63,
      earliestMs: nowMs + 95 * min,
      latestMs: nowMs + 2.6 * h,
    },
    says: 'mounts-2/store-1/wall at 5.2 °C, falling 1.6 K an hour; 2.0 °C in 95 min to 2.6 h if it goes on so.',
  },
  {
    station: 'adhesive-store',
    rule: 'freeze-suspected',
    seen: low(0.9, 1, 10 * min),
    says: 'mounts-2/store-1/wall at 0.9 °C, at or below 1.0 °C, for 10 min; what stands there may have frozen and is on hold.',
  },
  {
    station: 'adhesive-store',
    rule: 'freeze-suspected-bottom',
    seen: low(-0.04, 1, 10 * min),
    says: 'mounts-2/store-1/bottom at 0.0 °C, at or below 1.0 °C, for 10 min; what stands there may have frozen and is on hold.',
  },
  {
    station: 'adhesive-store',
    rule: 'warm-store',
    seen: high(30.4, 30, h),
    says: 'mounts-2/store-1/air at 30.4 °C, above 30.0 °C, for 60 min.',
  },
  {
    station: 'adhesive-store',
    rule: 'lost-wall',
    seen: { sinceMs: nowMs - 3 * min, durationMs: 3 * min },
    says: 'mounts-2/store-1/wall: no reading since 02:07.',
  },
  {
    station: 'adhesive-store',
    rule: 'lost-wall',
    seen: { sinceMs: nowMs - 3 * min, durationMs: 3 * min, cause: quality.outOfRange },
    says: 'mounts-2/store-1/wall: no usable reading since 02:07: outside what the sensor can read.',
  },
  {
    station: 'adhesive-store',
    rule: 'stuck-wall',
    seen: { value: 12.3, at: nowMs, sinceMs: nowMs - 24 * h, durationMs: 24 * h },
    says: 'mounts-2/store-1/wall has stood at 12.3 °C since 2026-11-24 02:10.',
  },
  {
    station: 'drum-mixer',
    rule: 'agitator-stopped',
    seen: low(0, 5, 10 * min),
    says: 'mounts-2/store-1: agitator at rest since 02:00, for 10 min.',
  },
  {
    station: 'drum-mixer',
    rule: 'agitator-rest',
    seen: low(0, 5, h),
    says: 'mounts-2/store-1: agitator still at rest, for 60 min of the 2 h it may rest.',
  },
  {
    station: 'drum-mixer',
    rule: 'agitator-fast',
    seen: high(34.2, 30, 60_000),
    says: 'mounts-2/store-1: agitator at 34.2 /min, above 30.0 /min, for 60 s.',
  },
  {
    station: 'drum-mixer',
    rule: 'agitator-slow',
    seen: low(17.5, 20, 5 * min),
    says: 'mounts-2/store-1: agitator at 17.5 /min, below 20.0 /min, for 5 min.',
  },
  {
    station: 'drum-mixer',
    rule: 'blade-uncovered',
    seen: low(295, 300, 5 * min),
    says: 'mounts-2/store-1: level at 295 mm, below 300 mm; the blade nears the surface.',
  },
  {
    station: 'compressed-air',
    rule: 'air-dew-point',
    seen: high(6.3, 5, 10 * min),
    says: 'mounts-2/store-1: air at pressure dew point 6.3 °C, above 5.0 °C, for 10 min.',
  },
  {
    station: 'compressed-air',
    rule: 'pipe-margin',
    seen: low(7.4, 10, 10 * min),
    says: 'mounts-2/store-1: margin of the coldest pipe over the dew point of the air 7.4 K, below 10.0 K, for 10 min; under zero water settles in it.',
  },
  {
    station: 'compressed-air',
    rule: 'header-low',
    seen: low(520, 550, 30_000),
    says: 'mounts-2/store-1: header at 520.0 kPa, below 550.0 kPa, for 30 s.',
  },
  {
    station: 'compressed-air',
    rule: 'separator-dp',
    seen: high(38.1, 35, 5 * min),
    says: 'mounts-2/store-1: pressure drop across the separator at 38.1 kPa, above 35.0 kPa, for 5 min.',
  },
];
