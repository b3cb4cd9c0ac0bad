/**
 * Verifies the ledger of a data folder, whether an agent is running on it or not.
 *
 * A database that is damaged is said to be so, however whole the chain in it looks.
 * The chain is held to the high-water file too, so that an end cut off is noticed, and to a
 * checkpoint that somebody kept elsewhere.
 */
import { readFileSync } from 'node:fs';
import { AgentError } from '../errors.ts';
import { requireSigned } from './checkpoint.ts';
import { pathsOf } from './data-folder.ts';
import { onDisk } from './disk-error.ts';
import { readHighWater } from './high-water.ts';
import { type KnownHead, type LedgerVerdict, verifyLedger } from './ledger.ts';
import { damageIn } from './quick-check.ts';
import { ReadOnlyStore } from './read-only.ts';

export type FolderVerdict =
  | (LedgerVerdict & { readonly ok: false })
  /** `damage`: what is wrong with the database that holds the chain; null where nothing is. */
  | (LedgerVerdict & { readonly ok: true } & { readonly damage: string | null });

/**
 * `checkpoint` is a file of JSON with `id` and `hash` (64 hex digits). Throws
 * STORE_CHECKPOINT_INVALID, and what `ReadOnlyStore.open` throws.
 */
export function verifyFolder(folder: string, checkpoint?: string): FolderVerdict {
  const known = checkpoint === undefined ? [] : [readCheckpoint(folder, checkpoint)];
  // Read before the database: what it says has then been committed when the chain is read.
  const mark = readHighWater(pathsOf(folder).highWater);
  if (mark !== null && mark !== 'unreadable' && mark.ledgerId > 0) {
    known.push({ id: mark.ledgerId, hash: mark.hash16 });
  }
  const store = ReadOnlyStore.open(folder);
  try {
    return onDisk(store.path, () => {
      const verdict = verifyLedger(store.db, known);
      return verdict.ok ? { ...verdict, damage: damageIn(store.db) } : verdict;
    });
  } finally {
    store.close();
  }
}

function readCheckpoint(folder: string, path: string): KnownHead {
  const invalid = (reason: string, cause?: unknown) =>
    new AgentError('STORE_CHECKPOINT_INVALID', { path, reason }, cause);
  let value: unknown;
  try {
    value = JSON.parse(readFileSync(path, 'utf8'));
  } catch (error) {
    throw invalid(error instanceof Error ? error.message : 'unreadable', error);
  }
  if (value === null || typeof value !== 'object') throw invalid('it holds no object');
  const id = 'id' in value ? value.id : null;
  const hash = 'hash' in value ? value.hash : null;
  if (typeof id !== 'number' || !Number.isSafeInteger(id) || id < 1) {
    throw invalid('"id" is no record number');
  }
  if (typeof hash !== 'string' || !/^[0-9a-f]{64}$/i.test(hash)) {
    throw invalid('"hash" is not 64 hex digits');
  }
  requireSigned(folder, path, value);
  return { id, hash: Buffer.from(hash, 'hex') };
}
