/**
 * Whose a folder is, and making it: a data folder is never begun among somebody else's files.
 */
import { mkdirSync, readdirSync, rmdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { AgentError } from '../errors.ts';

/** A folder with any of these is a data folder, or was one. */
const ownNames = [
  'forebond.db',
  'agent.lock',
  'high-water',
  'ballast',
  'backups',
  'devices.json',
  'devices-last.json',
  'people.json',
  'secrets',
  'push-devices.json',
  'checkpoint-key.pem',
  'demo.json',
];
/** What a file system or a desktop puts into a folder that nobody has used. */
const isNobodys = (name: string): boolean => name.startsWith('.') || name === 'lost+found';

export type FolderUse = 'missing' | 'file' | 'empty' | 'ours' | 'foreign';

/** Throws FOLDER_UNUSABLE where the system does not let it be looked at. */
export function useOf(folder: string): FolderUse {
  try {
    const there = statSync(folder, { throwIfNoEntry: false });
    if (there === undefined) return 'missing';
    if (!there.isDirectory()) return 'file';
    const names = readdirSync(folder).filter((name) => !isNobodys(name));
    if (names.length === 0) return 'empty';
    return names.some((name) => ownNames.includes(name)) ? 'ours' : 'foreign';
  } catch (error) {
    throw unusable(error, folder);
  }
}

/** A data folder that is there. Throws FOLDER_MISSING, FOLDER_TAKEN or FOLDER_UNUSABLE. */
export function requireFolder(folder: string): void {
  const use = useOf(folder);
  if (use === 'missing') throw new AgentError('FOLDER_MISSING', { path: folder });
  refuseOthers(folder, use);
}

/** Throws FOLDER_TAKEN where somebody else's files are, or a file. */
export function refuseOthers(folder: string, use: FolderUse = useOf(folder)): void {
  if (use === 'file')
    throw new AgentError('FOLDER_UNUSABLE', { path: folder, reason: 'it is a file' });
  if (use === 'foreign') throw new AgentError('FOLDER_TAKEN', { path: folder });
}

/**
 * Makes the folder, 0700, and those above it; gives back the ones made, outermost first.
 * Not Node's own recursive way, which never ends where the system will not have a folder, as below /proc.
 */
export function makeFolder(path: string): string[] {
  const made: string[] = [];
  try {
    makeInto(path, made);
  } catch (error) {
    removeEmpty(made);
    throw unusable(error, path);
  }
  return made;
}

function makeInto(path: string, made: string[]): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory() === true) return;
  const parent = dirname(path);
  if (parent !== path && statSync(parent, { throwIfNoEntry: false }) === undefined)
    makeInto(parent, made);
  mkdirSync(path, { mode: 0o700 });
  made.push(path);
}

/** Takes away folders that were made and hold nothing. */
export function removeEmpty(made: readonly string[]): void {
  for (const folder of made.toReversed()) {
    try {
      rmdirSync(folder);
    } catch {
      // Something came into it meanwhile, and it stays.
      return;
    }
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOTDIR: 'a part of its path is a file',
  EEXIST: 'it is a file',
  ENOENT: 'the system lets nobody make it there',
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there',
  EROFS: 'what it lies on can only be read',
  ENAMETOOLONG: 'its name is too long',
  ELOOP: 'its links lead in a circle',
  EINVAL: 'that is no name for a folder',
};

/** What is wrong with the name or the rights to it; anything else is the disk's, and passes. */
function unusable(error: unknown, path: string): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const reason = reasons[code];
  if (reason === undefined) return error;
  return new AgentError('FOLDER_UNUSABLE', { path, reason }, error);
}
