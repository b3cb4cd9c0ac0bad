/**
 * Signals as the store knows them: an id once given is never given to another meaning.
 */
import type { DatabaseSync } from 'node:sqlite';
import { AgentError } from '../errors.ts';
import type { StoredSignal } from './contract.ts';

type Asked = Omit<StoredSignal, 'id'>;

const inWords = (signal: Asked): string =>
  `${signal.kind} in ${signal.unit}${signal.digits === null ? '' : ` to ${signal.digits} decimals`}`;

/** Throws STORE_SIGNAL_CHANGED where a stored name is asked for with another unit, kind or digits. */
export function signalIds(db: DatabaseSync, asked: readonly Asked[]): StoredSignal[] {
  const find = db.prepare('SELECT id, name, unit, digits, kind FROM signal WHERE name = ?');
  const add = db.prepare('INSERT INTO signal(name, unit, digits, kind) VALUES(?,?,?,?)');
  return asked.map((signal) => {
    const row = find.get(signal.name);
    if (row === undefined) {
      const { lastInsertRowid } = add.run(signal.name, signal.unit, signal.digits, signal.kind);
      return { ...signal, id: Number(lastInsertRowid) };
    }
    const stored = row as unknown as StoredSignal;
    if (inWords(stored) !== inWords(signal)) {
      const facts = { name: signal.name, stored: inWords(stored), asked: inWords(signal) };
      throw new AgentError('STORE_SIGNAL_CHANGED', facts);
    }
    return { ...stored };
  });
}
