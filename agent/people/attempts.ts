/**
 * Slows the guessing of passwords, by account and by address (ASVS 5.0, 6.1.1 and 6.3.1).
 *
 * Always true: an attempt counts before it is verified, so that many at once gain nothing; a name
 * nobody has is slowed as a known one; waiting doubles and has a ceiling; what is kept is bounded.
 */
import { limits } from '../limits.ts';

interface Counted {
  readonly tries: number;
  readonly lastMs: number;
}

export type Answer =
  | { readonly kind: 'go' }
  | { readonly kind: 'wait'; readonly forMs: number }
  /** So many in a row that no password is taken any more (SP 800-63B: at most 100). */
  | { readonly kind: 'shut' };

/** After `free` failures: 1 s, doubling with each further one, up to the ceiling. */
export const waitMs = (tries: number, free: number): number =>
  tries < free ? 0 : Math.min(limits.signInWaitMsMax, 1_000 * 2 ** Math.min(30, tries - free));

export class Attempts {
  private readonly accounts = new Map<string, Counted>();
  private readonly addresses = new Map<string, Counted>();

  /** Counts an attempt, or says why there is none. `before`: failures kept of this account. */
  begin(account: string, address: string, nowMs: number, before = 0): Answer {
    const mine = this.accounts.get(account) ?? { tries: before, lastMs: 0 };
    if (mine.tries >= limits.signInFailuresMax) return { kind: 'shut' };
    const theirs = this.ofAddress(address, nowMs);
    const forMs = Math.max(
      mine.lastMs + waitMs(mine.tries, limits.signInFreeFailures) - nowMs,
      theirs.lastMs + waitMs(theirs.tries, limits.signInFreeAddressFailures) - nowMs,
    );
    if (forMs > 0) return { kind: 'wait', forMs };
    keep(this.accounts, account, { tries: mine.tries + 1, lastMs: nowMs });
    keep(this.addresses, address, { tries: theirs.tries + 1, lastMs: nowMs });
    return { kind: 'go' };
  }

  /** It was the right one: the account begins anew; the address only takes this one back. */
  succeeded(account: string, address: string): void {
    this.accounts.delete(account);
    const theirs = this.addresses.get(address);
    if (theirs !== undefined) this.addresses.set(address, { ...theirs, tries: theirs.tries - 1 });
  }

  /** Failures in a row of an account, this one included. */
  triesOf(account: string): number {
    return this.accounts.get(account)?.tries ?? 0;
  }

  forget(account: string): void {
    this.accounts.delete(account);
  }

  private ofAddress(address: string, nowMs: number): Counted {
    const kept = this.addresses.get(address);
    const isOld = kept !== undefined && nowMs - kept.lastMs > limits.signInAddressKeptMs;
    return kept === undefined || isOld ? { tries: 0, lastMs: 0 } : kept;
  }
}

/** The one tried longest ago makes room. */
function keep(map: Map<string, Counted>, key: string, counted: Counted): void {
  map.delete(key);
  map.set(key, counted);
  if (map.size > limits.signInCountedMax) map.delete(map.keys().next().value!);
}
