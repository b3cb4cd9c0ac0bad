/**
 * The lifecycle of an alarm as a table: every state meets every event in one cell, with its reason.
 *
 * States and transitions are the words of ISA-18.2 / IEC 62682. The six basic states say what the
 * condition and the people did. The three suppressed states lie over a basic one that goes on
 * moving beneath, recorded but not annunciated; leaving them uncovers it. So nothing that was
 * unacknowledged before it was shelved is forgotten by shelving, and the way from a raised alarm
 * to normal leads through an acknowledgement, unless its class acknowledges itself.
 *
 * Precedence where several would apply, a choice of ours: out of service, then suppressed by
 * design, then shelved. The stronger one ends the weaker; unknown means unshelved.
 */

export type BasicState =
  | 'normal'
  | 'unacknowledged'
  | 'acknowledged'
  | 'returned-unacknowledged'
  | 'latched-unacknowledged'
  | 'latched-acknowledged';

export type SuppressedState = 'shelved' | 'suppressed-by-design' | 'out-of-service';
export type AlarmState = BasicState | SuppressedState;

export type Transition =
  | 'raised'
  | 'returned'
  | 'acknowledged'
  | 'reset'
  | 'realarmed'
  | 'shelved'
  | 'unshelved'
  | 'suppressed'
  | 'released'
  | 'removed-from-service'
  | 'returned-to-service'
  /** Whoever was asked cannot take it; the state stays. */
  | 'passed-on'
  | 'removed';

export type AlarmEvent =
  /** The condition became abnormal, its delay held. */
  | 'raise'
  /** The condition passed its second limit. */
  | 'escalate'
  /** The condition is normal again, its deadband and delay held. */
  | 'clear'
  | 'acknowledge'
  /** Whoever was asked cannot take it: the next person. */
  | 'pass-on'
  | 'reset'
  /** Nothing improved within the time to respond. */
  | 'realarm'
  | 'shelve'
  /** By a person, or because the shelf's time ended. */
  | 'unshelve'
  | 'suppress'
  | 'release'
  | 'remove-from-service'
  | 'return-to-service';

export interface AlarmTraits {
  /** Stays after the condition went, until somebody resets it. */
  readonly latching: boolean;
  /** Needs no acknowledgement once the condition went. */
  readonly selfAcknowledging: boolean;
}

interface ByTraits {
  readonly plain: BasicState;
  readonly latching: BasicState;
  readonly selfAcknowledging: BasicState;
}

export type Cell =
  | {
      readonly does: 'go';
      readonly to: AlarmState | ByTraits;
      readonly transition: Transition;
      readonly why: string;
    }
  /** The basic state beneath takes the event; recorded, not annunciated. */
  | { readonly does: 'beneath'; readonly why: string }
  /** The basic state beneath comes to light. */
  | { readonly does: 'uncover'; readonly transition: Transition; readonly why: string }
  /** Nothing happens, rightly. */
  | { readonly does: 'ignore'; readonly why: string }
  /** Nothing happens, and whoever asked is told why. */
  | { readonly does: 'refuse'; readonly why: string };

const go = (to: AlarmState | ByTraits, transition: Transition, why: string): Cell => ({
  does: 'go',
  to,
  transition,
  why,
});
const beneath = (why: string): Cell => ({ does: 'beneath', why });
const uncover = (transition: Transition, why: string): Cell => ({
  does: 'uncover',
  transition,
  why,
});
const ignore = (why: string): Cell => ({ does: 'ignore', why });
const refuse = (why: string): Cell => ({ does: 'refuse', why });

type Row = Readonly<Record<AlarmEvent, Cell>>;

/** The same in every basic state. */
const fromBasic = {
  shelve: go('shelved', 'shelved', 'put aside for a time, with a reason and an end'),
  unshelve: refuse('it is not shelved'),
  suppress: go(
    'suppressed-by-design',
    'suppressed',
    'the plant is in a state where it means nothing',
  ),
  release: ignore('it is not suppressed'),
  'remove-from-service': go('out-of-service', 'removed-from-service', 'taken out for maintenance'),
  'return-to-service': refuse('it is in service'),
} as const;

