/**
 * The ledger's chain: hash_i = SHA-256(hash_{i-1} || record_i), hash_0 = 32 zero bytes.
 *
 * A record is the canonical JSON of `{id, ...body}`, so its number is inside what is hashed.
 * The chain shows that a record was changed, dropped or moved; against one who can rewrite the
 * whole file it proves nothing without a head kept elsewhere (`known`).
 */
import { createHash } from 'node:crypto';
import type { DatabaseSync, StatementSync } from 'node:sqlite';
import type { EpochMs } from '#rules/signal/sample.ts';
import { canonicalJson } from './canonical.ts';
import type { LedgerBody } from './contract.ts';
import { type Finding, type LedgerHead, ledgerLossKinds, lossKinds } from './store-types.ts';

export const emptyLedger: LedgerHead = { id: 0, hash: new Uint8Array(32) };

/** `id` comes from the chain; a body that brings its own is a fault of the caller. */
export function ledgerRecord(id: number, body: LedgerBody): string {
  if ('id' in body) throw new TypeError('a ledger body must not carry an id');
  return canonicalJson({ id, ...body });
}

export const chainHash = (previous: Uint8Array, record: string): Uint8Array =>
  createHash('sha256').update(previous).update(record, 'utf8').digest();

/** A head known from outside the database; `hash` may be its first bytes only. */
export interface KnownHead {
  readonly id: number;
  readonly hash: Uint8Array;
}

/** A loss that the record itself speaks of: what a start found missing, and entered. */
export interface NotedLoss {
  /** Of the record that says so. */
  readonly id: number;
  readonly at: EpochMs;
  /** As the agent said it then. */
  readonly words: string;
  /** Records of the ledger itself are missing, or may be. */
  readonly ofLedger: boolean;
}

export type LedgerVerdict =
  | {
      readonly ok: true;
      readonly count: number;
      readonly head: LedgerHead;
      readonly noted: readonly NotedLoss[];
    }
  | { readonly ok: false; readonly id: number; readonly why: 'changed' | 'missing' | 'swapped' };

interface ChainRow {
  readonly id: number;
  readonly record: string;
  readonly hash: Uint8Array;
}

const bad = (id: number, why: 'changed' | 'missing' | 'swapped'): LedgerVerdict => ({
  ok: false,
  id,
  why,
});

/**
 * Recomputes the chain from the archive's anchor on; names the first record that is not as it was.
 * Reads in slices, each its own read, so that it does not hold up a running agent's checkpoints.
 * `known` heads must lie on the chain.
 */
export function verifyLedger(db: DatabaseSync, known: readonly KnownHead[] = []): LedgerVerdict {
  let head = anchorOf(db);
  const noted: NotedLoss[] = [];
  const slice = db.prepare(
    'SELECT id, record, hash FROM ledger WHERE id > ? ORDER BY id LIMIT 1000',
  );
  const one = db.prepare('SELECT record FROM ledger WHERE id = ?');
  for (;;) {
    const rows = slice.all(head.id) as unknown as ChainRow[];
    for (const row of rows) {
      const verdict = verifyNext(head, row, one);
      if (verdict !== null) return verdict;
      head = { id: row.id, hash: row.hash };
      noted.push(...lossIn(row));
      const here = head;
      if (known.some((mark) => mark.id === here.id && !startsWith(here.hash, mark.hash))) {
        return bad(row.id, 'changed');
      }
    }
    if (rows.length === 0) break;
  }
  const end = head.id;
  if (known.some((mark) => mark.id > end)) return bad(end + 1, 'missing');
  return { ok: true, count: head.id, head, noted };
}

function lossIn({ id, record }: ChainRow): NotedLoss[] {
  // Most records are none; only those are taken apart.
  if (!record.includes('"type":"finding"')) return [];
  const { type, at, finding, words } = JSON.parse(record) as {
    readonly type: string;
    readonly at: EpochMs;
    readonly finding: Finding;
    readonly words: string;
  };
  if (type !== 'finding' || !lossKinds.includes(finding.kind)) return [];
  return [{ id, at, words, ofLedger: ledgerLossKinds.includes(finding.kind) }];
}

/** Last record that was archived; the chain in the database begins after it. */
export function anchorOf(db: DatabaseSync): LedgerHead {
  const row = db.prepare('SELECT id, hash FROM ledger_anchor ORDER BY id DESC LIMIT 1').get();
  return row === undefined ? emptyLedger : (row as unknown as LedgerHead);
}

/** End of the chain as stored, unverified. */
export function storedHead(db: DatabaseSync): LedgerHead {
  const row = db.prepare('SELECT id, hash FROM ledger ORDER BY id DESC LIMIT 1').get();
  return row === undefined ? anchorOf(db) : (row as unknown as LedgerHead);
}

function verifyNext(head: LedgerHead, row: ChainRow, one: StatementSync): LedgerVerdict | null {
  const expected = head.id + 1;
  if (row.id !== expected) return bad(expected, 'missing');
  const inside = idInside(row.record);
  if (inside !== row.id) {
    if (inside === null) return bad(row.id, 'changed');
    const there = one.get(inside);
    const exchanged = there !== undefined && idInside(String(there.record)) === row.id;
    if (exchanged) return bad(row.id, 'swapped');
    return bad(row.id, inside > row.id ? 'missing' : 'changed');
  }
  const same = startsWith(chainHash(head.hash, row.record), row.hash) && row.hash.length === 32;
  return same ? null : bad(row.id, 'changed');
}

function idInside(record: string): number | null {
  try {
    const value: unknown = JSON.parse(record);
    if (value === null || typeof value !== 'object' || !('id' in value)) return null;
    return typeof value.id === 'number' ? value.id : null;
  } catch {
    // Not JSON any more: the record was changed, which is the answer, not a failure.
    return null;
  }
}

const startsWith = (whole: Uint8Array, start: Uint8Array): boolean =>
  start.length <= whole.length && start.every((byte, i) => byte === whole[i]);
