/**
 * Reads small things on the writing thread: settings, open alarms and holds, the log after a point.
 *
 * Long sequences are read in slices, each its own read, so that no read stays open across a commit.
 */
import type { DatabaseSync } from 'node:sqlite';
import type { EpochMs } from '#rules/signal/sample.ts';
import { inputCrc, stateCrc } from './checksum.ts';
import type {
  HoldRow,
  InputRow,
  OccurrenceRow,
  OutboxRow,
  OvenRunRow,
  StoredSignal,
} from './contract.ts';
import type {
  CommandRow,
  LedgerRow,
  RunRow,
  SegmentRow,
  SiteRevisionRow,
  SnapshotRow,
  StoreReader,
} from './store-types.ts';

const sliceRows = 256;
type Bound = number | string;

/** Rows whose columns the query named as T's fields; STRICT tables vouch for their types. */
const all = <T>(db: DatabaseSync, sql: string, ...bound: Bound[]): T[] =>
  db.prepare(sql).all(...bound) as unknown as T[];

const first = <T>(db: DatabaseSync, sql: string, ...bound: Bound[]): T | null =>
  all<T>(db, `${sql} LIMIT 1`, ...bound)[0] ?? null;

/** Rows after `after` by the ascending column the query calls `place`, a slice at a time. */
function* slices<T>(db: DatabaseSync, sql: string, after: number, placeOf: (row: T) => number) {
  const statement = db.prepare(`${sql} LIMIT ${sliceRows}`);
  for (let place = after; ; ) {
    const rows = statement.all(place) as unknown as T[];
    yield* rows;
    const last = rows.at(-1);
    if (last === undefined) return;
    place = placeOf(last);
  }
}

function* inputsAfter(
  db: DatabaseSync,
  seq: number,
  damaged: (row: { readonly seq: number; readonly judged: EpochMs }) => void,
): IterableIterator<InputRow> {
  const sql = 'SELECT seq, judged, kind, body, crc FROM input WHERE seq > ? ORDER BY seq';
  for (const row of slices<InputRow & { crc: number }>(db, sql, seq, (r) => r.seq)) {
    if (inputCrc(row) === row.crc) {
      yield { seq: row.seq, judged: row.judged, kind: row.kind, body: row.body };
    } else {
      damaged({ seq: row.seq, judged: row.judged });
    }
  }
}

/** Snapshots as stored, newest first, each with whether its checksum holds. */
export function storedSnapshots(db: DatabaseSync): { row: SnapshotRow; sound: boolean }[] {
  const rows = all<SnapshotRow & { crc: number }>(
    db,
    'SELECT seq, judged, format, revision, state, crc FROM snapshot ORDER BY seq DESC',
  );
  return rows.map(({ crc, ...row }) => ({ row, sound: stateCrc(row.state) === crc }));
}

const runColumns = `SELECT id, started, last_alive AS lastAlive, judged_to AS judgedTo, stopped
  FROM run ORDER BY id DESC`;
const revisionColumns = 'SELECT hash, first_seq AS firstSeq, text FROM site_revision';
const occurrenceColumns = 'SELECT id, rule, state, raised, closed, detail FROM occurrence';
const ovenRunColumns = 'SELECT id, station, opened, closed, detail FROM oven_run';
const outboxColumns =
  'SELECT occurrence, step, channel, due, tries, done, outcome, cause, detail FROM outbox';
const holdColumns = 'SELECT id, what, item, since, lifted, detail FROM hold';

export const lastRun = (db: DatabaseSync): RunRow | null => first<RunRow>(db, runColumns);

export function storeReader(db: DatabaseSync): StoreReader {
  return {
    signals: () =>
      all<StoredSignal>(db, 'SELECT id, name, unit, digits, kind FROM signal ORDER BY id'),
    siteRevisions: () => all<SiteRevisionRow>(db, `${revisionColumns} ORDER BY first_seq, rowid`),
    siteRevision: (hash) => first<SiteRevisionRow>(db, `${revisionColumns} WHERE hash = ?`, hash),
    inputsAfter: (seq, damaged) => inputsAfter(db, seq, damaged),
    commandsAfter: (seq) =>
      slices<CommandRow>(
        db,
        'SELECT seq, judged, body FROM command WHERE seq > ? ORDER BY seq',
        seq,
        (row) => row.seq,
      ),
    ledgerAfter: (id) =>
      slices<LedgerRow>(
        db,
        'SELECT id, record FROM ledger WHERE id > ? ORDER BY id',
        id,
        (row) => row.id,
      ),
    occurrence: (id) => first<OccurrenceRow>(db, `${occurrenceColumns} WHERE id = ?`, id),
    openOccurrences: () =>
      all<OccurrenceRow>(db, `${occurrenceColumns} WHERE closed IS NULL ORDER BY raised, id`),
    occurrencesBetween: (from, to) =>
      all<OccurrenceRow>(
        db,
        `${occurrenceColumns} WHERE raised < ?1 AND closed IS NULL
         UNION ALL ${occurrenceColumns} WHERE raised < ?1 AND closed >= ?2 ORDER BY raised, id`,
        to,
        from,
      ),
    openHolds: () => all<HoldRow>(db, `${holdColumns} WHERE lifted IS NULL ORDER BY since, id`),
    waitingOutbox: () => all<OutboxRow>(db, `${outboxColumns} WHERE done IS NULL ORDER BY id`),
    outboxOf: (occurrence) =>
      all<OutboxRow>(db, `${outboxColumns} WHERE occurrence = ? ORDER BY id`, occurrence),
    holds: () => all<HoldRow>(db, `${holdColumns} ORDER BY since, id`),
    ovenRun: (id) => first<OvenRunRow>(db, `${ovenRunColumns} WHERE id = ?`, id),
    ovenRuns: (from, to, limit, station) =>
      all<OvenRunRow>(
        db,
        `${ovenRunColumns} WHERE opened < ?1 AND (closed IS NULL OR closed >= ?2)
         AND (?3 = '' OR station = ?3) ORDER BY opened DESC, id LIMIT ?4`,
        to,
        from,
        station ?? '',
        limit,
      ),
    segments: () =>
      all<SegmentRow>(
        db,
        `SELECT id, first_seq AS firstSeq, last_seq AS lastSeq, judged_from AS judgedFrom,
         judged_to AS judgedTo FROM segment ORDER BY id`,
      ),
    snapshots: () =>
      storedSnapshots(db)
        .filter((snapshot) => snapshot.sound)
        .map((snapshot) => snapshot.row),
    runs: (limit) => all<RunRow>(db, `${runColumns} LIMIT ?`, limit),
  };
}
