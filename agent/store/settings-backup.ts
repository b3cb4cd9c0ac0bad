/**
 * The automatic backup: what people set and what must not be forgotten, in a small file of a day.
 *
 * It is what a store begun anew takes over (restore-settings.ts). The file is replaced whole.
 */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { limits } from '../limits.ts';
import { type FolderPaths, stampOf, touchPrivate } from './data-folder.ts';
import { onDisk } from './disk-error.ts';
import { applicationId, schemaVersion, settingsTables } from './schema.ts';

const ownName = /^settings-\d{8}\.db$/;

export class SettingsBackup {
  private readonly db: DatabaseSync;
  private readonly paths: FolderPaths;
  private day = '';
  private stale = true;

  constructor(db: DatabaseSync, paths: FolderPaths) {
    this.db = db;
    this.paths = paths;
  }

  /** Something that it holds was changed. */
  changed(): void {
    this.stale = true;
  }

  /** Writes the day's file where it is not there or no longer so. Throws as the disk does. */
  tend(atMs: number): boolean {
    const day = stampOf(atMs).slice(0, 8);
    if (!this.stale && day === this.day) return false;
    onDisk(this.paths.backups, () => this.write(`settings-${day}.db`));
    this.stale = false;
    this.day = day;
    return true;
  }

  private write(name: string): void {
    const { backups } = this.paths;
    if (!existsSync(backups)) mkdirSync(backups, { mode: 0o700 });
    const file = join(backups, name);
    const part = `${file}.part`;
    rmSync(part, { force: true });
    try {
      touchPrivate(part);
      this.copyInto(part);
      renameSync(part, file);
    } finally {
      rmSync(part, { force: true });
    }
    const kept = readdirSync(backups)
      .filter((each) => ownName.test(each))
      .sort()
      .reverse();
    for (const old of kept.slice(limits.settingsBackupsKept)) rmSync(join(backups, old));
  }

  /** On a connection of its own: what this file meets on the disk must not touch the record's. */
  private copyInto(part: string): void {
    const copy = new DatabaseSync(part);
    try {
      copy.exec(`PRAGMA journal_mode = MEMORY;
PRAGMA application_id = ${applicationId};
PRAGMA user_version = ${schemaVersion};
BEGIN`);
      for (const table of settingsTables) this.copyTable(copy, table);
      copy.exec('COMMIT');
    } finally {
      copy.close();
    }
  }

  private copyTable(copy: DatabaseSync, table: string): void {
    const columns = this.db
      .prepare('SELECT name FROM pragma_table_info(?)')
      .all(table)
      .map(({ name }) => String(name));
    copy.exec(`CREATE TABLE ${table}(${columns.join(', ')})`);
    const places = columns.map(() => '?').join(', ');
    const insert = copy.prepare(`INSERT INTO ${table} VALUES(${places})`);
    for (const row of this.db.prepare(`SELECT * FROM ${table}`).iterate())
      insert.run(...columns.map((column) => row[column] ?? null));
  }
}
