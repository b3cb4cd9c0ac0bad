/**
 * A data folder as SIGKILL leaves it, with its write-ahead log not taken into the main file, and
 * copies of it to damage.
 */
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { addDevice, scratchFolder, siteFile, startAgentProcess } from '#tests/agent-process.ts';
import { Publishers } from './publishers.ts';
import { smallWorks } from './small-works.ts';

export interface Crashed {
  readonly folder: string;
  readonly site: string;
  readonly publishers: Publishers;
}

/** An agent under load for so long, a quiet second and a half in which its mark is noted, SIGKILL. */
export async function crashedFolder(
  loadMs: number,
  beforeKill: (folder: string) => void = () => undefined,
): Promise<Crashed> {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const site = siteFile(parent, smallWorks);
  const device = await addDevice(folder, 'hall', { publish: ['hall/#'] });
  const publishers = new Publishers();
  const agent = await startAgentProcess({ site, folder });
  await publishers.start(agent.mqtt, device);
  await wait(loadMs);
  await publishers.stop();
  await wait(1_500);
  beforeKill(folder);
  await agent.kill();
  return { folder, site, publishers };
}

export const logOf = (folder: string): string => join(folder, 'forebond.db-wal');

/** Runs `act` on a copy of the folder whose log was changed. */
export async function onDamagedCopy<T>(
  folder: string,
  damage: (log: Buffer) => Buffer,
  act: (copy: string) => T | Promise<T>,
): Promise<T> {
  const copy = `${folder}-copy`;
  cpSync(folder, copy, { recursive: true });
  writeFileSync(logOf(copy), damage(readFileSync(logOf(folder))));
  try {
    return await act(copy);
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}
