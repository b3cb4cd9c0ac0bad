/**
 * Passwords and other secrets, hashed: argon2id for what people choose, SHA-256 for what is 256 bits
 * of chance and cannot be guessed.
 *
 * Always true: an unknown name costs the same verification as a known one; one password is
 * verified at a time, and so many may wait.
 */
import { createHash, randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';

/** argon2id, 19 MiB, two passes: the first choice of the OWASP password storage cheat sheet. */
const cost = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** Passwords are compared as NFKC, so that every keyboard writes the same one (SP 800-63B). */
const canonical = (password: string): string => password.normalize('NFKC');

export const hashPassword = (password: string): Promise<string> => hash(canonical(password), cost);

/** 256 bits: 43 characters that need no quoting. ASVS 7.2.3 asks for 128. */
export const makeSecret = (): string => randomBytes(32).toString('base64url');

export const hashSecret = (secret: string): string =>
  createHash('sha256').update(secret).digest('hex');

const letters = 'abcdefghijklmnopqrstuvwxyz234567';
/** `p-` and ten letters of chance: says nothing of whom it names. */
export const makeId = (kind: 'p' | 't'): string =>
  `${kind}-${[...randomBytes(10)].map((byte) => letters[byte % 32]).join('')}`;

export class PasswordChecker {
  private readonly decoy: Promise<string>;
  private running = 0;
  private readonly waiting: (() => void)[] = [];

  constructor() {
    this.decoy = hashPassword(makeSecret());
  }

  /** `known` is null for a name nobody has. Throws PEOPLE_BUSY. */
  async check(password: string, known: string | null): Promise<boolean> {
    await this.turn();
    try {
      const right = await verify(known ?? (await this.decoy), canonical(password));
      return right && known !== null;
    } finally {
      this.running -= 1;
      this.waiting.shift()?.();
    }
  }

  private async turn(): Promise<void> {
    if (this.running >= limits.passwordVerificationsMax) {
      if (this.waiting.length >= limits.passwordVerificationsWaitingMax)
        throw new AgentError('PEOPLE_BUSY');
      await new Promise<void>((resolve) => this.waiting.push(resolve));
    }
    this.running += 1;
  }
}
