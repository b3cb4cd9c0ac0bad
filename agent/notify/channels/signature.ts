/**
 * Signs what a webhook sends. Source: Standard Webhooks 1.0, "Signature scheme": HMAC-SHA256 of
 * `id.timestamp.body`, base64, `v1,` before it; several with spaces between while a secret is changed.
 */
import { createHmac, randomBytes } from 'node:crypto';

const prefix = 'whsec_';

/** 24 to 64 random bytes as `whsec_` and base64. */
export const makeSecret = (): string => `${prefix}${randomBytes(32).toString('base64')}`;

/** The bytes of a secret; null where it is none. */
export function secretBytes(written: string): Buffer | null {
  if (!/^whsec_[A-Za-z0-9+/]+={0,2}$/.test(written)) return null;
  const bytes = Buffer.from(written.slice(prefix.length), 'base64');
  return bytes.length >= 24 && bytes.length <= 64 ? bytes : null;
}

export interface Signed {
  readonly id: string;
  readonly timestampS: number;
  readonly body: Buffer | string;
}

/** The value of `webhook-signature`; one signature a secret, in their order. */
export const signatures = (secrets: readonly Buffer[], { id, timestampS, body }: Signed): string =>
  secrets
    .map((secret) => {
      const hmac = createHmac('sha256', secret).update(`${id}.${timestampS}.`).update(body);
      return `v1,${hmac.digest('base64')}`;
    })
    .join(' ');
