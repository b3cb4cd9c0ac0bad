/** The service manager as the agent sees it: a program of that name that writes down what it is told. */
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { serviceWatchdog } from '#agent/wiring/service-watchdog.ts';

const folder = mkdtempSync(join(tmpdir(), 'forebond-watchdog-'));
const told = join(folder, 'told');
const words = (): string[] =>
  existsSync(told) ? readFileSync(told, 'utf8').trimEnd().split('\n') : [];
writeFileSync(join(folder, 'systemd-notify'), `#!/bin/sh\necho "$1" >> ${told}\n`);
chmodSync(join(folder, 'systemd-notify'), 0o755);
const env = { PATH: `${folder}:/usr/bin:/bin`, NOTIFY_SOCKET: '/run/none', WATCHDOG_USEC: '40000' };
const never = (error: unknown): void => {
  throw error;
};

afterEach(() => rmSync(told, { force: true }));

test('hears that the agent is ready, that it works, and that it goes', async () => {
  const end = serviceWatchdog({ env, ill: () => null, failed: never });
  await vi.waitFor(() => expect(words()).toContain('WATCHDOG=1'));
  expect(words()).toContain('--ready');
  end();
  await vi.waitFor(() => expect(words()).toContain('--stopping'));
});

test('hears no more that it works while it does not', async () => {
  const end = serviceWatchdog({ env, ill: () => 'no turn is taken', failed: never });
  await vi.waitFor(() => expect(words()).toEqual(['--ready']));
  await new Promise((resolve) => setTimeout(resolve, 200));
  expect(words()).toEqual(['--ready']);
  end();
  await vi.waitFor(() => expect(words()).toContain('--stopping'));
});

test('is not asked where there is none', async () => {
  const end = serviceWatchdog({ env: { PATH: env.PATH }, ill: () => null, failed: never });
  end();
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(words()).toEqual([]);
});

test('that cannot be told is said, and stops nothing', async () => {
  const failures: unknown[] = [];
  const end = serviceWatchdog({
    env: { ...env, PATH: '/nowhere' },
    ill: () => null,
    failed: (error) => failures.push(error),
  });
  await vi.waitFor(() => expect(failures.length).toBeGreaterThan(0));
  end();
});
