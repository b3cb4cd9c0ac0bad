/** Errors of the data folder, the store and its disk. */
import type { ErrorEntry } from './entry.ts';

export const storeErrors = {
  STORE_DISK_FULL: {
    happened: 'The disk that holds {path} is full.',
    fix: 'Free space on it; nothing acknowledged is lost, and the agent carries on by itself.',
  },
  STORE_DISK_FAILED: {
    happened: 'The disk refused an operation on {path}: {reason}.',
    fix: 'Check the disk and its cable or card; replace it if this repeats. An agent that runs still tells alarms; one that ended or did not start tells none.',
  },
  STORE_DAMAGED: {
    happened: 'The database {path} is damaged: {reason}.',
    fix: 'Start the agent again: it moves the damaged file aside, begins a new one with the settings of the latest backup and says so. An agent that runs still tells alarms; one that ended or did not start tells none.',
  },
  STORE_TAKEN_AWAY: {
    happened: '{name} {state} ({path}), while this agent writes it: nothing is kept any more.',
    fix: 'Put the file back as it was, or start the agent again, which begins a new store. Alarms are told meanwhile; messages are not acknowledged.',
  },
  STORE_TWO_AGENTS: {
    happened:
      'Another agent has taken the data folder {path}, whose agent.lock was removed or replaced: this one keeps nothing any more.',
    fix: 'Stop both, then start one. Never remove agent.lock while an agent runs.',
  },
  FOLDER_MISSING: {
    happened: 'There is no data folder {path}.',
    fix: 'Check its name. A new one is made when an agent first runs on it, or by mkdir.',
  },
  FOLDER_TAKEN: {
    happened: '{path} holds other files, and is no data folder.',
    fix: 'Name an empty folder, a new one, or a data folder with --data.',
  },
  FOLDER_UNUSABLE: {
    happened: '{path} cannot be the data folder: {reason}.',
    fix: 'Name a folder of your own on a local disk with --data.',
  },
  STORE_EMPTY: {
    happened: 'The data folder {path} holds no record yet.',
    fix: 'Run an agent on it first, or name another with --data.',
  },
  STORE_GONE: {
    happened: 'The database of the data folder {path} is gone, and there was one.',
    fix: 'Put forebond.db back; or start an agent on it, which begins a new store and says so.',
  },
  STORE_NOT_A_STORE: {
    happened: '{path} is not a Forebond store.',
    fix: 'Name the data folder with --data, or move that file away to begin a new store.',
  },
  STORE_NEWER: {
    happened: '{path} was written by a newer Forebond (schema {found}, this one knows {known}).',
    fix: 'Install that version or a later one; an older one never opens a newer store.',
  },
  STORE_OLDER: {
    happened: '{path} has schema {found}, and this command reads {known}.',
    fix: 'Start the agent on it once: it copies the database into backups/ and takes it up.',
  },
  STORE_TOO_OLD: {
    happened: '{path} has schema {found}, and this Forebond has no way from there to {known}.',
    fix: 'Open it once with the version before this one, then with this one.',
  },
  STORE_NO_WAL: {
    happened: 'The file system of {path} cannot share memory between processes.',
    fix: 'Name a folder on a local disk with --data; network shares do not do.',
  },
  STORE_SIGNAL_CHANGED: {
    happened: 'Signal "{name}" is stored as {stored} and is now to be {asked}.',
    fix: 'Give the changed signal a new id; what is stored keeps its meaning.',
  },
  STORE_CHECKPOINT_INVALID: {
    happened: '{path} is not a ledger checkpoint: {reason}.',
    fix: 'Name a file with a record number and its hash as JSON, as `ledger verify --json` prints them.',
  },
  LEDGER_ARCHIVE_TOO_NEW: {
    happened: 'Records of after {latest} are still needed by the next start.',
    fix: 'Name an earlier time with --before.',
  },
  LEDGER_ARCHIVE_EXISTS: {
    happened: 'There is a file {path} already.',
    fix: 'Name another with --to: an archive is never written over.',
  },
  LEDGER_ARCHIVE_UNREADABLE: {
    happened: '{path} is no archive of a ledger.',
    fix: 'Name a file that `ledger archive` wrote.',
  },
  STORE_LOCKED: {
    happened: 'Another agent holds the data folder {path}.',
    fix: 'Stop it first, or give this one another folder with --data.',
  },
  STORE_FRAME_UNREADABLE: {
    happened: 'Stored samples cannot be read: {reason}.',
    fix: 'They are left out and the rest serves; check the disk, and restore a backup if this repeats.',
  },
  STORE_SEAL_FAILED: {
    happened: 'The samples of the last hour could not be packed: {reason}.',
    fix: 'Nothing is lost; they stay in the log and packing is tried again. Report it if it repeats.',
  },
  STORE_SIGNAL_UNKNOWN: {
    happened: 'The store has no signal "{name}".',
    fix: 'Name one as the site file spells it, line/station/signal.',
  },
  STORE_READER_BUSY: {
    happened: '{waiting} charts are waiting to be read already.',
    fix: 'Ask again in a moment, or for fewer charts at once.',
  },
  STORE_READER_FAILED: {
    happened: 'Reading the store failed: {reason}.',
    fix: 'Ask again; if it repeats, check the disk that holds the data folder.',
  },
} as const satisfies Record<string, ErrorEntry>;
