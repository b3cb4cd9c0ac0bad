/** What can be measured of compressed air, and where; what people write down of it. */
import type { StationDerived, StationMark, StationSignal } from './station.ts';

const tapping = 'a licensed person fits it, with the line vented and locked out';

export const compressedAirSignals: readonly StationSignal[] = [
  {
    name: 'pdp',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-100 Cel', '60 Cel'],
    meaning:
      'pressure dew point: below this temperature water settles out of the air at line pressure',
    where: `after the dryer, at line pressure, in a sample cell with a bleed on a short metal hose; oil spoils it; ${tapping}`,
    stuckAfter: '24 h',
  },
  {
    name: 'pipe',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-40 Cel', '85 Cel'],
    meaning: 'temperature of the coldest pipe',
    where:
      'strapped and insulated on the coldest drop: outer wall, roof, near a gate; on the pipe, never into it',
    stuckAfter: '24 h',
  },
  {
    name: 'header',
    unit: 'bar',
    resolution: 0.1,
    range: ['-1 bar', '16 bar'],
    meaning: 'gauge pressure in the header, the main air pipe',
    where: `on the header, after the dryer; ${tapping}`,
    stuckAfter: '24 h',
  },
  {
    name: 'separator-dp',
    unit: 'bar',
    resolution: 0.1,
    range: ['-0.1 bar', '2 bar'],
    meaning: 'pressure drop across the separator’s element',
    where: `across the element at the point of use; keep the taps clear; ${tapping}`,
    stuckAfter: null,
  },
  {
    name: 'blotter',
    unit: '1',
    resolution: 1,
    range: ['0 1', '1 1'],
    meaning: 'blotter test (ASTM D4285): 0 for a clean collector, 1 for any trace of oil or water',
    where:
      'at the point of use, after the last separator: a minute at least onto a white absorbent collector',
    byHand: true,
    stuckAfter: null,
  },
];

export const compressedAirDerived: readonly StationDerived[] = [
  {
    name: 'pipe-margin',
    kind: 'pipe-margin',
    inputs: { pipe: 'pipe', 'pressure-dew-point': 'pdp' },
    meaning: 'how much warmer the coldest pipe is than the air’s pressure dew point',
  },
  {
    name: 'atmospheric-dew-point',
    kind: 'atmospheric-dew-point',
    inputs: { 'pressure-dew-point': 'pdp', 'line-pressure': 'header' },
    meaning: 'dew point of the same air once it has left the gun; shown only, no rule judges it',
  },
  {
    name: 'water-class',
    kind: 'pressure-water-class',
    inputs: { 'pressure-dew-point': 'pdp' },
    meaning:
      'water class of ISO 8573-1 by the pressure dew point; nothing of oil or particles, which only a laboratory can tell',
  },
];

export const compressedAirMarks: readonly StationMark[] = [
  {
    name: 'blotter-tested',
    what: null,
    meaning: 'A blotter test of the air was made (ASTM D4285), and its result entered.',
    byWhom: 'the operator, once each shift',
  },
  {
    name: 'separators-drained',
    what: null,
    meaning: 'Separators and receiver were drained, and the automatic drains seen to work.',
    byWhom: 'the maintainer, on the round of each shift',
  },
];