/** The same in every suppressed state. */
const fromSuppressed = {
  raise: beneath('still judged and recorded, told to nobody'),
  escalate: beneath('still judged and recorded, told to nobody'),
  clear: beneath('still judged and recorded, told to nobody'),
  acknowledge: refuse(
    'it is put aside, and nobody is called for it: there is nothing to acknowledge',
  ),
  'pass-on': refuse('it is put aside, and nobody is called for it: there is nothing to pass on'),
  reset: refuse('it is put aside, and nobody is called for it: there is nothing to reset'),
  realarm: ignore('nobody was told, so nobody is told again'),
} as const;

export const lifecycle: Readonly<Record<AlarmState, Row>> = {
  normal: {
    ...fromBasic,
    raise: go('unacknowledged', 'raised', 'a new occurrence'),
    escalate: ignore('there is no alarm to escalate; a raise carries its severity'),
    clear: ignore('it is normal already'),
    acknowledge: refuse('there is no alarm to acknowledge'),
    'pass-on': refuse('there is no alarm to pass on'),
    reset: refuse('there is no alarm to reset'),
    realarm: ignore('there is no alarm'),
  },
  unacknowledged: {
    ...fromBasic,
    raise: ignore('it is raised already'),
    escalate: go('unacknowledged', 'realarmed', 'the second limit is news'),
    clear: go(
      {
        plain: 'returned-unacknowledged',
        latching: 'latched-unacknowledged',
        selfAcknowledging: 'normal',
      },
      'returned',
      'the condition went; somebody still has to see that it was there',
    ),
    acknowledge: go('acknowledged', 'acknowledged', 'somebody has it'),
    'pass-on': go('unacknowledged', 'passed-on', 'nobody has it yet; the next person is asked'),
    reset: refuse('the condition still holds'),
    realarm: go('unacknowledged', 'realarmed', 'nobody answered in time'),
  },
  acknowledged: {
    ...fromBasic,
    raise: ignore('it is raised already'),
    escalate: go('unacknowledged', 'realarmed', 'what was acknowledged has become worse'),
    clear: go(
      { plain: 'normal', latching: 'latched-acknowledged', selfAcknowledging: 'normal' },
      'returned',
      'the condition went, and somebody had seen it',
    ),
    acknowledge: ignore('it is acknowledged already; one record is enough'),
    'pass-on': refuse('somebody has it already'),
    reset: refuse('the condition still holds'),
    realarm: go('unacknowledged', 'realarmed', 'nothing improved within the time to respond'),
  },
  'returned-unacknowledged': {
    ...fromBasic,
    raise: go('unacknowledged', 'raised', 'a new occurrence; it takes the place of the unseen one'),
    escalate: ignore('the condition is normal; a raise carries its severity'),
    clear: ignore('it has returned already'),
    acknowledge: go('normal', 'acknowledged', 'seen, and over'),
    'pass-on': refuse('it is over; nobody has to take it; acknowledge it'),
    reset: refuse('it does not latch; acknowledge it'),
    realarm: ignore('it is over; nobody is called for it again'),
  },
  'latched-unacknowledged': {
    ...fromBasic,
    raise: go('unacknowledged', 'raised', 'the latched occurrence goes on'),
    escalate: ignore('the condition is normal; a raise carries its severity'),
    clear: ignore('it has returned already'),
    acknowledge: go('latched-acknowledged', 'acknowledged', 'seen; it stays until it is reset'),
    'pass-on': go(
      'latched-unacknowledged',
      'passed-on',
      'nobody has seen it yet; the next person is asked',
    ),
    reset: refuse('acknowledge it first; a reset must not hide what nobody has seen'),
    realarm: go('latched-unacknowledged', 'realarmed', 'nobody answered in time'),
  },
  'latched-acknowledged': {
    ...fromBasic,
    raise: go('unacknowledged', 'raised', 'the latched occurrence goes on, and is news again'),
    escalate: ignore('the condition is normal; a raise carries its severity'),
    clear: ignore('it has returned already'),
    acknowledge: ignore('it is acknowledged already; one record is enough'),
    'pass-on': refuse('somebody has seen it already'),
    reset: go('normal', 'reset', 'somebody made sure that it is over'),
    realarm: ignore('it is over and seen; it waits for its reset'),
  },
  shelved: {
    ...fromSuppressed,
    shelve: go('shelved', 'shelved', 'a shelf may be given a new end'),
    unshelve: uncover('unshelved', 'the shelf ended'),
    suppress: go('suppressed-by-design', 'suppressed', 'stronger than a shelf, and ends it'),
    release: ignore('it is not suppressed by design'),
    'remove-from-service': go('out-of-service', 'removed-from-service', 'stronger than a shelf'),
    'return-to-service': refuse('it is in service'),
  },
  'suppressed-by-design': {
    ...fromSuppressed,
    shelve: refuse('the plant’s state suppresses it already; shelve it when that ends'),
    unshelve: refuse('it is not shelved'),
    suppress: ignore('it is suppressed already'),
    release: uncover('released', 'the plant is back in a state where it means something'),
    'remove-from-service': go(
      'out-of-service',
      'removed-from-service',
      'stronger than suppression by design',
    ),
    'return-to-service': refuse('it is in service'),
  },
  'out-of-service': {
    ...fromSuppressed,
    shelve: refuse('it is out of service'),
    unshelve: refuse('it is not shelved'),
    suppress: ignore('it is out of service; suppression is asked again on its return'),
    release: ignore('it is out of service'),
    'remove-from-service': ignore('it is out of service already'),
    'return-to-service': uncover('returned-to-service', 'maintenance is done'),
  },
};

