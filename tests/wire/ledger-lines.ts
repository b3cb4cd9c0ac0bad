/** The ledger of a folder, read as it is. */
import { ReadOnlyStore } from '#agent/store/read-only.ts';

export type LedgerRecord = { readonly type: string } & Readonly<Record<string, unknown>>;

/** Every record, oldest first. */
export function ledgerOf(folder: string): LedgerRecord[] {
  const store = ReadOnlyStore.open(folder);
  const rows = store.db.prepare('SELECT record FROM ledger ORDER BY id').all();
  store.close();
  return rows.map(({ record }) => JSON.parse(String(record)));
}
