/**
 * Debian packages the tests need: real MQTT clients, a clock that can be set, a compiler.
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
] as const;

const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/sbin', '/usr/bin'];

function isThere(program: string): boolean {
  return folders.some((folder) => {
    try {
      accessSync(join(folder, program), constants.X_OK);
      return true;
    } catch {
      return false; // not in this folder
    }
  });
}

export const missingPackages = (): string[] =>
  needed.filter(([program]) => !isThere(program)).map(([, name]) => name);

/** Installs what is missing when it may. False where something stays missing. */
export function ensureDebianPackages(): boolean {
  const missing = missingPackages();
  if (missing.length === 0) return true;
  const words = missing.join(' ');
  if (process.getuid?.() !== 0 || !isThere('apt-get')) {
    console.log(`Missing: ${words}. Install them (sudo apt-get install ${words}); tests that`);
    console.log('need them fail until then.');
    return false;
  }
  console.log(`Installing Debian packages: ${words}`);
  const apt = (...line: string[]) =>
    spawnSync('apt-get', ['-qq', ...line], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  // The package lists of a fresh machine may be absent or old.
  if (apt('update') && apt('install', '-y', '--no-install-recommends', ...missing)) return true;
  console.log(`apt-get could not install ${words}; its reason stands above.`);
  return false;
}
