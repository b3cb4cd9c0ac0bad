/**
 * From an older schema to this one: one step a version, each whole or not at all.
 *
 * The store is copied into `backups/` before the first step. A newer store is never opened.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { AgentError } from '../errors.ts';
import { type FolderPaths, stampOf, touchPrivate } from './data-folder.ts';
import { outboxWhole, ovenRunTable, pragmaNumber, schemaVersion } from './schema.ts';
import type { Finding } from './store-types.ts';

/** Takes a store from schema `from` to `from + 1`. */
export interface Migration {
  readonly from: number;
  readonly apply: (db: DatabaseSync) => void;
}

/** Version 1 is the first; later versions add their step here. */
export const migrations: readonly Migration[] = [
  { from: 1, apply: (db) => db.exec(ovenRunTable) },
  { from: 2, apply: (db) => db.exec(outboxWhole) },
];

/** Whether opening to write would take up a store of that schema. */
export const hasWay = (found: number): boolean =>
  found < schemaVersion &&
  Array.from({ length: schemaVersion - found }, (_, i) => found + i).every((version) =>
    migrations.some(({ from }) => from === version),
  );

/**
 * Brings the store to `known`; null if it was there already.
 * Throws STORE_NEWER, STORE_TOO_OLD (no step from what was found), or what a step threw.
 */
export function migrate(
  db: DatabaseSync,
  paths: FolderPaths,
  atMs: number,
  steps: readonly Migration[] = migrations,
  known: number = schemaVersion,
): Extract<Finding, { kind: 'migrated' }> | null {
  const found = pragmaNumber(db, 'user_version');
  if (found === known) return null;
  const facts = { path: paths.database, found, known };
  if (found > known) throw new AgentError('STORE_NEWER', facts);
  const way = Array.from({ length: known - found }, (_, i) =>
    steps.find((step) => step.from === found + i),
  );
  if (way.includes(undefined)) throw new AgentError('STORE_TOO_OLD', facts);
  const backup = `before-schema-${known}-${stampOf(atMs)}.db`;
  copyInto(db, paths, backup);
  for (const step of way) if (step !== undefined) applyStep(db, step);
  return { kind: 'migrated', from: found, to: known, backup };
}

function copyInto(db: DatabaseSync, paths: FolderPaths, name: string): void {
  mkdirSync(paths.backups, { recursive: true, mode: 0o700 });
  const file = join(paths.backups, name);
  touchPrivate(file);
  db.prepare('VACUUM INTO ?').run(file);
}

function applyStep(db: DatabaseSync, step: Migration): void {
  db.exec('BEGIN IMMEDIATE');
  try {
    step.apply(db);
    db.exec(`PRAGMA user_version = ${step.from + 1}; COMMIT`);
  } catch (error) {
    if (db.isTransaction) db.exec('ROLLBACK');
    throw error;
  }
}
