/** What is measured and written down at the mixer, and what follows from it. */

import { mixingSpeed, standing, standingBasis } from './drum-mixer-sizes.ts';
import { fromSite } from './sheet-number.ts';
import { judgement, type StationDerived, type StationMark, type StationSignal } from './station.ts';

const state = { unit: '1', resolution: 1, range: ['0 1', '1 1'], stuckAfter: null } as const;

export const drumMixerSignals: readonly StationSignal[] = [
  {
    name: 'agitator',
    unit: '/min',
    resolution: 0.1,
    range: ['0 /min', '500 /min'],
    meaning: 'speed of the agitator’s shaft',
    where:
      'pick-up on the shaft below the coupling, two targets or more; never at the motor. At 20 a minute time the pulses over 30 s, not one by one',
    stuckAfter: null,
  },
  {
    name: 'in-use',
    ...state,
    meaning:
      '1 while a drum is connected and in service, else 0: 0 during a change and while it is cranked by hand',
    where: 'contact at the drum’s connection, or a switch people set',
  },
  {
    name: 'feed',
    ...state,
    meaning: '1 while adhesive is drawn from the drum, else 0',
    where: 'contact of the feed pump or its valve, through a relay',
  },
  {
    name: 'level',
    unit: 'mm',
    resolution: 1,
    range: ['0 mm', '2000 mm'],
    meaning: 'level of the adhesive above the drum’s floor',
    where: 'from above, clear of the shaft; wetted parts stainless or plastic',
    stuckAfter: null,
  },
  {
    name: 'air',
    unit: 'Cel',
    resolution: 0.1,
    range: ['-40 Cel', '85 Cel'],
    meaning: 'air temperature of the mixing room',
    where: 'at the height of the drum, out of draught and sun',
    stuckAfter: '12 h',
  },
];

export const drumMixerMarks: readonly StationMark[] = [
  {
    name: 'connected',
    what: 'container',
    meaning:
      'This container was connected: in date, not on hold, its label scanned; its mixing time begins.',
    byWhom: 'the operator, or the scanner, at each change of container',
  },
  {
    name: 'hand-cranked',
    what: 'container',
    meaning:
      'This drum was cranked by hand until its bottom was loose, before its agitator started.',
    byWhom: 'the operator',
  },
];

export const drumMixerDerived: readonly StationDerived[] = [
  {
    name: 'tip-speed',
    kind: 'tip-speed',
    inputs: { speed: 'agitator' },
    numbers: [
      fromSite(
        'blade_diameter',
        'the diameter of the blade, from its drawing',
        'derived tip-speed: blade_diameter',
      ),
    ],
    meaning: 'speed of the blade’s tip, which is what shears; 0.4 to 0.6 m/s of a 0.4 m drum blade',
  },
  {
    name: 'mixed-for',
    kind: 'runtime',
    inputs: { signal: 'agitator' },
    startsOn: ['connected'],
    numbers: [{ ...mixingSpeed, setting: 'above' }],
    meaning: 'how long the agitator has mixed this container since it was connected',
  },
  {
    name: 'bulk',
    kind: 'drum-bulk-temperature',
    inputs: { air: 'air', stirred: 'agitator' },
    numbers: [
      {
        setting: 'transfer',
        value: '8 W/(m2.K)',
        basis: judgement('a drum in still air; known to a factor of two'),
      },
      {
        setting: 'stirred_above',
        value: standing,
        basis: standingBasis,
      },
    ],
    meaning: 'temperature of the adhesive while it is stirred, worked out from the air',
  },
];
