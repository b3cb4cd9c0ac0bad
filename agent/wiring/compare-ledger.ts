/**
 * What was recomputed at a start against what stands in the ledger.
 */
import type { Effect } from '#rules/input.ts';
import { ledgerBody } from '../alarms/desk.ts';
import { canonicalJson } from '../store/canonical.ts';
import type { StoreReader } from '../store/store-types.ts';

export interface Compared {
  /** How many of the effects stand in the ledger already. */
  readonly known: number;
  /** The first record that differs from what was recomputed; null where all agree. */
  readonly differs: { readonly ledgerId: number; readonly recomputed: unknown } | null;
}

const effectTypes: ReadonlySet<string> = new Set([
  'transition',
  'judgeable',
  'hold',
  'run',
  'mark',
  'extension',
  'refused',
]);

/** The ledger's last record from when judging began anew; 0 where it never did. */
export function begunAnewId(read: StoreReader): number {
  let last = 0;
  // Most records are none, and need not be taken apart.
  for (const { id, record } of read.ledgerAfter(0))
    if (record.includes('"type":"begun-anew"') && JSON.parse(record).type === 'begun-anew')
      last = id;
  return last;
}

/** `effects`: all since the ledger stood at `ledgerId`, in order. */
export function compareWithLedger(
  read: StoreReader,
  ledgerId: number,
  effects: readonly Effect[],
): Compared {
  let known = 0;
  for (const { id, record } of read.ledgerAfter(ledgerId)) {
    const {
      id: _,
      told_before_kept: __,
      ...body
    } = JSON.parse(record) as { type: string } & Record<string, unknown>;
    if (!effectTypes.has(body.type)) continue;
    const effect = effects[known];
    known += 1;
    const recomputed = effect === undefined ? null : ledgerBody(effect);
    if (recomputed === null || canonicalJson(recomputed) !== canonicalJson(body))
      return { known: effects.length, differs: { ledgerId: id, recomputed } };
  }
  return { known, differs: null };
}
