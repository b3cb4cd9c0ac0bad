/**
 * The drum mixer: the large agitator built into a drum, 20 to 30 turns a minute at the shaft.
 *
 * These speeds hold for that agitator alone; where the containers are smaller they say nothing, and
 * the mixer needs its own. Too slow settles the solids, too fast shears and foams, and a blade that
 * breaks the surface foams at any speed. A new container is mixed for as long as its size asks
 * before it is drawn from.
 */
import { drawnUnmixed } from './drum-mixer-mixing.ts';
import { drumMixerDerived, drumMixerMarks, drumMixerSignals } from './drum-mixer-signals.ts';
import { drumMixerSpeed } from './drum-mixer-speed.ts';
import { heldContainer, heldUsed } from './held-use.ts';
import type { StationKind } from './station.ts';

export const drumMixer: StationKind = {
  name: 'drum-mixer',
  summary:
    'A drum of adhesive under its built-in agitator, feeding the line; or a smaller container under its mixer.',
  signals: drumMixerSignals,
  derived: drumMixerDerived,
  marks: drumMixerMarks,
  hazards: [
    {
      id: 'settling',
      words: 'Solids settle; film is uneven, first too thin, then too thick.',
      people: false,
      byHand: null,
    },
    { id: 'shear', words: 'Shear makes foam and lumps that stay.', people: false, byHand: null },
    {
      id: 'foam-at-blade',
      words: 'The blade breaks the surface and foams the rest of the drum.',
      people: false,
      byHand: null,
    },
    {
      id: 'unmixed',
      words: 'Adhesive is drawn before it was mixed long enough.',
      people: false,
      byHand: null,
    },
    heldUsed,
  ],
  rules: [...drumMixerSpeed, drawnUnmixed, heldContainer('connected')],
};
