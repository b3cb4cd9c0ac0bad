/**
 * Checks secrets against their hashes, at a cost an outsider cannot turn against the agent.
 *
 * Always true:
 *   - a secret that was right once is recognised again by its HMAC under a key of this process,
 *     so a reconnect costs microseconds and the secret itself is not kept;
 *   - a wrong secret and an unknown user cost one verification each, so neither tells which it was;
 *   - at most `verificationsMax` verifications run at once, and at most `waitingMax` wait.
 */
import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';

export interface SecretLimits {
  readonly verificationsMax: number;
  readonly verificationsWaitingMax: number;
  readonly secretBytesMax: number;
}

export type SecretVerdict = 'right' | 'wrong' | 'busy';

/** argon2id, 19 MiB, two passes: the first choice of the OWASP password storage cheat sheet. */
const cost = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** The argon2id hash of a secret, in PHC text form. */
export const hashSecret = (secret: string | Uint8Array): Promise<string> => hash(secret, cost);

/** 32 random bytes as base64url: 43 characters that need no quoting. */
export const makeSecret = (): string => randomBytes(32).toString('base64url');

export class SecretChecker {
  readonly #limits: SecretLimits;
  readonly #key = randomBytes(32);
  readonly #known = new Map<string, { readonly hash: string; readonly mac: Buffer }>();
  readonly #waiting: (() => void)[] = [];
  readonly #decoyHash: string;
  #running = 0;

  private constructor(limits: SecretLimits, decoyHash: string) {
    this.#limits = limits;
    this.#decoyHash = decoyHash;
  }

  static async create(limits: SecretLimits): Promise<SecretChecker> {
    return new SecretChecker(limits, await hashSecret(makeSecret()));
  }

  /** Whether the secret belongs to the hash; `hash` is null for an unknown user. */
  async check(user: string, secret: Uint8Array, hash: string | null): Promise<SecretVerdict> {
    if (secret.length > this.#limits.secretBytesMax) return 'wrong';
    const mac = createHmac('sha256', this.#key).update(user).update('\0').update(secret).digest();
    const known = this.#known.get(user);
    if (known !== undefined && known.hash === hash && timingSafeEqual(known.mac, mac))
      return 'right';
    if (!(await this.#enter())) return 'busy';
    try {
      const matches = await verify(hash ?? this.#decoyHash, secret);
      if (!matches || hash === null) return 'wrong';
      this.#known.set(user, { hash, mac });
      return 'right';
    } finally {
      this.#leave();
    }
  }

  /** Forgets users who are no longer listed. */
  keepOnly(listed: (user: string) => boolean): void {
    for (const user of this.#known.keys()) if (!listed(user)) this.#known.delete(user);
  }

  async #enter(): Promise<boolean> {
    if (this.#running < this.#limits.verificationsMax) {
      this.#running++;
      return true;
    }
    if (this.#waiting.length >= this.#limits.verificationsWaitingMax) return false;
    await new Promise<void>((resolve) => this.#waiting.push(resolve));
    return true;
  }

  #leave(): void {
    // A waiting one takes over the place, so `#running` stays.
    const next = this.#waiting.shift();
    if (next === undefined) this.#running--;
    else next();
  }
}
