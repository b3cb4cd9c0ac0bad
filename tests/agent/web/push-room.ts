/** Push as the page has it, over the real list of phones in a folder; nobody in the network is asked. */
import { ChannelDesk } from '#agent/wiring/channel-desk.ts';
import { PushDesk } from '#agent/wiring/push-desk.ts';
import { aMessage } from '../notify/messages.ts';

export interface PushRoom {
  readonly ways: ChannelDesk;
  readonly push: PushDesk;
}

/** `fault`: what the log would have. */
export function pushRoom(folder: string, fault: (error: unknown) => void): PushRoom {
  const ways = new ChannelDesk({
    folder,
    written: () => undefined,
    timezone: () => 'UTC',
    page: () => 'https://own.example',
    env: {},
    nowMs: () => Date.now(),
    warn: fault,
  });
  // What goes out is another test's (push.test.ts): here a push service takes everything.
  ways.push.send = async (_, { address }) =>
    ways.devices.of(address).length === 0
      ? { outcome: 'gone', cause: 'No phone of this person takes push.' }
      : { outcome: 'delivered' };
  const { key: _, ...said } = aMessage();
  const push = new PushDesk({
    ways,
    languageOf: () => 'en',
    say: (at) => ({ ...said, at }),
    nowMs: () => Date.now(),
  });
  return { ways, push };
}
