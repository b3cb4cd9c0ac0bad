/**
 * Something on hold is used: a container connected, a rack coated or moulded, a lot loaded. Not a rack in
 * an oven: held racks are dried again there, where quality has them done.
 *
 * The trade asks at each change of container whether it is in date, not held and mixed long enough; what
 * the first and the last of these have in rules, the second has here. Priority medium and ten minutes
 * to respond are our judgement, as for what is drawn unmixed; no published source.
 */
import type { HoldWhat } from '../hold/hold.ts';
import { type Hazard, plainClass, type RuleTemplate } from './station.ts';

export const heldUsed: Hazard = {
  id: 'held-used',
  words: 'Something that is on hold is used as if it were released.',
  people: false,
  byHand: null,
};

interface HeldUse {
  readonly name: string;
  readonly what: HoldWhat;
  /** The one that says that it is used, and what ends its use. */
  readonly marks: readonly [string, ...string[]];
  /** As the kind's settings. */
  readonly fixed: Readonly<Record<string, boolean>>;
  /** The first step: how it is stopped from being used. */
  readonly first: string;
  /** The second: what becomes of what it touched. */
  readonly second: string;
}

export const heldUse = ({ name, what, marks, fixed, first, second }: HeldUse): RuleTemplate => ({
  name,
  kind: 'held',
  signals: [],
  marks,
  numbers: [],
  fixed,
  gate: null,
  class: plainClass,
  priority: ['medium', 'medium'],
  respond: '10 min',
  hazard: heldUsed.id,
  hold: null,
  label: {
    word: 'NOTICE',
    sentence: `{$station}: ${what} {$item} is on hold, and in use since {$clock}. On hold by {$setter}: {$reason}.`,
    consequence: `A ${what} is put on hold because it is doubted; all that is made with it is doubted too.`,
    steps: [first, second, 'Ask quality what becomes of it: only they lift a hold, and say why.'],
    doNot: [
      'lift the hold to be able to go on',
      'release, re-coat or re-bake held parts before the engineer decides',
    ],
    caution: 'What it is held for cannot always be seen on it.',
  },
});

/** A container that feeds the line. */
export const heldContainer = (mark: string): RuleTemplate =>
  heldUse({
    name: 'container-held',
    what: 'container',
    marks: [mark],
    fixed: { last_only: true, while_used: true },
    first: 'Stop the feed, and connect another container that is released.',
    second: 'Put parts coated since it was connected on hold.',
  });

const aside = 'Set the rack aside, and coat nothing more of it.';

export const heldAtGuns = heldUse({
  name: 'rack-held',
  what: 'rack',
  marks: ['rack-in', 'coated'],
  fixed: {},
  first: aside,
  second: 'Write on its tag what it was given since it was held.',
});

export const heldAtTank = heldUse({
  name: 'rack-held',
  what: 'rack',
  marks: ['rack-in'],
  fixed: { last_only: true },
  first: aside,
  second: 'Write on its tag what it was given since it was held.',
});

export const heldIntoTank = heldUse({
  name: 'lot-held',
  what: 'lot',
  marks: ['adhesive-in'],
  fixed: { while_used: true },
  first: 'Dip nothing more, and put in no more of this lot.',
  second: 'Put racks dipped since it was put in on hold.',
});

const heldLot = (name: string, mark: string, first: string): RuleTemplate =>
  heldUse({
    name,
    what: 'lot',
    marks: [mark],
    fixed: { last_only: true, while_used: true },
    first,
    second: 'Put shots made with it on hold.',
  });

export const heldInserts = heldLot(
  'insert-lot-held',
  'insert-lot',
  'Load no more inserts of this lot; take another one that is released.',
);

export const heldCompound = heldLot(
  'compound-held',
  'compound-batch',
  'Load no more of this batch; take another one that is released.',
);

export const heldMoulded = heldUse({
  name: 'rack-held',
  what: 'rack',
  marks: ['moulded'],
  fixed: {},
  first: 'Stop before the next parts of this rack go into the press.',
  second: 'Put shots made with its parts on hold.',
});
