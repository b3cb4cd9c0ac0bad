import { describe, expect, test } from 'vitest';
import {
  type AlarmEvent,
  type AlarmPosition,
  type AlarmState,
  type AlarmTraits,
  type BasicState,
  lifecycle,
  step,
} from '#rules/alarm/lifecycle.ts';

const states = Object.keys(lifecycle) as AlarmState[];
const events = Object.keys(lifecycle.normal) as AlarmEvent[];
const plain: AlarmTraits = { latching: false, selfAcknowledging: false };
const latching: AlarmTraits = { latching: true, selfAcknowledging: false };
const selfAcknowledging: AlarmTraits = { latching: false, selfAcknowledging: true };
const classes = { plain, latching, selfAcknowledging };

const A = 'normal';
const B = 'unacknowledged';
const C = 'acknowledged';
const D = 'returned-unacknowledged';
const E = 'latched-unacknowledged';
const F = 'latched-acknowledged';
const G = 'shelved';
const H = 'suppressed-by-design';
const I = 'out-of-service';

// The arrows of the ISA-18.2 alarm state transition diagram (from memory of the standard; where it
// leaves a choice, ours, as the table's reasons say). '-' stays where it is. Passing on is ours: the
// standard knows who acknowledges, not who cannot.
const columns = [
  'raise',
  'clear',
  'acknowledge',
  'reset',
  'realarm',
  'shelve',
  'suppress',
  'remove-from-service',
  'pass-on',
] as const;
const arrows: readonly [AlarmState, AlarmTraits, ...string[]][] = [
  [A, plain, B, '-', '-', '-', '-', G, H, I, '-'],
  [B, plain, '-', D, C, '-', B, G, H, I, B],
  [B, latching, '-', E, C, '-', B, G, H, I, B],
  [B, selfAcknowledging, '-', A, C, '-', B, G, H, I, B],
  [C, plain, '-', A, '-', '-', B, G, H, I, '-'],
  [C, latching, '-', F, '-', '-', B, G, H, I, '-'],
  [D, plain, B, '-', A, '-', '-', G, H, I, '-'],
  [E, latching, B, '-', F, '-', E, G, H, I, E],
  [F, latching, B, '-', '-', A, '-', G, H, I, '-'],
];

describe('the table against the standard’s arrows', () => {
  for (const [from, traits, ...targets] of arrows) {
    for (const [i, event] of columns.entries()) {
      const target = targets[i]!;
      test(`${from}${traits.latching ? ' (latching)' : ''} on ${event}: ${target}`, () => {
        const taken = step(at(from), event, traits);
        if (target === '-') expect(taken.did).not.toBe('move');
        else expect(taken).toMatchObject({ did: 'move', next: { state: target } });
      });
    }
  }
});

const at = (state: AlarmState, beneath: BasicState = 'normal'): AlarmPosition => ({
  state,
  beneath: state === G || state === H || state === I ? beneath : state,
});

/** Every position that can be reached from normal, by events alone. */
function reachable(traits: AlarmTraits): AlarmPosition[] {
  const seen = new Map<string, AlarmPosition>();
  const queue = [at(A)];
  while (queue.length > 0) {
    const position = queue.pop()!;
    const key = `${position.state}/${position.beneath}`;
    if (seen.has(key)) continue;
    seen.set(key, position);
    for (const event of events) {
      const taken = step(position, event, traits);
      if (taken.did === 'move') queue.push(taken.next);
    }
  }
  return [...seen.values()];
}

test('every cell gives its reason in words', () => {
  for (const state of states)
    for (const event of events) expect(lifecycle[state][event].why.length).toBeGreaterThan(10);
});

test('reachable positions: the basic ones, and each suppressed state over each basic one', () => {
  expect(reachable(plain)).toHaveLength(4 + 3 * 4);
  expect(reachable(latching)).toHaveLength(5 + 3 * 5);
  expect(reachable(selfAcknowledging)).toHaveLength(3 + 3 * 3);
});

describe.each(Object.entries(classes))(
  '%s: every event in every reachable position',
  (_, traits) => {
    test('a suppressed state keeps a basic one beneath; a basic one is its own', () => {
      for (const position of reachable(traits)) {
        for (const event of events) {
          const taken = step(position, event, traits);
          if (taken.did !== 'move') continue;
          const { next } = taken;
          if (![G, H, I].includes(next.state)) expect(next.beneath).toBe(next.state);
        }
      }
    });

    test('what is beneath a suppressed state moves as it would in the light', () => {
      for (const position of reachable(traits)) {
        if (position.state === position.beneath) continue;
        for (const event of ['raise', 'escalate', 'clear'] as const) {
          const under = step(at(position.beneath), event, traits);
          const over = step(position, event, traits);
          expect(over.did).toBe(under.did);
          if (under.did === 'move' && over.did === 'move')
            expect(over.next).toEqual({ state: position.state, beneath: under.next.beneath });
        }
      }
    });

    test('nothing shelved, suppressed or out of service can be acknowledged, passed on or reset', () => {
      for (const position of reachable(traits)) {
        if (position.state === position.beneath) continue;
        expect(step(position, 'acknowledge', traits).did).toBe('refuse');
        expect(step(position, 'reset', traits).did).toBe('refuse');
        expect(step(position, 'pass-on', traits).did).toBe('refuse');
      }
    });
  },
);

describe.each(Object.entries(classes))('%s: every sequence of six events', (_, traits) => {
  test('from raised to normal leads through an acknowledgement, unless the class says so', () => {
    let walked = 0;
    let unseenAtNormal = 0;
    const walk = (position: AlarmPosition, unseen: boolean, depth: number): void => {
      walked += 1;
      if (position.state === A && unseen) unseenAtNormal += 1;
      if (depth === 0) return;
      for (const event of events) {
        const taken = step(position, event, traits);
        if (taken.did !== 'move') {
          walk(position, unseen, depth - 1);
          continue;
        }
        const raised = taken.next.beneath === B && position.beneath !== B;
        const seen = event === 'acknowledge';
        walk(taken.next, seen ? false : unseen || raised, depth - 1);
      }
    };
    walk(at(A), false, 6);
    expect(walked).toBeGreaterThan(events.length ** 6);
    if (traits.selfAcknowledging) expect(unseenAtNormal).toBeGreaterThan(0);
    else expect(unseenAtNormal).toBe(0);
  }, 60_000);
});
