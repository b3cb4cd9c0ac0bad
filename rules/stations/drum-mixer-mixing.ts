/** A container that is drawn from before it was mixed long enough. */
import { beyondADrum, mixingFacts, mixingSpeed, mixTime } from './drum-mixer-sizes.ts';
import { shaftCaution } from './drum-mixer-speed.ts';
import { judgement, plainClass, type RuleTemplate } from './station.ts';

export const drawnUnmixed: RuleTemplate = {
  name: 'drawn-unmixed',
  kind: 'sequence',
  signals: ['feed', 'agitator'],
  marks: ['connected'],
  moot: beyondADrum,
  numbers: [
    { setting: 'then_low', value: '1 1', basis: judgement('adhesive is drawn') },
    mixTime,
    mixingSpeed,
  ],
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '1 min',
  hazard: 'unmixed',
  hold: 'container',
  label: {
    word: 'NOTICE',
    sentence:
      '{$station}: container {$item}, connected at {$clock}, is drawn from after {$reached} of mixing; it needs {$required}.',
    consequence: 'Settled adhesive comes out too thin, then too thick; film and bond vary.',
    steps: [
      'Stop the feed.',
      'Mix it out from the beginning: {$mixing} for {$stir}, and take a hydrometer reading before use.',
      'Put parts coated since it was connected on hold; the process engineer decides.',
    ],
    doNot: ['mix it by pumping it round', 'shake, roll or tumble the drum'],
    caution: shaftCaution,
  },
  facts: mixingFacts,
};
