/** A page with people behind it, without a core: real people on a folder of the test's own, a clock the test moves. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PeopleNote, Role } from '#agent/people/contract.ts';
import { People } from '#agent/people/people.ts';
import { roles } from '#agent/people/rights.ts';
import { startWeb, type Web } from '#agent/web/server.ts';
import { PeopleDesk } from '#agent/wiring/people-desk.ts';
import { FakePorts, now } from '../web/fake-ports.ts';
import { FakeTelling } from '../web/fake-telling.ts';
import { pushRoom } from '../web/push-room.ts';
import { type Answer, send } from '../web/wire.ts';

/** Of nobody: the hash of a password that no test gives. */
export const hashed =
  '$argon2id$v=19$m=19456,t=2,p=1$c29tZXNhbHRzb21lc2FsdA$8Zr0nV1lJYb0pI1xjT0wqQh3o0m3D5xLkqf1f2b9r1Y';

export class Staffed {
  readonly folder = mkdtempSync(join(tmpdir(), 'forebond-people-'));
  readonly ports = new FakePorts();
  readonly notes: PeopleNote[] = [];
  readonly faults: unknown[] = [];
  nowMs = now;
  sitePage: string | null = null;
  people: People;
  desk: PeopleDesk;
  web!: Web;
  private readonly asked: boolean;

  constructor(asked = true) {
    this.asked = asked;
    this.people = this.opened();
    this.desk = this.deskOf(this.people);
  }

  static async open(asked = true): Promise<Staffed> {
    const staffed = new Staffed(asked);
    await staffed.listen();
    return staffed;
  }

  async listen(): Promise<void> {
    this.web = await startWeb({
      host: '127.0.0.1',
      port: 0,
      version: '0',
      ports: this.ports,
      people: this.desk,
      telling: new FakeTelling(),
      push: pushRoom(this.folder, (error) => this.faults.push(error)).push,
      onFault: (error) => this.faults.push(error),
    });
  }

  /** As another process would find it. */
  opened(): People {
    return new People({
      folder: this.folder,
      times: { idleMs: 8 * 3_600_000, absoluteMs: 30 * 86_400_000 },
      asked: this.asked,
      nowMs: () => this.nowMs,
      siteName: () => 'harbour-works',
      record: (entry) => this.notes.push(entry),
    });
  }

  async close(): Promise<void> {
    await this.web?.close();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** Somebody of this role who has joined; a session of theirs, the password just given. */
  async person(role: Role, name: string = role): Promise<{ id: string; cookie: string }> {
    const given = { name, role, language: 'en', email: null } as const;
    const { person } = this.people.book.invite(given, 'box', this.nowMs);
    this.people.book.alter(person.id, null, (row) => ({
      ...row,
      password: hashed,
      invitation: null,
    }));
    const { cookie } = this.people.sessions.begin(person.id, this.nowMs);
    return { id: person.id, cookie: `forebond-${this.web?.port}=${cookie}` };
  }

  async everyRole(): Promise<Record<Role, { id: string; cookie: string }>> {
    const made = await Promise.all(
      roles.map(async (role) => [role, await this.person(role)] as const),
    );
    return Object.fromEntries(made) as Record<Role, { id: string; cookie: string }>;
  }

  async ask(
    path: string,
    headers: Record<string, string> = {},
    body?: unknown,
    method = body === undefined ? 'GET' : 'POST',
  ): Promise<Answer & { code: string | null; json: Record<string, unknown> }> {
    const answer = await send(this.web.port, {
      method,
      path,
      headers: {
        ...headers,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const isJson = String(answer.headers['content-type']).includes('json');
    const json = isJson && answer.text !== '' ? JSON.parse(answer.text) : {};
    return { ...answer, json, code: json.code ?? null };
  }

  private deskOf(people: People): PeopleDesk {
    const siteName = (): string => 'harbour-works';
    return new PeopleDesk({ people, siteName, sitePage: () => this.sitePage, root: () => null });
  }
}

/** The value of the cookie an answer gives. */
export const givenCookie = (answer: Answer): string => {
  const [first] = [answer.headers['set-cookie'] ?? []].flat();
  return (first ?? '').split(';')[0] ?? '';
};
