/**
 * What every channel promises of its far side. Each implementation's test is one call of this.
 *
 * A channel that answers a fault otherwise says why.
 */
import { describe, expect, test } from 'vitest';
import type { Channel, Delivery, Message, Target } from '#agent/notify/contract.ts';
import { type Fault, faults } from './faults.ts';
import { aMessage } from './messages.ts';

/** A channel whose far side plays one fault. */
export interface ChannelWorld {
  readonly channel: Channel;
  readonly target: Target;
  /** Whole messages that the far side took. */
  readonly taken: () => number;
  /** Words that must stand in no cause: secrets, addresses. */
  readonly secrets: readonly string[];
  readonly close: () => Promise<void>;
}

type Expected = Delivery['outcome'];

/** One table for all: a fault of the message, of the target, or of the moment. */
const expected: Readonly<Record<Fault, Expected>> = {
  none: 'delivered',
  '400': 'refused',
  '401': 'later',
  '404': 'gone',
  '410': 'gone',
  '413': 'refused',
  '429, again in 7 s': 'later',
  '500': 'later',
  '503, again at a date': 'later',
  'a redirect': 'refused',
  'no answer': 'later',
  'half an answer': 'later',
  'an answer without end': 'delivered',
  'the connection cut': 'later',
  'half-open socket': 'later',
  'nobody listens': 'later',
  'no such host': 'later',
  'certificate of a stranger': 'later',
  'no TLS there': 'later',
};

/** The far side says in these how long it wants to be left alone. */
const waits: Partial<Record<Fault, readonly [minMs: number, maxMs: number]>> = {
  '429, again in 7 s': [7_000, 7_000],
  '503, again at a date': [28_000, 31_000],
};

export interface Differs {
  readonly outcome?: Expected;
  /** The far side cannot say when to come again. */
  readonly saysNoWait?: true;
  readonly because: string;
}

export function channelContract(
  name: string,
  open: (fault: Fault) => Promise<ChannelWorld>,
  differs: Partial<Record<Fault, Differs>> = {},
): void {
  const within = async (
    fault: Fault,
    use: (world: ChannelWorld, send: (facts?: Partial<Message>) => Promise<Delivery>) => unknown,
  ): Promise<void> => {
    const world = await open(fault);
    try {
      const idle = new AbortController().signal;
      await use(world, (facts) => world.channel.send(aMessage(facts), world.target, idle));
    } finally {
      await world.close();
    }
  };

  describe(`channel ${name}`, () => {
    for (const fault of faults) {
      const other = differs[fault];
      const outcome = other?.outcome ?? expected[fault];
      test(`${fault}: ${outcome}`, () =>
        within(fault, async (world, send) => {
          const delivery = await send();
          expect(delivery).toMatchObject({ outcome });
          expect(world.taken()).toBe(outcome === 'delivered' ? 1 : 0);
          if (delivery.outcome === 'delivered') return;
          expect(delivery.cause).toMatch(/^[A-Z][^?]{10,200}\w\)?\.$/);
          for (const secret of world.secrets) expect(delivery.cause).not.toContain(secret);
          if (delivery.outcome !== 'later') return;
          const wait = other?.saysNoWait === true ? undefined : waits[fault];
          if (wait === undefined) expect(delivery.afterMs).toBeNull();
          else {
            expect(delivery.afterMs).toBeGreaterThanOrEqual(wait[0]);
            expect(delivery.afterMs).toBeLessThanOrEqual(wait[1]);
          }
        }));
    }

    test('every kind of message goes', () =>
      within('none', async (world, send) => {
        const kinds = ['alarm', 'again', 'over', 'answered', 'flood', 'test', 'digest'] as const;
        for (const kind of kinds)
          expect(await send({ kind, key: `k/${kind}`, silent: kind === 'over' })).toEqual({
            outcome: 'delivered',
          });
        expect(world.taken()).toBe(kinds.length);
      }));

    test('the longest message goes, and one with nothing in it but a title', () =>
      within('none', async (world, send) => {
        const long = 'ä€𝄞"<'.repeat(2_000);
        const texts = { sentence: long, consequence: long, caution: long, deferral: long };
        expect(await send({ ...texts, steps: [long, long, long], doNot: [long] })).toEqual({
          outcome: 'delivered',
        });
        const none = { sentence: '', consequence: '', caution: '', deferral: '', limitText: '' };
        expect(
          await send({ ...none, steps: [], doNot: [], occurrence: null, station: '' }),
        ).toEqual({ outcome: 'delivered' });
        expect(world.taken()).toBe(2);
      }));

    test('a stop of the agent ends a try that waits for an answer', () =>
      within('no answer', async ({ channel, target }) => {
        const stop = new AbortController();
        const sending = channel.send(aMessage(), target, stop.signal);
        setTimeout(() => stop.abort(), 30);
        expect(await sending).toMatchObject({ outcome: 'later', afterMs: null });
      }));

    test('a stop before the try: nothing is sent', () =>
      within('none', async ({ channel, target, taken }) => {
        expect(await channel.send(aMessage(), target, AbortSignal.abort())).toMatchObject({
          outcome: 'later',
        });
        expect(taken()).toBe(0);
      }));
  });
}
