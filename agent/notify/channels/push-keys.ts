/**
 * The key by which push services know this agent (VAPID, RFC 8292), made at the first start.
 *
 * Always true: a key that is there is never replaced, for every phone's subscription belongs to
 * it; one that cannot be read stops the start and is not taken for absent.
 */
import { createECDH, timingSafeEqual } from 'node:crypto';
import webPush from 'web-push';
import { AgentError } from '../../errors.ts';
import { readPrivate, secretFile, writePrivate } from './secret.ts';

export interface PushKeys {
  /** Base64url of the uncompressed point, as browsers ask for it. */
  readonly publicKey: string;
  readonly privateKey: string;
}

export const pushKeysName = 'push-keys.json';

/** Those of the folder, made where there are none. Throws CHANNEL_SECRET_UNUSABLE. */
export function pushKeys(folder: string): PushKeys {
  const kept = keptPushKeys(folder);
  if (kept !== null) return kept;
  const made = webPush.generateVAPIDKeys();
  writePrivate(secretFile(folder, pushKeysName), `${JSON.stringify(made)}\n`);
  return made;
}

/** null where none were made yet. Throws CHANNEL_SECRET_UNUSABLE. */
export function keptPushKeys(folder: string): PushKeys | null {
  const path = secretFile(folder, pushKeysName);
  const text = readPrivate(path);
  if (text === null) return null;
  const keys = keysOf(text);
  if (keys === null)
    throw new AgentError('CHANNEL_SECRET_UNUSABLE', { path, reason: 'it holds no pair of keys' });
  return keys;
}

function keysOf(text: string): PushKeys | null {
  try {
    const { publicKey, privateKey } = JSON.parse(text) as Partial<PushKeys>;
    if (typeof publicKey !== 'string' || typeof privateKey !== 'string') return null;
    const curve = createECDH('prime256v1');
    curve.setPrivateKey(Buffer.from(privateKey, 'base64url'));
    const [made, written] = [curve.getPublicKey(), Buffer.from(publicKey, 'base64url')];
    const belong = made.length === written.length && timingSafeEqual(made, written);
    return belong ? { publicKey, privateKey } : null;
  } catch {
    return null;
  }
}
