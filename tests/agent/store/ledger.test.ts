import { DatabaseSync } from 'node:sqlite';
import { describe, expect, test } from 'vitest';
import { chainHash, emptyLedger, ledgerRecord, verifyLedger } from '#agent/store/ledger.ts';
import { freshFolder, openRunning } from './folders.ts';
import { noted, turnOf } from './turns.ts';

describe('the chain', () => {
  // Constructed by the same rule, h_i = SHA-256(h_{i-1} || RFC 8785 of the entry), with another program.
  const vectors = [
    [
      { id: 1, msg: 'boot', t: '2026-01-01T00:00:00Z' },
      '4597cbed6df3ca90792da7e1239768343deb21172891c919b90fa90ea6e3f088',
    ],
    [
      { ack: 'op1', id: 2, t: '2026-01-01T00:01:00Z' },
      '7dc19770de4200a8565abff12e7d84b62079cb11919037d4b24960fad0c287ae',
    ],
    [
      { id: 3, t: '2026-01-01T00:02:00Z', v: 150.5 },
      '98c2e84e0af52d57c6c7406693cde2c1e1df5e2c869c2aa757e12da584fad4c9',
    ],
  ] as const;
  test('three records of the vector', () => {
    let hash = emptyLedger.hash;
    for (const [{ id, ...body }, expected] of vectors) {
      hash = chainHash(hash, ledgerRecord(id, body as unknown as { type: string }));
      expect(Buffer.from(hash).toString('hex')).toBe(expected);
    }
  });
  test('a body with an id of its own is refused', () => {
    expect(() => ledgerRecord(1, { type: 'x', id: 7 })).toThrow(TypeError);
  });
});

/** A ledger of twelve records in a closed store, open for tampering. */
function twelve(): DatabaseSync {
  const folder = freshFolder();
  const store = openRunning(folder);
  for (let seq = 1; seq <= 6; seq += 1) store.commit(turnOf(seq, [noted(seq), noted(seq + 100)]));
  store.stopRun(9_000);
  store.close();
  return new DatabaseSync(store.path);
}

function swap(db: DatabaseSync, columns: readonly ('record' | 'hash')[]): void {
  const read = db.prepare('SELECT record, hash FROM ledger WHERE id = ?');
  const [four, seven] = [read.get(4), read.get(7)];
  for (const column of columns) {
    const write = db.prepare(`UPDATE ledger SET ${column} = ? WHERE id = ?`);
    write.run(seven![column]!, 4);
    write.run(four![column]!, 7);
  }
}

describe('verifying', () => {
  test('an untouched ledger is whole', () => {
    const db = twelve();
    const verdict = verifyLedger(db);
    expect(verdict).toMatchObject({ ok: true, count: 12, head: { id: 12 } });
  });
  test('an empty ledger is whole', () => {
    const store = openRunning(freshFolder());
    store.close();
    expect(verifyLedger(new DatabaseSync(store.path))).toMatchObject({ ok: true, count: 0 });
  });

  const tampered: [string, (db: DatabaseSync) => void, number, string][] = [
    [
      'one byte of a record changed',
      (db) =>
        db.exec(`UPDATE ledger SET record = replace(record, '"test"', '"tesu"') WHERE id = 5`),
      5,
      'changed',
    ],
    [
      'a record is no JSON',
      (db) => db.exec(`UPDATE ledger SET record = '{' WHERE id = 5`),
      5,
      'changed',
    ],
    [
      'one byte of a hash changed',
      (db) => db.exec(`UPDATE ledger SET hash = zeroblob(32) WHERE id = 5`),
      5,
      'changed',
    ],
    [
      'a hash cut short',
      (db) => db.exec('UPDATE ledger SET hash = substr(hash, 1, 16) WHERE id = 5'),
      5,
      'changed',
    ],
    ['one dropped', (db) => db.exec('DELETE FROM ledger WHERE id = 5'), 5, 'missing'],
    ['the first dropped', (db) => db.exec('DELETE FROM ledger WHERE id = 1'), 1, 'missing'],
    [
      'one dropped and the rest moved up',
      (db) => {
        db.exec('DELETE FROM ledger WHERE id = 5');
        for (let id = 6; id <= 12; id += 1) {
          db.exec(`UPDATE ledger SET id = ${id - 1} WHERE id = ${id}`);
        }
      },
      5,
      'missing',
    ],
    ['two swapped, hashes left', (db) => swap(db, ['record']), 4, 'swapped'],
    ['two swapped with their hashes', (db) => swap(db, ['record', 'hash']), 4, 'swapped'],
  ];
  for (const [name, tamper, id, why] of tampered) {
    test(name, () => {
      const db = twelve();
      tamper(db);
      expect(verifyLedger(db)).toEqual({ ok: false, id, why });
    });
  }

  test('a chain begun after an archive is verified from its anchor', () => {
    const db = twelve();
    db.exec(`INSERT INTO ledger_anchor SELECT id, hash FROM ledger WHERE id = 4;
      DELETE FROM ledger WHERE id <= 4`);
    expect(verifyLedger(db)).toMatchObject({ ok: true, count: 12 });
    db.exec('UPDATE ledger_anchor SET hash = zeroblob(32)');
    expect(verifyLedger(db)).toEqual({ ok: false, id: 5, why: 'changed' });
  });
});

describe('heads known from elsewhere', () => {
  test('a tail cut off is missing, which the chain alone cannot show', () => {
    const db = twelve();
    const whole = verifyLedger(db);
    if (!whole.ok) throw new Error('the ledger was not whole to begin with');
    db.exec('DELETE FROM ledger WHERE id > 9');
    expect(verifyLedger(db)).toMatchObject({ ok: true, count: 9 });
    expect(verifyLedger(db, [whole.head])).toEqual({ ok: false, id: 10, why: 'missing' });
  });
  test('a chain wholly rewritten differs from the head', () => {
    const db = twelve();
    const other = { id: 3, hash: new Uint8Array(16).fill(7) };
    expect(verifyLedger(db, [other])).toEqual({ ok: false, id: 3, why: 'changed' });
    const { hash } = db.prepare('SELECT hash FROM ledger WHERE id = 3').get() as {
      hash: Uint8Array;
    };
    expect(verifyLedger(db, [{ id: 3, hash: hash.subarray(0, 16) }])).toMatchObject({ ok: true });
  });
});
