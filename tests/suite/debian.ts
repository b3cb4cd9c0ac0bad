/**
 * Debian packages the tests need: real MQTT clients, a clock that can be set, a compiler, a
 * browser.
 *
 * As root they are installed where missing; otherwise it says what to install, and the
 * tests that need them fail and name the program they miss.
 */
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** A program, and the package that brings it. */
const needed = [
  ['mosquitto_pub', 'mosquitto-clients'],
  ['mosquitto', 'mosquitto'],
  ['faketime', 'faketime'],
  ['cc', 'build-essential'],
  ['chromium', 'chromium'],
] as const;

/** What this leans on of the machine. */
export interface Machine {
  readonly isThere: (program: string) => boolean;
  readonly isRoot: boolean;
  /** Runs apt-get; true if it ended well. */
  readonly apt: (line: readonly string[]) => boolean;
  readonly print: (line: string) => void;
}

const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/sbin', '/usr/bin'];

export const thisMachine: Machine = {
  isThere: (program) =>
    folders.some((folder) => {
      try {
        accessSync(join(folder, program), constants.X_OK);
        return true;
      } catch {
        return false; // not in this folder
      }
    }),
  isRoot: process.getuid?.() === 0,
  apt: (line) =>
    spawnSync('apt-get', ['-qq', ...line], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0,
  print: (line) => console.log(line),
};

/** Installs what is missing when it may. False where something stays missing. */
export function ensureDebianPackages(machine: Machine): boolean {
  const missing = needed
    .filter(([program]) => !machine.isThere(program))
    .map(([, packageName]) => packageName);
  if (missing.length === 0) return true;
  const words = missing.join(' ');
  if (!machine.isRoot || !machine.isThere('apt-get')) {
    machine.print(`Missing: ${words}. Install them (on Debian: sudo apt-get install ${words});`);
    machine.print('tests that need them fail until then.');
    return false;
  }
  machine.print(`Installing Debian packages: ${words}`);
  const install = ['install', '-y', '--no-install-recommends', ...missing];
  // The package lists of a fresh machine may be absent or old.
  if (machine.apt(['update']) && machine.apt(install)) return true;
  machine.print(`apt-get could not install ${words}; its reason stands above.`);
  return false;
}