export interface AlarmPosition {
  readonly state: AlarmState;
  /** The basic state beneath a suppressed one; the state itself otherwise. */
  readonly beneath: BasicState;
}

export type Step =
  | {
      readonly did: 'move';
      readonly next: AlarmPosition;
      readonly transition: Transition;
      readonly why: string;
    }
  | { readonly did: 'ignore' | 'refuse'; readonly why: string };

export const isSuppressed = (state: AlarmState): state is SuppressedState =>
  state === 'shelved' || state === 'suppressed-by-design' || state === 'out-of-service';

/** One event; pure. */
export function step(position: AlarmPosition, event: AlarmEvent, traits: AlarmTraits): Step {
  const cell = lifecycle[position.state][event];
  switch (cell.does) {
    case 'ignore':
    case 'refuse':
      return { did: cell.does, why: cell.why };
    case 'uncover': {
      // A person once had it, but it was out of sight since: it is annunciated anew.
      const state = position.beneath === 'acknowledged' ? 'unacknowledged' : position.beneath;
      const next = { state, beneath: state };
      return { did: 'move', next, transition: cell.transition, why: cell.why };
    }
    case 'beneath': {
      const under = step({ state: position.beneath, beneath: position.beneath }, event, traits);
      if (under.did !== 'move') return under;
      return { ...under, next: { state: position.state, beneath: under.next.beneath } };
    }
    case 'go': {
      const to = typeof cell.to === 'string' ? cell.to : cell.to[traitOf(traits)];
      const next = isSuppressed(to)
        ? { state: to, beneath: position.beneath }
        : { state: to, beneath: to };
      return { did: 'move', next, transition: cell.transition, why: cell.why };
    }
  }
}

const traitOf = (traits: AlarmTraits): keyof ByTraits =>
  traits.latching ? 'latching' : traits.selfAcknowledging ? 'selfAcknowledging' : 'plain';

/** Does the alarm, in this state, ask for somebody? */
export const isAnnunciated = (state: AlarmState): boolean =>
  !isSuppressed(state) && state !== 'normal';
