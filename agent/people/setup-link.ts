/**
 * The link with which the first administrator comes in: printed by the process that made it, good once
 * and for a quarter of an hour, and gone with the process.
 */
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { hashSecret, makeSecret } from './secrets.ts';

export class SetupLink {
  private hash: string | null = null;
  private ends = 0;
  private anywhere = false;

  /** `anywhere`: also from other machines. Gives the secret. */
  make(anywhere: boolean, nowMs: number): string {
    const secret = makeSecret();
    this.hash = hashSecret(secret);
    this.ends = nowMs + limits.setupLinkMs;
    this.anywhere = anywhere;
    return secret;
  }

  /** null where the secret is another. Throws PEOPLE_SETUP_ELSEWHERE, PEOPLE_INVITATION_UNUSABLE. */
  endsOf(secret: string, near: boolean, nowMs: number): number | null {
    if (this.hash === null || hashSecret(secret) !== this.hash) return null;
    if (nowMs >= this.ends) throw new AgentError('PEOPLE_INVITATION_UNUSABLE');
    if (!near && !this.anywhere) throw new AgentError('PEOPLE_SETUP_ELSEWHERE');
    return this.ends;
  }

  used(secret: string): void {
    if (hashSecret(secret) === this.hash) this.hash = null;
  }
}
