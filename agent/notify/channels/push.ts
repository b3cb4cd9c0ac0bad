/**
 * Messages to phones: Web Push (RFC 8030), encrypted for the one phone (RFC 8291), signed by the
 * agent's own key (RFC 8292).
 *
 * Always true: a push service sees no text; a phone it calls dead is not asked again; a newer
 * message of one occurrence takes the place of one that was not fetched yet.
 */
import { createHash } from 'node:crypto';
import webPush from 'web-push';
import { limits } from '../../limits.ts';
import type { Channel, Delivery, Message, Target } from '../contract.ts';
import { ask } from './ask.ts';
import { outcomeOf } from './outcome.ts';
import type { PushDevice, PushDevices } from './push-devices.ts';
import type { PushKeys } from './push-keys.ts';
import { pushText } from './push-text.ts';

export interface PushParts {
  readonly keys: () => PushKeys;
  readonly devices: PushDevices;
  /** Whom a push service may write to when something is wrong: mailto: or https: (RFC 8292, 2.1). */
  readonly contact: () => string;
  /** Hosts of push services inside the plant; others must have a public address. */
  readonly plantHosts: () => ReadonlySet<string>;
  readonly nowMs: () => number;
  readonly authorities?: readonly string[];
  readonly answerMs?: number;
}

/** At most 32 letters of base64url (RFC 8030 section 5.4); says nothing of what it is of. */
export const topicOf = (thread: string): string =>
  createHash('sha256').update(thread).digest('base64url').slice(0, 32);

/** What makes no sound wakes no phone in its owner's pocket. */
function urgencyOf({ silent, priority }: Message): webPush.Urgency {
  if (silent) return 'low';
  return priority === 'low' ? 'normal' : 'high';
}

const far = 'The push service';
const noDevice: Delivery = { outcome: 'gone', cause: 'No phone of this person takes push.' };

export class PushChannel implements Channel {
  readonly name = 'push';
  private readonly parts: PushParts;

  constructor(parts: PushParts) {
    this.parts = parts;
  }

  /** To every phone of the person; delivered once one push service took it. */
  async send(message: Message, target: Target, signal: AbortSignal): Promise<Delivery> {
    const text = pushText(message);
    const devices = this.parts.devices.of(target.address);
    const outcomes = await Promise.all(
      devices.map((device) => this.sendTo(device, message, text, signal)),
    );
    return together(outcomes);
  }

  private async sendTo(
    { endpoint, p256dh, auth }: PushDevice,
    message: Message,
    text: Buffer,
    signal: AbortSignal,
  ): Promise<Delivery> {
    const { keys, devices, contact, plantHosts, nowMs, authorities, answerMs } = this.parts;
    const usefulS = Math.ceil((message.usefulUntil - nowMs()) / 1_000);
    const { headers, body } = webPush.generateRequestDetails(
      { endpoint, keys: { p256dh, auth } },
      text,
      {
        vapidDetails: { subject: contact(), ...keys() },
        TTL: Math.min(limits.pushKeptSMax, Math.max(0, usefulS)),
        urgency: urgencyOf(message),
        topic: topicOf(message.thread),
        contentEncoding: 'aes128gcm',
      },
    );
    const asked = await ask(
      {
        url: endpoint,
        headers: Object.fromEntries(
          Object.entries(headers).map(([name, value]) => [name, String(value)]),
        ),
        body: body as Buffer,
        reach: plantHosts().has(new URL(endpoint).hostname) ? 'any' : 'public',
        ...(authorities === undefined ? {} : { authorities }),
        ...(answerMs === undefined ? {} : { answerMs }),
      },
      signal,
    );
    const outcome = outcomeOf(far, asked);
    if (outcome.outcome === 'gone') devices.remove(endpoint);
    return outcome;
  }
}

/** One phone is enough; else what may yet come about, the soonest first. */
export function together(outcomes: readonly Delivery[]): Delivery {
  const delivered = outcomes.find(({ outcome }) => outcome === 'delivered');
  if (delivered !== undefined) return delivered;
  const later = outcomes
    .filter((each) => each.outcome === 'later')
    .sort((a, b) => (a.afterMs ?? 0) - (b.afterMs ?? 0));
  const refused = outcomes.find(({ outcome }) => outcome === 'refused');
  return later[0] ?? refused ?? outcomes[0] ?? noDevice;
}
