/**
 * Messages to other programs: a signed CloudEvent by POST to the addresses of the site file.
 *
 * Always true: every sending of one message carries one `webhook-id`; while a secret is being
 * changed both sign; nothing is followed or read beyond the answer's first line and its bound.
 */
import { createHash } from 'node:crypto';
import type { Channel, Delivery, Message, Target } from '../contract.ts';
import { ask } from './ask.ts';
import { outcomeOf } from './outcome.ts';
import { signatures } from './signature.ts';
import { cloudEvent } from './webhook-event.ts';

export interface Webhook {
  readonly url: string;
  /** The newer first; both sign. Without any nothing is sent. */
  readonly secrets: readonly Buffer[];
  /** Its host may have a link-local address. */
  readonly anyAddress: boolean;
}

export interface WebhookParts {
  /** By name, as the site file has them now. */
  readonly webhooks: () => ReadonlyMap<string, Webhook>;
  /** The address of the agent's page, without a stroke at its end. */
  readonly page: () => string;
  readonly nowMs: () => number;
  /** PEM, beside the authorities Node knows. */
  readonly authorities?: readonly string[];
  readonly answerMs?: number;
}

/** Equal for equal keys, and without the dots that part id, time and body in what is signed. */
export const webhookId = (key: string): string =>
  `msg_${createHash('sha256').update(key).digest('base64url').slice(0, 32)}`;

export class WebhookChannel implements Channel {
  readonly name = 'webhook';
  private readonly parts: WebhookParts;

  constructor(parts: WebhookParts) {
    this.parts = parts;
  }

  async send(message: Message, target: Target, signal: AbortSignal): Promise<Delivery> {
    const { webhooks, page, nowMs, authorities, answerMs } = this.parts;
    const webhook = webhooks().get(target.address);
    if (webhook === undefined)
      return { outcome: 'gone', cause: 'The site file has no webhook of this name any more.' };
    if (webhook.secrets.length === 0)
      return {
        outcome: 'later',
        afterMs: null,
        cause: 'The secret of the webhook is not usable; the log says why.',
      };
    const body = Buffer.from(JSON.stringify(cloudEvent(message, page())));
    const id = webhookId(message.key);
    const timestampS = Math.floor(nowMs() / 1_000);
    const asked = await ask(
      {
        url: webhook.url,
        headers: {
          'content-type': 'application/cloudevents+json; charset=utf-8',
          'webhook-id': id,
          'webhook-timestamp': String(timestampS),
          'webhook-signature': signatures(webhook.secrets, { id, timestampS, body }),
        },
        body,
        reach: webhook.anyAddress ? 'any' : 'plant',
        ...(authorities === undefined ? {} : { authorities }),
        ...(answerMs === undefined ? {} : { answerMs }),
      },
      signal,
    );
    return outcomeOf('The webhook', asked);
  }
}
