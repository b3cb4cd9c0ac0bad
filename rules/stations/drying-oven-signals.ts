/** What can be measured at an adhesive drying oven, and where. */
import { loadSignals, ovenSignals } from './oven-load.ts';
import type { StationSignal } from './station.ts';

export const ovenZones = [1, 2, 3] as const;

const airOf = (zone: number): readonly StationSignal[] => [
  {
    name: `zone-${zone}-air`,
    unit: 'Cel',
    resolution: 0.1,
    range: ['-20 Cel', '400 Cel'],
    meaning: `air of zone ${zone}`,
    where: `return stream of zone ${zone} at part height, apart from the control’s sensor; not on the wall`,
    stuckAfter: null,
  },
  {
    name: `zone-${zone}-check`,
    unit: 'Cel',
    resolution: 0.1,
    range: ['-20 Cel', '400 Cel'],
    meaning: `a second sensor in the same air of zone ${zone}`,
    where: `within 50 mm of zone-${zone}-air`,
    stuckAfter: null,
  },
];

export const dryingOvenSignals: readonly StationSignal[] = [
  ...loadSignals,
  ...ovenZones.flatMap(airOf),
  ...ovenSignals,
];
