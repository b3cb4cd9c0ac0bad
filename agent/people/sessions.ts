/**
 * Who is signed in. Only hashes of the cookies are kept, in a file that outlives the process.
 *
 * Always true: a session ends by itself when nobody used it for so long, and after so long in any
 * case; signing in and giving the password again make a new cookie, and the old one is void.
 */
import { join } from 'node:path';
import { z } from 'zod';
import { limits } from '../limits.ts';
import { KeptFile } from './kept-file.ts';
import { hashSecret, makeSecret } from './secrets.ts';

const row = z.strictObject({
  hash: z.string(),
  person: z.string(),
  made: z.int(),
  used: z.int(),
  /** When the password was last given. */
  proved: z.int(),
  /** Browser and system in words. */
  on: z.string().max(100).optional(),
});
export type Session = z.output<typeof row>;
const file = z.strictObject({ format: z.literal(1), sessions: z.array(row) });

export interface SessionTimes {
  readonly idleMs: number;
  readonly absoluteMs: number;
}

export const sessionsFileName = 'sessions.json';

export class Sessions {
  private readonly kept: KeptFile<z.output<typeof file>>;
  private readonly times: SessionTimes;
  private readonly sessions: Map<string, Session>;
  /** Cookies just replaced: a request already on its way still counts. */
  private readonly former = new Map<string, { readonly hash: string; readonly untilMs: number }>();
  private savedMs = 0;
  private isUsed = false;

  constructor(folder: string, times: SessionTimes) {
    this.kept = new KeptFile(join(folder, sessionsFileName), file, { format: 1, sessions: [] });
    this.times = times;
    this.sessions = new Map(this.kept.read().sessions.map((each) => [each.hash, each]));
  }

  /** The cookie of a new session. */
  begin(person: string, nowMs: number): { readonly cookie: string; readonly session: Session } {
    const cookie = makeSecret();
    const session = { hash: hashSecret(cookie), person, made: nowMs, used: nowMs, proved: nowMs };
    const own = [...this.sessions.values()].filter((each) => each.person === person);
    // The one used longest ago makes room.
    own.sort((a, b) => b.used - a.used);
    for (const each of own.slice(limits.sessionsPerPersonMax - 1)) this.sessions.delete(each.hash);
    this.sessions.set(session.hash, session);
    this.save(nowMs);
    return { cookie, session };
  }

  /** The session of a cookie, and that it was used. */
  use(cookie: string, nowMs: number): Session | null {
    const hash = hashSecret(cookie);
    const former = this.former.get(hash);
    const key = former !== undefined && former.untilMs > nowMs ? former.hash : hash;
    const found = this.sessions.get(key);
    if (found === undefined || this.isOver(found, nowMs)) return null;
    const session = { ...found, used: nowMs };
    this.sessions.set(key, session);
    this.isUsed = true;
    if (nowMs - this.savedMs >= limits.sessionSaveMs) this.save(nowMs);
    return session;
  }

  /** By its key, or the one it had before, without using it; null once it is over. */
  live(key: string, nowMs: number): Session | null {
    const found = this.sessions.get(this.former.get(key)?.hash ?? key);
    return found === undefined || this.isOver(found, nowMs) ? null : found;
  }

  /** On what it is used. */
  setOn(key: string, on: string, nowMs: number): void {
    const found = this.live(key, nowMs);
    if (found === null) return;
    this.sessions.set(found.hash, { ...found, on });
    this.save(nowMs);
  }

  /** When it ends if nobody uses it. */
  endsMs({ used, made }: Session): number {
    return Math.min(used + this.times.idleMs, made + this.times.absoluteMs);
  }

  /** The password was given again: the same session under a new cookie. */
  renew(key: string, nowMs: number): string | null {
    const found = this.live(key, nowMs);
    if (found === null) return null;
    const cookie = makeSecret();
    const hash = hashSecret(cookie);
    this.sessions.delete(found.hash);
    this.sessions.set(hash, { ...found, hash, used: nowMs, proved: nowMs });
    this.former.set(found.hash, { hash, untilMs: nowMs + limits.formerCookieMs });
    for (const [old, { untilMs }] of this.former) if (untilMs <= nowMs) this.former.delete(old);
    this.save(nowMs);
    return cookie;
  }

  end(key: string, nowMs: number): void {
    this.sessions.delete(this.former.get(key)?.hash ?? key);
    this.save(nowMs);
  }

  endAll(person: string, nowMs: number): void {
    for (const { hash } of this.of(person)) this.sessions.delete(hash);
    this.save(nowMs);
  }

  of(person: string): Session[] {
    return [...this.sessions.values()].filter((each) => each.person === person);
  }

  private isOver({ used, made }: Session, nowMs: number): boolean {
    return nowMs - used >= this.times.idleMs || nowMs - made >= this.times.absoluteMs;
  }

  /** Writes when sessions were last used, where any was since it was written. */
  keep(nowMs: number): void {
    if (this.isUsed) this.save(nowMs);
  }

  /** Takes out what is over, and writes the rest. */
  private save(nowMs: number): void {
    for (const key of [...this.sessions.keys()])
      if (this.live(key, nowMs) === null) this.sessions.delete(key);
    this.savedMs = nowMs;
    this.isUsed = false;
    const sessions = [...this.sessions.values()];
    this.kept.change(() => ({ format: 1, sessions }));
  }
}
