/** Phones and the page: subscriptions into the list, a test message through the channel itself. */
import type { PersonId } from '#rules/input.ts';
import { AgentError } from '../errors.ts';
import type { Message } from '../notify/contract.ts';
import type { Said } from '../notify/teller-parts.ts';
import type {
  PushDevicesView,
  PushKeyView,
  PushSubscriptionSaid,
  PushTestView,
} from '../web/push-contract.ts';
import type { PushPorts } from '../web/push-ports.ts';
import type { ChannelDesk } from './channel-desk.ts';

export interface PushDeskParts {
  readonly ways: ChannelDesk;
  readonly languageOf: (person: PersonId) => 'en' | 'de';
  readonly say: (at: number, language: 'en' | 'de') => Said;
  readonly nowMs: () => number;
}

export class PushDesk implements PushPorts {
  private readonly parts: PushDeskParts;
  private readonly stopping = new AbortController();

  constructor(parts: PushDeskParts) {
    this.parts = parts;
  }

  key(by: PersonId): PushKeyView {
    return { key: this.parts.ways.keys.publicKey, ...this.devicesOf(by) };
  }

  subscribe(said: PushSubscriptionSaid, by: PersonId): PushDevicesView {
    const { ways, nowMs } = this.parts;
    ways.devices.add(by, said, nowMs());
    return this.devicesOf(by);
  }

  unsubscribe(endpoint: string, by: PersonId): PushDevicesView {
    if (!this.parts.ways.devices.remove(endpoint, by)) throw new AgentError('PUSH_DEVICE_UNKNOWN');
    return this.devicesOf(by);
  }

  async test(by: PersonId): Promise<PushTestView> {
    const { ways, languageOf, say, nowMs } = this.parts;
    const at = nowMs();
    const language = languageOf(by);
    const message: Message = {
      ...say(at, language),
      key: `test@${at}/0/push/${by}`,
      thread: 'test',
      occurrence: null,
      kind: 'test',
      silent: false,
      language,
    };
    const target = { person: by, channel: 'push', address: by } as const;
    const delivery = await ways.push.send(message, target, this.stopping.signal);
    return {
      outcome: delivery.outcome,
      cause: delivery.outcome === 'delivered' ? null : delivery.cause,
    };
  }

  stop(): void {
    this.stopping.abort();
  }

  private devicesOf(by: PersonId): PushDevicesView {
    return { devices: this.parts.ways.devices.of(by).length };
  }
}
