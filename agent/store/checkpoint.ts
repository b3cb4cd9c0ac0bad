/**
 * Signed checkpoints of the ledger: its head, with the key of this folder (Ed25519, RFC 8032).
 *
 * Kept elsewhere, one shows that the end of the chain was cut off or that all of it was written
 * anew: then its record is not there any more, or has another hash. The signature shows that the
 * checkpoint itself is the agent's word. Against one who has the folder's key it proves nothing.
 */
import {
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto';
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { AgentError } from '../errors.ts';
import { canonicalJson } from './canonical.ts';
import { onDisk } from './disk-error.ts';
import type { LedgerHead } from './store-types.ts';

export interface Checkpoint {
  readonly site: string;
  readonly at: string;
  /** Of the record. */
  readonly id: number;
  /** 64 hex digits. */
  readonly hash: string;
  /** Public key, base64url of its 32 bytes. */
  readonly key: string;
  /** Over the canonical JSON of all the rest, base64url. */
  readonly signature: string;
}

const keyPath = (folder: string): string => join(folder, 'checkpoint-key.pem');

/** The folder's key, made with the first checkpoint; 0600. Throws as the disk refuses. */
export function checkpointKey(folder: string): KeyObject {
  const path = keyPath(folder);
  return onDisk(path, () => {
    if (existsSync(path)) return createPrivateKey(readFileSync(path));
    const { privateKey } = generateKeyPairSync('ed25519');
    // Whole or not at all: half a key would be in the way for ever.
    const fresh = `${path}.new`;
    rmSync(fresh, { force: true });
    const pem = privateKey.export({ type: 'pkcs8', format: 'pem' });
    writeFileSync(fresh, pem, { mode: 0o600, flag: 'wx' });
    renameSync(fresh, path);
    return privateKey;
  });
}

const publicText = (key: KeyObject): string => {
  const { x } = createPublicKey(key).export({ format: 'jwk' });
  if (x === undefined) throw new Error('an Ed25519 key has an x');
  return x;
};

export function signedCheckpoint(
  key: KeyObject,
  site: string,
  head: LedgerHead,
  atMs: number,
): Checkpoint {
  const body = {
    site,
    at: new Date(atMs).toISOString(),
    id: head.id,
    hash: Buffer.from(head.hash).toString('hex'),
    key: publicText(key),
  };
  return { ...body, signature: sign(null, bytesOf(body), key).toString('base64url') };
}

const bytesOf = (body: Omit<Checkpoint, 'signature'>): Buffer => Buffer.from(canonicalJson(body));

/**
 * Throws STORE_CHECKPOINT_INVALID where the signature is not that of its key, or its key not the
 * folder's. One without a signature passes: a head that somebody wrote down.
 */
export function requireSigned(folder: string, path: string, value: object): void {
  if (!('signature' in value)) return;
  const { signature, ...body } = value as Checkpoint;
  const invalid = (reason: string) => new AgentError('STORE_CHECKPOINT_INVALID', { path, reason });
  const { key } = body;
  if (typeof signature !== 'string' || typeof key !== 'string') throw invalid('it is not signed');
  if (!isSignedBy(key, body, signature)) throw invalid('its signature does not hold');
  const own = keyPath(folder);
  if (existsSync(own) && publicText(createPrivateKey(readFileSync(own))) !== key)
    throw invalid('another data folder signed it');
}

function isSignedBy(x: string, body: Omit<Checkpoint, 'signature'>, signature: string): boolean {
  try {
    const key = createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x }, format: 'jwk' });
    return verify(null, bytesOf(body), key, Buffer.from(signature, 'base64url'));
  } catch {
    // No key at all: what it signs is signed by nobody.
    return false;
  }
}
