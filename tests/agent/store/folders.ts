/**
 * Data folders for the store's tests, and stores in them.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openStore } from '#agent/store/store.ts';
import type { Store, StoreOptions } from '#agent/store/store-types.ts';

/** A folder name that does not exist yet; gone when the test is. */
export function freshFolder(): string {
  const parent = mkdtempSync(join(tmpdir(), 'forebond-store-'));
  onTestFinished(() => rmSync(parent, { recursive: true, force: true }));
  return join(parent, 'data');
}

export const wallMs = Date.UTC(2026, 10, 25, 9, 32, 12);

/** Opened without a ballast, unless a test is about it; closed with the test if it is still open. */
export function openAt(folder: string, options: Partial<StoreOptions> = {}): Store {
  return openStore(folder, { now: () => wallMs, ballastBytes: 0, ...options });
}

export function openRunning(folder: string, options: Partial<StoreOptions> = {}): Store {
  const store = openAt(folder, options);
  store.startRun(1_000);
  return store;
}
