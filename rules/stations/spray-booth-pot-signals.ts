/** What can be measured at the pressure pot that feeds the guns. */

import { fromSite } from './sheet-number.ts';
import { askFirst } from './spray-booth-words.ts';
import type { StationDerived, StationSignal } from './station.ts';

const state = { unit: '1', resolution: 1, range: ['0 1', '1 1'], stuckAfter: null } as const;
const vented =
  'Fitted only with the pot vented and released for work; never in the relief valve’s line';

export const potSignals: readonly StationSignal[] = [
  {
    name: 'pot-pressure',
    unit: 'bar',
    resolution: 0.1,
    range: ['-0.1 bar', '16 bar'],
    meaning: 'gauge pressure in the pressure pot',
    where: `on a free port of the pot’s lid, in the air above the material. ${vented}. ${askFirst}`,
    stuckAfter: null,
  },
  {
    name: 'pot-on',
    ...state,
    meaning: '1 while the pot’s air is on and it feeds the guns, else 0',
    where: `pressure switch behind the pot’s air valve, or a switch people set. ${askFirst}`,
  },
  {
    name: 'pot-filled',
    ...state,
    meaning: '1 while there is material in the pot, else 0',
    where: `level switch, or a switch people set at filling and at cleaning. ${askFirst}`,
  },
  {
    name: 'pot-level',
    unit: 'mm',
    resolution: 1,
    range: ['0 mm', '2000 mm'],
    meaning: 'level of the material above the pot’s floor',
    where: `from the lid, or by weight under the pot; wetted parts stainless or plastic. ${vented}. ${askFirst}`,
    stuckAfter: null,
  },
  {
    name: 'pot-paddle',
    unit: '/min',
    resolution: 0.1,
    range: ['0 /min', '500 /min'],
    meaning: 'speed of the shaft of the pot’s own paddle',
    where: `pick-up on the shaft above the lid, two targets or more, not at the motor; in the mix room likewise. ${askFirst}`,
    stuckAfter: null,
  },
];

export const potDerived: readonly StationDerived[] = [
  {
    name: 'paddle-tip',
    kind: 'tip-speed',
    inputs: { speed: 'pot-paddle' },
    numbers: [
      fromSite(
        'blade_diameter',
        'the diameter of the paddle, from its drawing',
        'derived paddle-tip: blade_diameter',
      ),
    ],
    meaning: 'speed of the paddle’s tip; turns of a drum agitator say nothing for it',
  },
];
