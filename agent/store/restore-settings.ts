/**
 * Takes the settings of the newest readable backup into a store begun anew.
 */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import type { FolderPaths } from './data-folder.ts';
import { sqliteCode } from './disk-error.ts';
import {
  applicationId,
  pragmaNumber,
  schemaVersion,
  settingsSince,
  settingsTables,
} from './schema.ts';

type Rows = Readonly<Record<string, string | number | null>>[];

/** Name of the backup taken; null if there is none that can be read. */
export function restoreSettings(db: DatabaseSync, paths: FolderPaths): string | null {
  for (const name of newestFirst(paths.backups)) {
    const settings = readSettings(join(paths.backups, name));
    if (settings === null) continue;
    db.exec('BEGIN IMMEDIATE');
    for (const [table, rows] of settings) insertAll(db, table, rows);
    db.exec('COMMIT');
    return name;
  }
  return null;
}

/** Only an agent that has run leaves one. */
export const hasBackup = (paths: FolderPaths): boolean => newestFirst(paths.backups).length > 0;

function newestFirst(folder: string): string[] {
  if (!existsSync(folder)) return [];
  const age = (name: string): number => statSync(join(folder, name)).mtimeMs;
  return readdirSync(folder)
    .filter((name) => name.endsWith('.db'))
    .sort((a, b) => age(b) - age(a));
}

/** Null if the file is no store whose settings fit, or cannot be read: the next one is tried. */
function readSettings(file: string): [string, Rows][] | null {
  const backup = new DatabaseSync(file, { readOnly: true });
  try {
    if (pragmaNumber(backup, 'application_id') !== applicationId) return null;
    const version = pragmaNumber(backup, 'user_version');
    if (version < settingsSince || version > schemaVersion) return null;
    return settingsTables.map((table) => [
      table,
      backup.prepare(`SELECT * FROM ${table}`).all() as unknown as Rows,
    ]);
  } catch (error) {
    if (sqliteCode(error) === null) throw error;
    return null;
  } finally {
    backup.close();
  }
}

function insertAll(db: DatabaseSync, table: string, rows: Rows): void {
  const columns = Object.keys(rows[0] ?? {});
  if (columns.length === 0) return;
  const places = columns.map(() => '?').join(', ');
  const insert = db.prepare(`INSERT INTO ${table}(${columns.join(', ')}) VALUES(${places})`);
  for (const row of rows) insert.run(...columns.map((column) => row[column] ?? null));
}
