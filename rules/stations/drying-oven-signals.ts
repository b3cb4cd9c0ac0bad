/** What can be measured at an adhesive drying oven, and where. */
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
  {
    name: 'metal',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-20 Cel', '400 Cel'],
    meaning: 'temperature of the metal of the heaviest part',
    where:
      'welded or drilled in the heaviest section of a part or a dummy that travels with the load; with infrared heat a pyrometer set for the coated part',
    stuckAfter: null,
  },
  {
    name: 'loaded',
    unit: '1',
    resolution: 1,
    range: ['0 1', '1 1'],
    meaning: '1 while a load is in the oven, else 0; it opens and closes an oven run',
    where:
      'light barrier or rack switch at the mouth, or the control’s own contact, through a relay',
    stuckAfter: null,
  },
  ...ovenZones.flatMap(airOf),
  {
    name: 'conveyor',
    unit: '1',
    resolution: 1,
    range: ['0 1', '1 1'],
    meaning: '1 while the conveyor moves, else 0',
    where: 'motion switch on the chain or shaft, not the motor’s contactor',
    stuckAfter: null,
  },
  {
    name: 'heat',
    unit: '1',
    resolution: 1,
    range: ['0 1', '1 1'],
    meaning: '1 while the oven heats, else 0',
    where: 'dry contact of the control through a relay; never in the burner’s safety chain',
    stuckAfter: null,
  },
  {
    name: 'exhaust-proof',
    unit: '1',
    resolution: 1,
    range: ['0 1', '1 1'],
    meaning: '1 while the exhaust is proven to flow, else 0',
    where: 'a second contact of the airflow switch through a relay; never in the safety chain',
    stuckAfter: null,
  },
  {
    name: 'exhaust-dp',
    unit: 'Pa',
    resolution: 0.001,
    range: ['-2000 Pa', '2000 Pa'],
    meaning: 'pressure drop that the exhaust’s flow makes',
    where: 'across the exhaust fan or a fixed orifice; keep the taps clear',
    stuckAfter: null,
  },
];
