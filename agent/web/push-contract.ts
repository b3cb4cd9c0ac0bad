/** What a phone is sent, and what it says of itself to be sent anything. */
import { z } from 'zod';
import { limits } from '../limits.ts';
import type { MessageKind } from '../notify/contract.ts';

const base64url = z
  .string()
  .max(200)
  .regex(/^[\w-]+={0,2}$/);

/** The text of a push: complete in itself, at most 3,993 bytes of JSON. */
export interface PushNotice {
  readonly key: string;
  readonly occurrence: string | null;
  /** A notification of one thread replaces the one before. */
  readonly thread: string;
  readonly kind: MessageKind;
  readonly silent: boolean;
  readonly language: 'en' | 'de';
  readonly title: string;
  readonly sentence: string;
  readonly consequence: string;
  readonly steps: readonly string[];
  readonly do_not: readonly string[];
  readonly caution: string;
  readonly deferral: string;
  readonly word: 'DANGER' | 'WARNING' | 'CAUTION' | 'NOTICE';
  readonly priority: 'high' | 'medium' | 'low';
  readonly highly_managed: boolean;
  /** Path of its page, from the root. */
  readonly url: string;
  readonly at: number;
  readonly station: string;
  readonly limit: string;
  readonly count: number;
}

/** As `PushSubscription.toJSON()` gives it (W3C Push API). */
export const pushSubscriptionSchema = z.strictObject({
  endpoint: z.string().min(1).max(limits.pushEndpointCharsMax),
  expirationTime: z.number().nullable().optional(),
  keys: z.strictObject({ p256dh: base64url, auth: base64url }),
});
export type PushSubscriptionSaid = z.output<typeof pushSubscriptionSchema>;

export const pushEndpointSchema = z.strictObject({
  endpoint: z.string().min(1).max(limits.pushEndpointCharsMax),
});

export const pushKeySchema = z.object({
  key: z.string().describe('Base64url of a point of P-256, for `applicationServerKey`.'),
  devices: z.int().min(0).describe('Phones and browsers of whoever asks that take push.'),
});
export type PushKeyView = z.output<typeof pushKeySchema>;

export const pushDevicesSchema = z.object({
  devices: z.int().min(0).describe('Phones and browsers of this person that take push now.'),
});
export type PushDevicesView = z.output<typeof pushDevicesSchema>;

/** What became of a test message to the own phones. */
export const pushTestSchema = z.object({
  outcome: z.enum(['delivered', 'later', 'gone', 'refused']),
  cause: z.string().nullable().describe('null where it was delivered.'),
});
export type PushTestView = z.output<typeof pushTestSchema>;
