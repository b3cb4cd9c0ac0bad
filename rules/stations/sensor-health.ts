/**
 * Rules every station has: a sensor gone silent, a sensor that no longer moves.
 *
 * A silent sensor hurts nobody by itself: NOTICE. One that watches for what can hurt people leaves them
 * unwarned: it has a word for people, steps that keep them clear, and no reading by hand. Which word and
 * how soon to act follow what the sensor watches (rules/plan/health-rules.ts).
 */
import type { CardLabel } from '../plan/card.ts';
import { judgement, type TemplateNumber } from './station.ts';

export const lostLabel: CardLabel = {
  word: 'NOTICE',
  // The kind says whether the sensor is silent or sends nonsense.
  sentence: null,
  consequence:
    'Nothing watches what {$signal} measures, and an alarm that stands on it cannot clear.',
  steps: [
    'Go by a second sensor or the machine’s own display; read it by hand only where that is safe, and write it down.',
    'See from outside whether the sensor has power, and its cable or radio link is whole.',
    'Tell maintenance; go by the other reading until it speaks again.',
  ],
  doNot: ['take silence as all being well'],
  caution: 'Reach the sensor only where it is safe to; the place it watches may be the hazard.',
};

export const stuckLabel: CardLabel = {
  word: 'NOTICE',
  sentence: null,
  consequence:
    'A reading that stands still hides what happens; its limits are judged on an old value.',
  steps: [
    'Compare it with a second sensor or the machine’s own display; with a hand instrument only where that is safe.',
    'See whether the sensor, its transmitter or its gateway hangs.',
    'Tell maintenance; go by the other reading until it moves again.',
  ],
  doNot: ['trust the value because it looks right'],
  caution: 'Reach the sensor only where it is safe to; the place it watches may be the hazard.',
};

const guardCaution =
  'The place it watches may be the hazard: the sensor is reached only once maintenance and EHS say that it is safe.';

/** Of a sensor that watches for what can hurt people. */
export const lostGuardLabel: CardLabel = {
  word: 'WARNING',
  sentence: null,
  consequence:
    'Nothing tells what {$signal} measures, and people can be hurt by it; an alarm that stands on it cannot clear.',
  steps: [
    'Keep everyone clear of the place it watches: nobody can tell whether it is safe.',
    'Tell the shift lead, EHS and maintenance.',
    'Go by a second sensor or the machine’s own display, from a safe place, until it speaks again.',
  ],
  doNot: ['take silence as all being well', 'go near to read it by hand'],
  caution: guardCaution,
};

export const stuckGuardLabel: CardLabel = {
  word: 'WARNING',
  sentence: null,
  consequence:
    'A reading that stands still hides what happens, and people can be hurt by it; its limits are judged on an old value.',
  steps: [
    'Keep everyone clear of the place it watches: nobody can tell whether it is safe.',
    'Tell the shift lead, EHS and maintenance.',
    'Go by a second sensor or the machine’s own display, from a safe place, until it moves again.',
  ],
  doNot: ['trust the value because it looks right', 'go near to read it by hand'],
  caution: guardCaution,
};

/** A hand reading that nobody entered. */
export const overdueLabel: CardLabel = {
  word: 'NOTICE',
  sentence: '{$signal}: nobody has entered a reading since {$clock}.',
  consequence: 'What {$signal} tells is not known, and an alarm that stands on it cannot clear.',
  steps: [
    'Take the reading, where that is safe, and enter it.',
    'Where it cannot be taken, write down why and tell the shift lead.',
  ],
  doNot: ['enter a value that nobody read'],
  caution: 'Take the reading only where it is safe to; the place may be the hazard.',
};

/** A quarter of its span of grace. */
export const overdueNumbers = (dueEveryMs: number | null): readonly TemplateNumber[] =>
  dueEveryMs === null
    ? []
    : [
        {
          setting: 'after',
          value: `${Math.ceil((1.25 * dueEveryMs) / 60_000)} min`,
          basis: judgement('due_every and a quarter of it, so that a round may run late'),
        },
      ];

/** Silence is three times what was promised; `lost` knows that itself. */
export const lostNumbers: readonly TemplateNumber[] = [];

/** `after` is the longest rest such a reading has; null where the station does not say. */
export const stuckNumbers = (after: string | null): readonly TemplateNumber[] =>
  after === null
    ? []
    : [
        {
          setting: 'for',
          value: after,
          basis: judgement('such a reading moves sooner than this; prove it on the line'),
        },
      ];
