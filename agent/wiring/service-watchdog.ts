/**
 * Tells the service manager that the agent is up and goes on working (sd_notify(3), systemd.service(5)
 * `WatchdogSec=`). Where no manager asks, nothing is done.
 */
import { execFile } from 'node:child_process';

export interface WatchdogParts {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Why it must not say that it works; null while it does. */
  readonly ill: () => string | null;
  readonly failed: (error: unknown) => void;
}

/** Gives what ends it. */
export function serviceWatchdog({ env, ill, failed }: WatchdogParts): () => void {
  if (env.NOTIFY_SOCKET === undefined) return () => undefined;
  const notify = (state: string): void => {
    execFile('systemd-notify', [state], { timeout: 5_000, env: { ...env } }, (error) => {
      if (error !== null) failed(error);
    });
  };
  notify('--ready');
  const withinUs = Number(env.WATCHDOG_USEC);
  if (!(withinUs > 0)) return () => notify('--stopping');
  // Half of the time it is given, as sd_watchdog_enabled(3) advises.
  const timer = setInterval(() => {
    if (ill() === null) notify('WATCHDOG=1');
  }, withinUs / 2_000);
  return () => {
    clearInterval(timer);
    notify('--stopping');
  };
}
